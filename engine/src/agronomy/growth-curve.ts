/** Cool-season or warm-season grass. */
export type GrassSeason = 'cool' | 'warm'

/** Optimum and spread of growth potential by season, degrees C (Woods's script; Stowell's note on the warm-season model). */
export const GROWTH_CURVES = {
  cool: { optimumC: 20, spreadC: 5.5 },
  warm: { optimumC: 31, spreadC: 7 },
} as const

/** What growth potential depends on; optimum and spread default to those of the season. All degrees C. */
export type GrowthConditions = {
  readonly meanC: number
  readonly season: GrassSeason
  readonly optimumC?: number | undefined
  readonly spreadC?: number | undefined
}

/**
 * Growth potential, 0 to 1: `GP = exp(-0.5 ((T - To) / s)^2)`, T = mean air temperature of a day, week or month.
 * Warm-season grass: 1 at the optimum and above (Stowell). Example: cool season at 15 C gives 0.6615.
 */
export const growthPotentialOf = ({ meanC, season, optimumC, spreadC }: GrowthConditions): number => {
  const curve = GROWTH_CURVES[season]
  const optimum = optimumC ?? curve.optimumC
  if (season === 'warm' && meanC >= optimum) return 1
  return Math.exp(-0.5 * ((meanC - optimum) / (spreadC ?? curve.spreadC)) ** 2)
}
