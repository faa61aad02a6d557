import type { CalculationError } from '../catalogue/errors.ts'
import { fail, ok, type Result } from '../result.ts'
import { MM2_PER_M2 } from './pattern.ts'

/** How holes are spread: by the two distances, or by a count. */
export type Spacing = {
  readonly acrossMm?: number | undefined
  readonly alongMm?: number | undefined
  readonly holesPerM2?: number | undefined
}

/**
 * Holes per square metre. `N = 10^6 / (a b)`; square, rectangular and staggered patterns give the same, since each hole owns `a b`.
 * Errors: `notDefined` when neither the pair of distances nor the count is given, or both are.
 */
export const holesPerM2Of = (spacing: Spacing): Result<number, CalculationError> => {
  const { acrossMm, alongMm, holesPerM2 } = spacing
  const pair = acrossMm !== undefined && alongMm !== undefined
  if (holesPerM2 !== undefined && acrossMm === undefined && alongMm === undefined) return ok(holesPerM2)
  if (pair && holesPerM2 === undefined) return ok(MM2_PER_M2 / (acrossMm * alongMm))
  return fail({
    type: 'notDefined',
    field: 'acrossMm',
    unit: 'mm',
    reason: 'give either acrossMm and alongMm, or holesPerM2',
  })
}
