import type { Problem, Schedule } from '../problem.ts'
import { solve } from '../solve/solve.ts'
import { NEVER } from '../spans.ts'
import type { Situation } from './situation.ts'
import { unplannedOf } from './left-out.ts'
import { changeOf } from './change.ts'
import { notWorked } from './not-worked.ts'
import { byTime } from './old-plan.ts'
import type { Broken } from './repair.ts'

/** Complete schedules that a replan may spend on the search: few, since it must answer in a blink. */
const REPLAN_SCHEDULES = 4

/** The problem without the greens that the manager leaves out. */
const withoutSkipped = ({ problem, skipped }: Broken): Problem => ({
  ...problem,
  greens: problem.greens.map((green, index) => (skipped.has(index) ? notWorked(green) : green)),
})

/**
 * The search's own answer, begun from the old order of greens and kept near to the old plan: what stands already is built upon, and the measure of change is what it pays
 * for moving away.
 */
export const bySearch = (situation: Situation, broken: Broken): Schedule => {
  const { oldTasks } = situation
  const { problem, old, oldOpening, opened, skipped } = broken
  const nowMin = problem.committed?.nowMin ?? 0
  const order = problem.greens
    .map((_, green) => green)
    .sort((a, b) => (oldOpening[a] ?? NEVER) - (oldOpening[b] ?? NEVER) || a - b)
  const { schedule } = solve(withoutSkipped(broken), {
    seed: 1,
    schedules: REPLAN_SCHEDULES,
    startOrder: order,
    near: {
      tasks: oldTasks.filter(({ startMin }) => startMin >= nowMin),
      penalty: (tasks) => Math.round(changeOf(problem, old, tasks, nowMin).points),
    },
  })
  // What becomes of a green in work is told by its tasks.
  const left = schedule.unplanned.filter(({ green }) => !skipped.has(green) && !opened.has(green))
  return {
    tasks: [...schedule.tasks].sort(byTime),
    unplanned: [...unplannedOf(situation, [], []), ...left],
  }
}
