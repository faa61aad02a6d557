import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { inputError } from '../catalogue/input-error.ts'
import { unknownField } from '../catalogue/unknown-field.ts'
import { fail, ok, type Result } from '../result.ts'

/** Checks what a person wrote against a schema; the first thing wrong comes back with its field, unit and accepted range. */
export const checked = <S extends v.GenericSchema>(
  schema: S,
  input: unknown,
): Result<v.InferOutput<S>, CalculationError> => {
  const stranger = unknownField(schema, input)
  if (stranger !== undefined) return fail(stranger)
  const parsed = v.safeParse(schema, input, { abortEarly: true })
  return parsed.success ? ok(parsed.output) : fail(inputError(schema, parsed.issues[0]))
}
