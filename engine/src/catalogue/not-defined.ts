import { fail } from '../result.ts'
import type { CalculationError } from './errors.ts'

/** The typed error for values that are each in range but do not go together. `reason` is one sentence with the limit in it. */
export const notDefined = (
  field: string,
  unit: string,
  reason: string,
): { readonly ok: false; readonly error: CalculationError } =>
  fail({ type: 'notDefined', field, unit, reason })
