import { describe, expect, it } from 'vitest'
import { recordToRecord } from './acceptance.ts'
import { budgetOf } from './budget.ts'
import { eliteOf } from './elite.ts'
import { randomOf } from './random.ts'
import { walk, type Walker } from './walk.ts'

describe('a budget of schedules', () => {
  it('counts a partial rebuild as its share and a begun schedule whole', () => {
    const budget = budgetOf({ schedules: 2, activities: 10 })
    budget.spend(10)
    budget.spend(5)
    expect([budget.schedules(), budget.isOver()]).toEqual([2, false])
    budget.spend(5)
    expect([budget.schedules(), budget.isOver()]).toEqual([2, true])
  })

  it('asks its caller whether to stop once a schedule, and stays stopped', () => {
    let asked = 0
    const budget = budgetOf({ schedules: 100, activities: 4, stop: () => ++asked === 3 })
    const steps = [1, 2, 3, 4, 5, 6, 7, 8, 9].map(() => {
      const over = budget.isOver()
      budget.spend(1)
      return over
    })
    expect(steps).toEqual([false, false, false, false, false, false, false, false, true])
    expect([asked, budget.isOver(), budget.isStopped()]).toEqual([3, true, true])
  })
})

describe('acceptance', () => {
  it('by record lets in what is at most the slack behind the best', () => {
    const accepts = recordToRecord(3)
    expect([accepts(13, 11, 10), accepts(14, 20, 10)]).toEqual([true, false])
  })
})

describe('an elite set', () => {
  it('holds the cheapest different solutions', () => {
    const elite = eliteOf<string>(2, (a, b) => a === b)
    const offers: readonly (readonly [number, string])[] = [
      [5, 'a'],
      [5, 'a'],
      [7, 'b'],
      [6, 'c'],
      [9, 'd'],
      [4, 'a'],
    ]
    expect(offers.map(([cost, solution]) => elite.offer(cost, solution))).toEqual([
      true,
      false,
      true,
      true,
      false,
      true,
    ])
    const random = randomOf(1)
    const drawn = new Set(Array.from({ length: 50 }, () => elite.any(random)))
    expect(drawn).toEqual(new Set(['a', 'c']))
  })
})

/** A walker over the whole numbers: the cost of x is its distance from 20. */
const toTwenty = (step: () => number, spend: () => void) => {
  const state = { current: 0, candidate: 0, best: 0 }
  const walker: Walker = {
    propose: () => {
      spend()
      state.candidate = state.current + step()
      return Math.abs(20 - state.candidate)
    },
    take: () => {
      state.current = state.candidate
    },
    keep: () => {
      state.best = state.candidate
    },
  }
  return { state, walker }
}

describe('a walk', () => {
  it('goes downhill to the floor and no further', () => {
    const budget = budgetOf({ schedules: 1000, activities: 1 })
    const random = randomOf(3)
    const { state, walker } = toTwenty(
      () => random.below(3) - 1,
      () => budget.spend(1),
    )
    const best = walk(walker, {
      budget,
      accepts: recordToRecord(1),
      firstCost: 20,
      floor: 5,
    })
    expect([best, state.best]).toEqual([5, 15])
  })

  it('gives up when its patience is at an end', () => {
    const budget = budgetOf({ schedules: 1000, activities: 1 })
    const { walker } = toTwenty(
      () => -1,
      () => budget.spend(1),
    )
    expect(walk(walker, { budget, accepts: recordToRecord(0), firstCost: 20, patience: 7 })).toBe(20)
    expect(budget.schedules()).toBe(7)
  })
})
