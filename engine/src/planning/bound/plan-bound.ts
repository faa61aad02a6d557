import { mergeSpans } from '../spans.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { scoreOf } from '../score.ts'
import type { BoundBy } from './bound-by.ts'
import { plainCapacity } from './capacity.ts'
import { lowerBound } from './lower-bound.ts'

/** How far a plan may be from the best. */
export type PlanBound = {
  /** No plan of the same greens, with as few fixture clashes and shut green-days where this one has none to spare, finishes sooner. */
  readonly finishMin: number
  /** Minutes with anybody on shift from the bound to the plan's finish, in percent of those from its first start to its finish. */
  readonly gapPercent: number
  readonly by: BoundBy
}

/** Minutes between two moments in which anybody is on shift. */
export const attendedMin = (problem: Problem, fromMin: number, toMin: number): number =>
  plainCapacity([mergeSpans(problem.people.flatMap(({ shifts }) => shifts))]).between(fromMin, toMin)

/**
 * The bound for the greens that a schedule works. A plan without a fixture clash is held against plans without one, and one that shuts every green for
 * one day against such plans, since those come first in what a plan is judged by. Null where nothing is planned, or where no clean plan could be.
 */
export const planBound = (problem: Problem, tasks: readonly ScheduledTask[]): PlanBound | null => {
  const greens = [...new Set(tasks.flatMap(({ green }) => green ?? []))].toSorted((a, b) => a - b)
  const score = scoreOf(problem, tasks, 0)
  const { finishMin, by } = lowerBound(problem, {
    greens,
    keepFixtures: score.fixtureClashes === 0,
    oneDay: score.shutGreenDays === greens.length,
  })
  if (finishMin === null || greens.length === 0) return null
  const firstMin = tasks.reduce((first, { startMin }) => Math.min(first, startMin), score.finishMin)
  const spanMin = attendedMin(problem, firstMin, score.finishMin)
  // A plan that begins late can be further behind than it is long.
  const gapPercent =
    spanMin === 0 ? 0 : Math.min(100, (100 * attendedMin(problem, finishMin, score.finishMin)) / spanMin)
  return { finishMin, gapPercent, by }
}
