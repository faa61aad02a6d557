import { describe, expect, it } from 'vitest'
import { solve } from '../solve/solve.ts'
import { lowerBound } from './lower-bound.ts'
import { bestFinish } from './testing/brute-force.ts'
import { handProblem } from './testing/hand-problem.ts'
import { tinyProblem } from './testing/tiny-problem.ts'

const MOST_NODES = 60_000

/** Seeds of tiny problems that can be tried whole in a moment; even ones have ways between the places, odd ones longer chains. */
const SEEDS = [
  12, 13, 15, 16, 17, 25, 32, 35, 44, 45, 46, 50, 55, 57, 67, 70, 77, 85, 86, 87, 92, 95, 96, 101, 103, 105,
  106, 107, 113, 115, 117, 124, 125, 127, 137, 140, 143, 144, 145, 153, 155, 157,
]

const tryAll = (seed: number) => {
  const problem = tinyProblem(seed)
  const { score } = solve(problem, { seed: 1, schedules: 100 })
  const foundMin = score.unfinishedGreens > 0 ? null : score.finishMin
  const bestMin = bestFinish(problem, foundMin ?? problem.horizonMin, MOST_NODES)
  return { seed, boundMin: lowerBound(problem).finishMin, bestMin, foundMin }
}

describe('trying everything', () => {
  it('finds the best plan that a hand finds', () => {
    // The corer takes the green with the long roll first: cored 480 to 500, then 30 and 40 minutes to 570, rolled to 580; its own roll ends at 530.
    const problem = handProblem({
      chain: ['core', 'roll'],
      minutes: [
        [40, 10],
        [30, 10],
        [20, 30],
      ],
      machines: [1, 1],
      people: 2,
      shift: { start: 480, end: 600 },
    })
    expect(bestFinish(problem, 600, MOST_NODES)).toBe(580)
    expect(bestFinish(problem, 575, MOST_NODES)).toBe(null)
  })

  it('gives an optimum between the bound and what the search finds, for every tiny problem', () => {
    const tried = SEEDS.map(tryAll)
    // A plan no later than the search's own is always there to be found.
    expect(tried.filter(({ bestMin }) => bestMin === null)).toEqual([])
    const wrong = tried.filter(({ boundMin, bestMin }) => (boundMin ?? Infinity) > (bestMin ?? 0))
    expect(wrong).toEqual([])
    // The bound is worth something: it is met in at least two of five, and so is the search in four of six.
    expect(tried.filter(({ boundMin, bestMin }) => boundMin === bestMin).length).toBeGreaterThanOrEqual(16)
    expect(tried.filter(({ foundMin, bestMin }) => foundMin === bestMin).length).toBeGreaterThanOrEqual(27)
  }, 60_000)
})
