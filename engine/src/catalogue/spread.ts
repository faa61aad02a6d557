import { assert } from '../assert.ts'
import type { ThreePoint } from './three-point.ts'

/** Percentiles of the draws that an uncertain answer tells: one draw in ten is lower than `low`, one in ten higher than `high`. */
export const ANSWER_PERCENTILES = { low: 10, typical: 50, high: 90 } as const

/** A percentile of sorted numbers, straight between neighbours (rank p/100 x (n - 1)). */
export const percentileOf = (sorted: readonly number[], percent: number): number => {
  const rank = (percent / 100) * (sorted.length - 1)
  const below = sorted[Math.floor(rank)]
  const above = sorted[Math.ceil(rank)]
  assert(below !== undefined && above !== undefined, 'a percentile needs at least one number')
  return below === above ? below : below + (rank - Math.floor(rank)) * (above - below)
}

const spreadOf = (numbers: readonly number[]): ThreePoint => {
  const sorted = numbers.toSorted((a, b) => a - b)
  return {
    low: percentileOf(sorted, ANSWER_PERCENTILES.low),
    typical: percentileOf(sorted, ANSWER_PERCENTILES.typical),
    high: percentileOf(sorted, ANSWER_PERCENTILES.high),
  }
}

const spreadLists = (expected: readonly unknown[], draws: readonly unknown[]): unknown => {
  const lists = draws.filter((draw): draw is readonly unknown[] => Array.isArray(draw))
  // Lists of reasons differ in length from draw to draw; the longest says all that can be wrong.
  const longest = lists.reduce((a, b) => (b.length > a.length ? b : a), expected)
  if (lists.some((list) => list.length !== longest.length)) return longest
  return longest.map((element, i) =>
    spreadAnswers(
      element,
      lists.map((list) => list[i]),
    ),
  )
}

const valueOf = (draw: unknown, key: string): unknown =>
  typeof draw === 'object' && draw !== null ? (draw as Readonly<Record<string, unknown>>)[key] : undefined

/**
 * Joins the answers of many draws: each number becomes its percentiles; a number that is null in any draw is null. Words, yes and no are
 * those of the expected answer (all inputs typical), or of the first draw that has some where the expected answer has none.
 */
export const spreadAnswers = (expected: unknown, draws: readonly unknown[]): unknown => {
  if (typeof expected === 'number' || draws.some((draw) => typeof draw === 'number')) {
    const numbers = draws.filter((draw) => typeof draw === 'number')
    return numbers.length === draws.length ? spreadOf(numbers) : null
  }
  if (Array.isArray(expected)) return spreadLists(expected, draws)
  if (typeof expected === 'object' && expected !== null)
    return Object.fromEntries(
      Object.entries(expected).map(([key, value]: readonly [string, unknown]) => [
        key,
        spreadAnswers(
          value,
          draws.map((draw) => valueOf(draw, key)),
        ),
      ]),
    )
  return expected ?? draws.find((draw) => draw !== null && draw !== undefined) ?? expected
}
