/** A sand-based root zone as a bucket. FAO-56 chapter 8. */
export type SandGreen = {
  /** Depth of roots, mm. */
  readonly rootDepthMm: number
  /** Water held against gravity and at wilting, share of volume. FAO-56 table 19, sand: 0.07-0.17 and 0.02-0.07. */
  readonly fieldCapacity: number
  readonly wiltingPoint: number
  /** Share of the available water that is drawn without stress at 5 mm/day. FAO-56 table 22, cool-season turf: 0.40. */
  readonly easyShare: number
  /** Use of water over the reference. FAO-56 table 12, cool-season turf 0.95 (from memory). */
  readonly cropCoefficient: number
}

/** A green of 150 mm of roots in mid-range sand. */
export const PLAIN_SAND_GREEN: SandGreen = {
  rootDepthMm: 150,
  fieldCapacity: 0.12,
  wiltingPoint: 0.045,
  easyShare: 0.4,
  cropCoefficient: 0.95,
}

/** Water the roots can reach, mm. FAO-56 equation 82. */
export const availableMm = (green: SandGreen): number =>
  (green.fieldCapacity - green.wiltingPoint) * green.rootDepthMm

/** Share drawn without stress at a use of `cropMm` a day, held in [0.1, 0.8]. FAO-56 page 162 and table 22. */
export const easyShareAt = (easyShare: number, cropMm: number): number =>
  Math.max(0.1, Math.min(0.8, easyShare + 0.04 * (5 - cropMm)))

/** How far want of water cuts use, 1 to 0: 1 while what is gone is within the easy share. FAO-56 equation 84. */
export const stressFactor = (depletionMm: number, totalMm: number, easyMm: number): number =>
  depletionMm <= easyMm ? 1 : Math.max(0, (totalMm - depletionMm) / (totalMm - easyMm))

/** One day of a green: what came, what went, what is missing in the evening. */
export type GreenDay = {
  /** Missing from field capacity at the day's end, mm. */
  readonly depletionMm: number
  /** Water used, mm. */
  readonly usedMm: number
  /** Water drained below the roots, mm. */
  readonly drainedMm: number
  /** Stress factor, 1 none to 0. */
  readonly stress: number
}

/** The next day of a bucket that holds `totalMm`, of which `easyMm` are drawn without stress; `wantedMm` is what the grass would use. FAO-56 equations 85 and 88. */
export const nextBucketDay = (
  depletionMm: number,
  day: { readonly rainMm: number; readonly irrigationMm: number; readonly wantedMm: number },
  bucket: { readonly totalMm: number; readonly easyMm: number },
): GreenDay => {
  const stress = stressFactor(depletionMm, bucket.totalMm, bucket.easyMm)
  const used = stress * day.wantedMm
  const balance = depletionMm - day.rainMm - day.irrigationMm + used
  return {
    depletionMm: Math.min(bucket.totalMm, Math.max(0, balance)),
    usedMm: used,
    drainedMm: Math.max(0, -balance),
    stress,
  }
}

/** The next day of a sand green from the depletion this morning. Rain, irrigation and reference evapotranspiration in mm, at least 0. */
export const nextGreenDay = (
  depletionMm: number,
  day: { readonly rainMm: number; readonly irrigationMm: number; readonly referenceMm: number },
  green: SandGreen,
): GreenDay => {
  const wantedMm = green.cropCoefficient * day.referenceMm
  const totalMm = availableMm(green)
  const easyMm = easyShareAt(green.easyShare, wantedMm) * totalMm
  return nextBucketDay(depletionMm, { ...day, wantedMm }, { totalMm, easyMm })
}
