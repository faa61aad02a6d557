import { describe, expect, it } from 'vitest'
import { randomOf } from './random.ts'

const draws = (seed: number, bound: number, count: number): readonly number[] => {
  const random = randomOf(seed)
  return Array.from({ length: count }, () => random.below(bound))
}

describe('a seeded source of whole numbers', () => {
  it('draws the same numbers from the same seed and others from the next seed', () => {
    expect(draws(7, 1000, 50)).toEqual(draws(7, 1000, 50))
    expect(draws(7, 1000, 50)).not.toEqual(draws(8, 1000, 50))
  })

  it('stays within its bound, for the least and the largest bound too', () => {
    expect(draws(1, 1, 20).every((value) => value === 0)).toBe(true)
    expect(draws(1, 2 ** 31, 1000).every((value) => Number.isInteger(value) && value < 2 ** 31)).toBe(true)
  })

  it('spreads evenly over sixteen cells', () => {
    const cells = Array.from({ length: 16 }, () => 0)
    for (const value of draws(42, 16, 16_000)) cells[value] = (cells[value] ?? 0) + 1
    const chiSquare = cells.reduce((sum, seen) => sum + (seen - 1000) ** 2 / 1000, 0)
    // Chi-square table, 15 degrees of freedom: 99.9 % of fair draws lie below 37.7 (NIST/SEMATECH e-Handbook, 1.3.6.7.4).
    expect(chiSquare).toBeLessThan(37.7)
  })
})
