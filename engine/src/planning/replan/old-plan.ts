import { readTasks } from '../plan-to-tasks.ts'
import type { PlanTask } from '../plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { doesStep, isWork } from './field.ts'

/** Place in the order of tasks at one instant: what must be there first comes first, as the checker reads it. */
const rank = ({ kind, green }: ScheduledTask): number =>
  kind === 'setUp' ? 0 : kind === 'move' ? (green === null ? 1 : 3) : kind === 'load' ? 2 : 4

/** Tasks by start, finish, and what must be there first. */
export const byTime = (a: ScheduledTask, b: ScheduledTask): number =>
  a.startMin - b.startMin ||
  a.finishMin - b.finishMin ||
  rank(a) - rank(b) ||
  (a.machine ?? -1) - (b.machine ?? -1)

/** The tasks of a plan in minutes and indices, in order of time. Work on greens that the problem does not have is left out: it is not planned any more. */
export const scheduledTasks = (problem: Problem, tasks: readonly PlanTask[]): readonly ScheduledTask[] =>
  readTasks(problem, tasks)
    .map(({ task }) => task)
    .sort(byTime)

/** By green, by step: the task that does it, if any; of several alike the earlier does the earlier step. */
export const stepTasks = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
): readonly (readonly (ScheduledTask | null)[])[] => {
  const byGreen = problem.greens.map(({ steps }) => steps.map((): ScheduledTask | null => null))
  for (const task of tasks) {
    if (!isWork(task) || task.green === null) continue
    const own = byGreen[task.green]
    const steps = problem.greens[task.green]?.steps ?? []
    const index = steps.findIndex((step, at) => own?.[at] === null && doesStep(task, step))
    if (own !== undefined && index >= 0) own[index] = task
  }
  return byGreen
}
