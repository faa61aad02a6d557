import * as v from 'valibot'
import { fail, type Result } from '../result.ts'
import type { CalculationError } from './errors.ts'
import { inputError } from './input-error.ts'
import type { Item } from './item.ts'
import { unknownField } from './unknown-field.ts'

export { quantityAt } from './schema-walk.ts'

/** Checks an input against the item's schema, then runs the item. Never throws for what a person typed. */
export const runItem = <I extends v.GenericSchema, O extends v.GenericSchema>(
  item: Item<I, O>,
  input: unknown,
): Result<v.InferOutput<O>, CalculationError> => {
  const stranger = unknownField(item.inputs, input)
  if (stranger !== undefined) return fail(stranger)
  const parsed = v.safeParse(item.inputs, input, { abortEarly: true })
  return parsed.success ? item.run(parsed.output) : fail(inputError(item.inputs, parsed.issues[0]))
}
