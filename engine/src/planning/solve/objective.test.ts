import { describe, expect, it } from 'vitest'
import { finishGuide } from './objective.ts'

/** Greens worked one after the other on one machine, without a gap unless one is told: what leads the walk. Minutes. */
const guideOf = (works: readonly number[], gapMin = 0): number => {
  let finishMin = gapMin
  let workedSum = 0
  for (const work of works) {
    finishMin += work
    workedSum += finishMin * work
  }
  const judged = { unfinishedGreens: 0, fixtureClashes: 0, shutGreenDays: works.length, finishMin, workedSum }
  return finishGuide(
    judged,
    works.reduce((sum, work) => sum + work, 0),
  )
}

describe('what leads the walk', () => {
  // W. E. Smith, 'Various optimizers for single-stage production', Naval Research Logistics Quarterly 3 (1956): the weighted sum of finishes is least in order of length over weight.
  it('finds no order on one machine better than another, and lost time worse', () => {
    const guide = guideOf([30, 90, 60])
    expect(guideOf([90, 60, 30])).toBe(guide)
    expect(guideOf([60, 30, 90])).toBe(guide)
    expect(guideOf([30, 90, 60], 5)).toBeGreaterThan(guide)
  })
})
