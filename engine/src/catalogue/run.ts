import * as v from 'valibot'
import { fail, type Result } from '../result.ts'
import type { CalculationError } from './errors.ts'
import { inputError } from './input-error.ts'
import type { Item } from './item.ts'

export { quantityAt } from './schema-walk.ts'

/** Checks an input against the item's schema, then runs the item. Never throws for what a person typed. */
export const runItem = <I extends v.GenericSchema, O extends v.GenericSchema>(
  item: Item<I, O>,
  input: unknown,
): Result<v.InferOutput<O>, CalculationError> => {
  const parsed = v.safeParse(item.inputs, input, { abortEarly: true })
  if (parsed.success) return item.run(parsed.output)
  return fail(inputError(item.inputs, parsed.issues[0]))
}
