import { describe, expect, it } from 'vitest'
import { bestFinish } from '../../bound/testing/brute-force.ts'
import { TICK_MIN, tinyProblem } from '../../bound/testing/tiny-problem.ts'
import type { Problem, ScheduledTask } from '../../problem.ts'
import { solve } from '../../solve/solve.ts'
import { compileProblem } from '../compile.ts'
import { factsOf } from '../facts.ts'
import { readScheduledTasks } from '../read-tasks.ts'
import { leftSteps, lostGround } from './left-of-green.ts'
import { mostSavable } from './most-savable.ts'

const MOST_NODES = 60_000

/** How many greens the proof leaves savable if each has to be finished by its own minute, all that was begun before now standing as it is. */
const savable = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  nowMin: number,
  byMin: ReadonlyMap<number, number>,
): number => {
  const compiled = compileProblem({ ...problem, committed: { nowMin, tasks: [], pins: [] } })
  const ground = lostGround(factsOf(compiled, readScheduledTasks(compiled, tasks)), nowMin)
  const greens = [...byMin.keys()]
  return mostSavable(
    ground,
    [...byMin].map(([green, deadline]) =>
      leftSteps(
        ground,
        green,
        (problem.greens[green]?.steps.length ?? 0) - 1,
        deadline,
        greens.filter((other) => other !== green),
      ),
    ),
  )
}

/** When a schedule ends its last task on each green. */
const ends = (tasks: readonly ScheduledTask[]): ReadonlyMap<number, number> =>
  new Map(
    tasks
      .toSorted((a, b) => a.finishMin - b.finishMin)
      .flatMap(({ kind, green, finishMin }) =>
        green === null || kind === 'move' || kind === 'load' ? [] : [[green, finishMin] as const],
      ),
  )

const MORNING_MIN = 480

/** Seeds of tiny problems that can be tried whole in a moment; even ones have ways between the places, odd ones longer chains. */
const TRIED = [
  13, 15, 16, 17, 25, 35, 45, 46, 50, 55, 57, 67, 77, 85, 87, 92, 95, 96, 101, 103, 105, 107, 113, 115, 117,
  125, 127, 137, 140, 143, 144, 145, 153, 155, 157,
]

/** Whether the proof leaves it open that all greens, none of them begun, are finished by a minute. */
const canAllBy = (problem: Problem, byMin: number): boolean => {
  const all = new Map(problem.greens.map((_, green) => [green, byMin]))
  return savable(problem, [], MORNING_MIN, all) === problem.greens.length
}

describe('the proof that not all greens can be saved', () => {
  it('is never given where trying everything finds a plan, and often where it finds none', () => {
    const tried = TRIED.map((seed) => {
      const problem = tinyProblem(seed)
      const { score } = solve(problem, { seed: 1, schedules: 100 })
      const bestMin = bestFinish(problem, score.finishMin, MOST_NODES) ?? 0
      return {
        seed,
        byThen: canAllBy(problem, bestMin),
        sooner: canAllBy(problem, bestMin - TICK_MIN),
      }
    })
    expect(tried.filter(({ byThen }) => !byThen)).toEqual([])
    // Breaks, the cap on open greens and the check of the first are left out of the proof, so it can't be given everywhere: in two of five at least.
    expect(tried.filter(({ sooner }) => !sooner).length).toBeGreaterThanOrEqual(14)
  }, 60_000)

  it('is never given where a plan finishes each green by its own minute, seen from the start of each of its tasks', () => {
    const wrong: unknown[] = []
    let asked = 0
    // In the last a machine is brought to one stretch of hours, and again to the next.
    for (const seed of [...Array.from({ length: 300 }, (_, index) => index + 1), 756]) {
      const problem = tinyProblem(seed)
      const { tasks } = solve(problem, { seed, schedules: 10 }).schedule
      for (const nowMin of new Set(tasks.map(({ startMin }) => startMin))) {
        const byMin = new Map([...ends(tasks)].filter(([, endMin]) => endMin > nowMin))
        if (byMin.size < 2) continue
        asked++
        const most = savable(problem, tasks, nowMin, byMin)
        if (most < byMin.size) wrong.push({ seed, nowMin, most, byMin })
      }
    }
    expect(wrong).toEqual([])
    expect(asked).toBeGreaterThan(1000)
  }, 60_000)
})
