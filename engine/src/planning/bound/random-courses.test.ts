import { describe, expect, it } from 'vitest'
import { randomCourse } from '../../course/random-course.ts'
import { isCleanSchedule } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import type { Committed } from '../committed.ts'
import { WEATHER_PORTS } from '../make-plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { readProblem } from '../read-problem.ts'
import { solve } from '../solve/solve.ts'
import { lowerBound } from './lower-bound.ts'
import { planBound } from './plan-bound.ts'

const DAYS = 7

const problemOf = (seed: number): Problem => {
  const made = randomCourse({ seed, greens: 1 + (seed % 5), days: DAYS })
  const read = readProblem({ ...made, days: DAYS }, WEATHER_PORTS)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return read.value
}

/** What stands of a plan half-way through: tasks that have begun by then. */
const halfWay = (tasks: readonly ScheduledTask[]): Committed => {
  const nowMin = tasks[Math.floor(tasks.length / 2)]?.startMin ?? 0
  return { nowMin, tasks: tasks.filter(({ startMin }) => startMin < nowMin), pins: [] }
}

describe('the bound, against clean plans of random courses', () => {
  it.each(Array.from({ length: 120 }, (_, index) => 5001 + index))(
    'is no later than the plan, nor leaves more greens unfinished (random course %i)',
    (seed) => {
      const problem = problemOf(seed)
      const { schedule, score } = solve(problem, { seed: 1, schedules: 4 })
      expect(isCleanSchedule(compileProblem(problem), schedule)).toBe(true)
      expect(lowerBound(problem).unfinishedGreens).toBeLessThanOrEqual(score.unfinishedGreens)
      const greens = [...new Set(schedule.tasks.flatMap(({ green }) => green ?? []))]
      if (greens.length === 0) return
      // A clean plan is there, so the bound is not "never".
      const bound = planBound(problem, schedule.tasks)
      expect(bound?.finishMin ?? Infinity).toBeLessThanOrEqual(score.finishMin)
      expect(lowerBound(problem, { greens }).finishMin ?? Infinity).toBeLessThanOrEqual(bound?.finishMin ?? 0)
      // In the middle of the work, with the first half of the tasks standing, the rest of that very plan is still to be had.
      const standing = { ...problem, committed: halfWay(schedule.tasks) }
      const later = planBound(standing, schedule.tasks)?.finishMin ?? Infinity
      expect(later).toBeLessThanOrEqual(score.finishMin)
    },
  )
})
