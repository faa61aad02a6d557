/** The club's own target range, in the unit of the readings. */
export type TargetRange = { readonly low: number; readonly high: number }

/** Where a number stands against a range; both ends belong to it. */
export type Standing = 'below' | 'inside' | 'above'

/** What a round of readings says, in their own unit. */
export type ReadingSummary = {
  readonly mean: number
  readonly lowest: number
  readonly highest: number
  /** Sample standard deviation; 0 for one reading. */
  readonly deviation: number
  readonly count: number
}

/** Mean, extremes and spread of at least one reading. */
export const summaryOf = (readings: readonly number[]): ReadingSummary => {
  const count = readings.length
  const mean = readings.reduce((sum, r) => sum + r, 0) / count
  const squares = readings.reduce((sum, r) => sum + (r - mean) ** 2, 0)
  return {
    mean,
    lowest: Math.min(...readings),
    highest: Math.max(...readings),
    deviation: count > 1 ? Math.sqrt(squares / (count - 1)) : 0,
    count,
  }
}

/** Where a number stands against the target. */
export const standingOf = (value: number, { low, high }: TargetRange): Standing => {
  if (value < low) return 'below'
  return value > high ? 'above' : 'inside'
}

/** Share (0 to 1) of readings that stand so. */
export const shareStanding = (readings: readonly number[], target: TargetRange, wanted: Standing): number =>
  readings.filter((r) => standingOf(r, target) === wanted).length / readings.length
