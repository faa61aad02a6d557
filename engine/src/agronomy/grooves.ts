import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { quantity, yesNo } from '../catalogue/quantity.ts'
import { ok, type Result } from '../result.ts'
import { unionOfPasses } from './holes.ts'
import { depthMm, passes } from './pattern.ts'

/** Scarifier settings: blade width, distance between blades, depth (all mm), passes, and whether a pass crosses the one before. */
export type Grooves = {
  readonly bladeWidthMm: number
  readonly bladeSpacingMm: number
  readonly depthMm: number
  readonly passes: number
  readonly crossed: boolean
}

/** What the blades do to the surface. `removalShare` is the union when crossed, the sum when each pass runs in new lines. */
export type GrooveWork = {
  readonly areaShareOnePass: number
  readonly areaShareSummed: number
  readonly areaShareUnion: number
  readonly removalShare: number
  /** Opened volume, L/m2. */
  readonly volumeLPerM2: number
}

export const bladeWidthMm = quantity({
  meaning: 'Width of one blade',
  unit: 'mm',
  symbol: 'w',
  min: 0.2,
  max: 50,
})

export const bladeSpacingMm = quantity({
  meaning: 'Distance between blades, centre to centre',
  unit: 'mm',
  symbol: 's',
  min: 1,
  max: 1000,
})

export const groovesInput = {
  bladeWidthMm,
  bladeSpacingMm,
  depthMm,
  passes,
  crossed: yesNo('A pass crosses the one before at an angle (true), or each pass runs in new lines (false)'),
}

export const groovesSchema = v.strictObject(groovesInput)

/** Share of the surface that one pass touches: `p = w / s` (both mm). */
export const grooveShare = (bladeWidthMm: number, bladeSpacingMm: number): number =>
  bladeWidthMm / bladeSpacingMm

/**
 * Share touched and volume opened by all passes. Crossed: `1 - (1 - p)^n` at any angle. New lines: `n p`. Volume = share x depth.
 * Errors: `notDefined` when blades are wider than their spacing, or passes in new lines would need more than the whole surface.
 */
export const grooveWork = (g: Grooves, at = ''): Result<GrooveWork, CalculationError> => {
  const share = grooveShare(g.bladeWidthMm, g.bladeSpacingMm)
  if (share > 1)
    return notDefined(
      `${at}bladeWidthMm`,
      'mm',
      `blades of ${g.bladeWidthMm} mm do not fit a spacing of ${g.bladeSpacingMm} mm; the width can be at most the spacing`,
    )
  const summed = share * g.passes
  const union = unionOfPasses(share, g.passes)
  if (!g.crossed && summed > 1 + 1e-12)
    return notDefined(
      `${at}passes`,
      '1',
      `${g.passes} passes in new lines would need ${(100 * summed).toFixed(0)} % of the surface; set crossed, or use fewer passes`,
    )
  const removalShare = g.crossed ? union : summed
  return ok({
    areaShareOnePass: share,
    areaShareSummed: summed,
    areaShareUnion: union,
    removalShare,
    volumeLPerM2: removalShare * g.depthMm,
  })
}
