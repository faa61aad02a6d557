import { growthPotentialOf, type GrowthConditions } from '../agronomy/growth-curve.ts'

/** Light in a MJ of global radiation, mol of photons: 45 % of it is photosynthetically active, at 4.57 mol/MJ (McCree 1972, from memory). */
const MOL_PER_MJ = 0.45 * 4.57

/** Daily light at which a closely cut cool-season green grows without want of light, mol/m2 (common practice, no source; shade trials ask for 20 to 30). */
export const FULL_LIGHT_MOL_PER_M2 = 25

/** What holds growth back on a day. Each from 0 (stops it) to 1 (does not limit). */
export type LimitedGrowth = {
  /** Growth potential by temperature. */
  readonly temperature: number
  readonly moisture: number
  readonly light: number
  /** The product of temperature and the scarcer of water and light. */
  readonly growth: number
}

/**
 * Growth potential of a day held back by water and light. `moisture` is the stress factor of the bucket, 1 to 0; `radiationMJPerM2` the day's global
 * radiation; `shadeShare` the part of it that trees take, 0 to 1. The scarcer of the two counts (law of the minimum): our assumption, since no trial
 * that varies both was found.
 */
export const limitedGrowth = (
  air: GrowthConditions,
  day: { readonly moisture: number; readonly radiationMJPerM2: number; readonly shadeShare: number },
): LimitedGrowth => {
  const temperature = growthPotentialOf(air)
  const light = Math.min(
    1,
    (day.radiationMJPerM2 * (1 - day.shadeShare) * MOL_PER_MJ) / FULL_LIGHT_MOL_PER_M2,
  )
  return { temperature, moisture: day.moisture, light, growth: temperature * Math.min(day.moisture, light) }
}
