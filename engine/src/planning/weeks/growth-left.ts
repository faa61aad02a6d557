import { growthPotentialOf } from '../../agronomy/growth-curve.ts'

/** Days over which growth is averaged to tell that it has ended. */
const FORTNIGHT = 14
/** Mean growth potential under which grass hardly grows: a fortnight of some 6.5 C (common practice, no source). */
const GROWS_FROM = 0.05

/** What a season has still to give. */
export type GrowthLeft = {
  /** Growing days: the sum of each day's growth potential, so that a day of 20 C counts as one and a day of 10 C as a fifth. */
  readonly growingDays: number
  /** Days until growth ends; null when it goes on past the days given, and there is more than `growingDays`. */
  readonly endsAfterDays: number | null
}

/** Growth left from a day on (`growth.potential`, cool-season grass), until the fortnight that follows grows less than a twentieth. `meansC`: mean temperature day by day, null where not known. */
export const growthLeft = (meansC: readonly (number | null)[]): GrowthLeft => {
  const growth = meansC.map((meanC) => (meanC === null ? 0 : growthPotentialOf({ meanC, season: 'cool' })))
  const sum = (from: number, to: number): number => growth.slice(from, to).reduce((a, b) => a + b, 0)
  for (let day = 0; day + FORTNIGHT <= growth.length; day++)
    if (sum(day, day + FORTNIGHT) < GROWS_FROM * FORTNIGHT)
      return { growingDays: sum(0, day), endsAfterDays: day }
  return { growingDays: sum(0, growth.length), endsAfterDays: null }
}
