import { growthPotentialOf, type GrassSeason } from '../agronomy/growth-curve.ts'

/** What closes: a hole that a core left, a hole of a solid tine, or a groove of a blade. */
export const OPENING_KINDS = ['core', 'solid', 'groove'] as const

/** One of the kinds of opening. */
export type OpeningKind = (typeof OPENING_KINDS)[number]

/** One day of the recovery: mean air temperature (C), and the share of full light and of ample moisture (0 to 1, default 1). */
export type RecoveryDay = {
  readonly meanC: number
  readonly lightShare?: number | undefined
  readonly moistureShare?: number | undefined
}

/**
 * Speed at which the edge of an opening grows inward at growth potential 1, mm a day. Class of all three: our assumption.
 * core: 0.6, fitted to the read cases (5/8 in in 12 d = 0.66, 1/2 in in 10-14 d = 0.45-0.64, 3/8 in in 14 d in May = 0.34).
 * solid: twice that, since the rim is pressed aside and not cut away; 1 to 3 days to playable against 7 to 10 is read, weakly.
 * groove: a deep verticut took twice as long as a 1/2 in core (Landreth 2008), so a 3 mm groove closes like a hole of 25.4 mm:
 * 0.6 x 3 / 25.4 = 0.071; slower than its width says, since blades tear as well as cut.
 */
export const EDGE_RATE_MM_PER_DAY: Readonly<Record<OpeningKind, number>> = {
  core: 0.6,
  solid: 1.2,
  groove: (0.6 * 3) / 25.4,
}

/** Spread of the rate to both sides, as a share of it: +-35 % (our assumption, from the scatter of the read cases). */
export const RATE_SPREAD = 0.35

/** What the rate depends on besides the weather of the day. */
export type ClosureConditions = {
  readonly kind: OpeningKind
  readonly season: GrassSeason
  readonly optimumC?: number | undefined
  /** This green's own speed against the prior; 1 until its records say otherwise. */
  readonly factor: number
}

/**
 * Growth of the edge in one day, mm: `v = v0 f sqrt(GP light moisture)`. The root is part of the fit: dividing by GP itself counts
 * the weather twice and gives absurd springs (12 mm: 86 days in April).
 */
export const edgeGrowthMm = (day: RecoveryDay, conditions: ClosureConditions): number => {
  const potential = growthPotentialOf({ ...conditions, meanC: day.meanC })
  const growth = potential * (day.lightShare ?? 1) * (day.moistureShare ?? 1)
  return EDGE_RATE_MM_PER_DAY[conditions.kind] * conditions.factor * Math.sqrt(growth)
}

/** Distance that each edge has grown by the end of each day, mm. */
export const edgeGrowthByDayMm = (
  days: readonly RecoveryDay[],
  conditions: ClosureConditions,
): readonly number[] => {
  let sum = 0
  return days.map((day) => (sum += edgeGrowthMm(day, conditions)))
}

/**
 * Days until the edges have grown `neededMm`, with the last day in part; null when the days given are too few.
 * `byDayMm` is the growth by the end of each day.
 */
export const daysToGrow = (byDayMm: readonly number[], neededMm: number): number | null => {
  const last = byDayMm.findIndex((grown) => grown >= neededMm)
  if (last < 0) return null
  const before = last === 0 ? 0 : (byDayMm[last - 1] ?? 0)
  const gain = (byDayMm[last] ?? 0) - before
  return last + (gain > 0 ? (neededMm - before) / gain : 0)
}

/** Share (0 to 1) of the opened surface that has grown over: a hole by its area, a groove by its width. */
export const closedShare = (kind: OpeningKind, diameterMm: number, grownMm: number): number => {
  const left = Math.max(0, 1 - (2 * grownMm) / diameterMm)
  return kind === 'groove' ? 1 - left : 1 - left * left
}
