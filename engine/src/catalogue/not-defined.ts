import { fail } from '../result.ts'
import type { CalculationError } from './errors.ts'

// 0.1 + 0.2 is 0.30000000000000004 to a computer; a person reads 0.3.
const withoutRounding = (reason: string): string =>
  reason.replaceAll(/\d+\.\d{7,}/gu, (digits) => String(Number(Number(digits).toPrecision(6))))

/** The typed error for values that are each in range but do not go together. `reason` is one sentence with the limit in it. */
export const notDefined = (
  field: string,
  unit: string,
  reason: string,
): { readonly ok: false; readonly error: CalculationError } =>
  fail({ type: 'notDefined', field, unit, reason: withoutRounding(reason) })
