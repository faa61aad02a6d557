import type { Operation } from '../operations.ts'

/** One covering that was timed: what the plan had for it and what it took. Never whose. */
export type TimedCovering = {
  readonly machine: string
  readonly operation: Operation
  readonly plannedMin: number
  readonly takenMin: number
}

/** How a machine comes along with an operation today: times the planned minutes. */
export type Pace = {
  readonly machine: string
  readonly operation: Operation
  /** Expected ratio of taken to planned minutes for what remains. */
  readonly ratio: number
  /** Likely range of that ratio, about 8 of 10. */
  readonly low: number
  readonly high: number
  /** Coverings that it was learned from. */
  readonly coverings: number
}

/**
 * Weight of the plan's own minutes, as so many minutes of work: about one large or two small greens' coring. Common practice, no source: the first green of the day
 * moves the pace by about half, the third has nearly all the say (trade practice: 'pace is learned from the first greens').
 */
export const PRIOR_WEIGHT_MIN = 30

/**
 * Spread of one covering of 30 minutes about its pace, as a share (standard deviation over mean). Common practice, no source: turns, emptying
 * and a word with a passer-by make a quarter hour of a half.
 */
export const SPREAD_AT_30_MIN = 0.25

/** Ratios outside are slips of the pen (a tap forgotten until the evening), not paces; they are cut to these. */
const MOST_RATIO = 4
const LEAST_RATIO = 0.25

/** Two-sided 80 % range of a normal distribution. */
const Z80 = 1.2816

const clipped = ({ plannedMin, takenMin }: TimedCovering): number =>
  Math.min(MOST_RATIO * plannedMin, Math.max(LEAST_RATIO * plannedMin, takenMin))

/**
 * Paces from the coverings of the day. With a covering's minutes gamma distributed about `ratio * planned`, its spread shrinking with its length, and the
 * conjugate prior about 1, the mean of the posterior is the shrunken ratio of sums
 *
 *     ratio = (w + sum taken) / (w + sum planned),   w = PRIOR_WEIGHT_MIN
 *
 * (gamma likelihood with inverse gamma prior: Gelman et al., Bayesian Data Analysis, conjugate families; from memory). The range is the normal
 * approximation with the same weights. No coverings, no row: then the plan's minutes stand.
 */
export const learnPaces = (timed: readonly TimedCovering[]): readonly Pace[] => {
  const byKey = new Map<string, TimedCovering[]>()
  for (const one of timed) {
    if (one.plannedMin <= 0) continue
    const key = `${one.machine} ${one.operation}`
    byKey.set(key, [...(byKey.get(key) ?? []), one])
  }
  return [...byKey.values()]
    .flatMap((own): readonly Pace[] => {
      const [first] = own
      if (first === undefined) return []
      const planned = own.reduce((sum, one) => sum + one.plannedMin, PRIOR_WEIGHT_MIN)
      const taken = own.reduce((sum, one) => sum + clipped(one), PRIOR_WEIGHT_MIN)
      const ratio = taken / planned
      const off = Z80 * SPREAD_AT_30_MIN * Math.sqrt(30 / planned) * ratio
      return [
        {
          machine: first.machine,
          operation: first.operation,
          ratio,
          low: Math.max(0, ratio - off),
          high: ratio + off,
          coverings: own.length,
        },
      ]
    })
    .sort((a, b) =>
      a.machine < b.machine ? -1 : a.machine > b.machine ? 1 : a.operation < b.operation ? -1 : 1,
    )
}
