import { describe, expect, it } from 'vitest'
import { shiftedChances, wetCountVariance, wetShareOf, type WetChances } from './rain-chain.ts'

const alike = (p: number): WetChances => ({ wetAfterDry: [p, p, p], wetAfterWet: p })

/** A chain that remembers only the day before: 0.3 after a dry day, 0.6 after a wet one. Its share of wet days is 0.3 / (1 - 0.6 + 0.3) = 3/7. */
const TWO_STATES: WetChances = { wetAfterDry: [0.3, 0.3, 0.3], wetAfterWet: 0.6 }

describe('the chain of wet and dry days', () => {
  it('has the share of wet days that a two-state chain has by hand', () => {
    expect(wetShareOf(TWO_STATES)).toBeCloseTo(3 / 7, 12)
    expect(wetShareOf(alike(0.25))).toBeCloseTo(0.25, 12)
  })

  it('gives the binomial variance when days know nothing of each other', () => {
    expect(wetCountVariance(alike(0.25), 30)).toBeCloseTo(30 * 0.25 * 0.75, 10)
  })

  it('gives the variance of three days as counted out by hand', () => {
    // n p (1-p) + 2 sum (n-k) p (p_k - p) with p_1 = 0.6, p_2 = 0.6 x 0.6 + 0.4 x 0.3 = 0.48.
    const p = 3 / 7
    const byHand = 3 * p * (1 - p) + 2 * (2 * p * (0.6 - p) + p * (0.48 - p))
    expect(wetCountVariance(TWO_STATES, 3)).toBeCloseTo(byHand, 12)
  })

  it('comes close to what is known for long runs', () => {
    // n p (1-p) (1 + r) / (1 - r), r = 0.6 - 0.3 (Katz 1985).
    const long = 1000 * (3 / 7) * (4 / 7) * (1.3 / 0.7)
    expect(wetCountVariance(TWO_STATES, 1000) / long).toBeCloseTo(1, 2)
  })

  it('is wetter when all logits are moved up', () => {
    expect(wetShareOf(shiftedChances(TWO_STATES, 0.5))).toBeGreaterThan(3 / 7)
    expect(shiftedChances(TWO_STATES, 0).wetAfterWet).toBeCloseTo(0.6, 12)
  })
})
