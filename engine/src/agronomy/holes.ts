import { MM2_PER_M2 } from './pattern.ts'

/** Area of one round hole, mm2. `A = pi d^2 / 4`, d in mm. */
export const holeAreaMm2 = (diameterMm: number): number => (Math.PI * diameterMm * diameterMm) / 4

/** Share (0 to 1) of a surface that `holesPerM2` holes of this diameter (mm) take. `p = N pi d^2 / (4 x 10^6)` (Woods 2009). */
export const holeShare = (holesPerM2: number, diameterMm: number): number =>
  (holesPerM2 * holeAreaMm2(diameterMm)) / MM2_PER_M2

/**
 * Share touched by several passes whose holes or grooves fall at random to each other: `1 - (1 - p1)(1 - p2)...`, shares 0 to 1.
 * Programmes in print add the shares instead (Ervin & Nichols 2010), so people are shown both.
 */
export const unionShare = (shares: readonly number[]): number =>
  1 - shares.reduce((left, share) => left * (1 - share), 1)

/** The union of `passes` equal shares: `1 - (1 - p)^n`. */
export const unionOfPasses = (share: number, passes: number): number => 1 - (1 - share) ** passes

/** Volume opened below a share of the surface, L/m2 (the same number in mm of sand): `V = p h`, h in mm (Woods 2021). */
export const volumeLPerM2 = (share: number, depthMm: number): number => share * depthMm
