import type { CalculationError } from '../catalogue/errors.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { ok, type Result } from '../result.ts'
import { holeShare } from './holes.ts'
import { MM2_PER_M2 } from './pattern.ts'

/** How holes are spread: by the two distances, or by a count. */
export type Spacing = {
  readonly acrossMm?: number | undefined
  readonly alongMm?: number | undefined
  readonly holesPerM2?: number | undefined
}

/** Holes in a square metre and the share of it that they take. */
export type Opening = { readonly holesPerM2: number; readonly share: number }

/**
 * Holes per square metre. `N = 10^6 / (a b)`; square, rectangular and staggered patterns give the same, since each hole owns `a b`.
 * Errors: `notDefined` when neither the pair of distances nor the count is given, or both are.
 */
export const holesPerM2Of = (spacing: Spacing, at = ''): Result<number, CalculationError> => {
  const { acrossMm, alongMm, holesPerM2 } = spacing
  if (holesPerM2 !== undefined && acrossMm === undefined && alongMm === undefined) return ok(holesPerM2)
  if (acrossMm !== undefined && alongMm !== undefined && holesPerM2 === undefined)
    return ok(MM2_PER_M2 / (acrossMm * alongMm))
  const field = holesPerM2 !== undefined ? 'holesPerM2' : acrossMm !== undefined ? 'alongMm' : 'acrossMm'
  return notDefined(
    `${at}${field}`,
    field === 'holesPerM2' ? '1/m2' : 'mm',
    'give either acrossMm and alongMm together, or holesPerM2 alone',
  )
}

/**
 * Holes and share of surface of one pass. `field` is the name of the diameter field, for the error.
 * Errors: those of the spacing; `notDefined` when the holes take more than the whole surface, so overlap each other.
 */
export const openingOf = (
  spacing: Spacing,
  diameterMm: number,
  field: string,
  at = '',
): Result<Opening, CalculationError> => {
  const holes = holesPerM2Of(spacing, at)
  if (!holes.ok) return holes
  const share = holeShare(holes.value, diameterMm)
  if (share <= 1) return ok({ holesPerM2: holes.value, share })
  const number = Number(holes.value.toPrecision(4))
  return notDefined(
    `${at}${field}`,
    'mm',
    `holes of ${diameterMm} mm at ${number} a square metre take more than the whole surface; use a smaller diameter or a wider spacing`,
  )
}
