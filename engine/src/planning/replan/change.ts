import type { Problem, ScheduledTask } from '../problem.ts'
import { isWork } from './field.ts'
import { stepTasks } from './old-plan.ts'
import type { OldSteps } from './wishes.ts'

/** How much a new plan changes of an old one, for the steps that had not begun by now. */
export type Change = {
  /** Steps that went to another machine or to other people. */
  readonly tasksMoved: number
  /** Minutes by which steps start earlier or later, all together; a step that falls away counts as one that moves a day. */
  readonly minutesMoved: number
  /** The measure itself: minutes moved and 30 for each task moved, each weighted by how near to now it was planned. */
  readonly points: number
}

/** A task that goes to another machine or person weighs as much as one that is moved by so many minutes: somebody has to be told and has to walk (common practice, no source). */
export const TASK_MOVED_MIN = 30

/** A step moved further than this weighs no more: it is on another day. */
export const MOST_MOVED_MIN = 600

/** Minutes ahead of now at which a change weighs half as much as one at once: by then everybody can be told (common practice, no source). */
export const HALF_WEIGHT_MIN = 240

/** Weight of a step that was planned so many minutes after now: 1 at once, a half four hours ahead, a fifth on the next day at the same hour... never nothing. A plain fraction, the same on every machine. */
export const nearness = (aheadMin: number): number =>
  HALF_WEIGHT_MIN / (HALF_WEIGHT_MIN + Math.max(0, aheadMin))

const sameSet = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((one) => b.includes(one))

/** Whether a step is done by the same machine and people. */
export const sameHands = (a: ScheduledTask, b: ScheduledTask): boolean =>
  a.machine === b.machine && sameSet(a.people, b.people)

/**
 * The measure of change (after the idea of nervousness in replanning: tasks moved to another person or machine, and minutes moved, weighted by nearness to now). Machine tasks
 * are not counted apart, since they follow the steps that they serve.
 */
export const changeOf = (
  problem: Problem,
  old: OldSteps,
  tasks: readonly ScheduledTask[],
  nowMin: number,
): Change => {
  const now = stepTasks(problem, tasks.filter(isWork))
  let tasksMoved = 0
  let minutesMoved = 0
  let points = 0
  for (const [green, steps] of old.entries())
    for (const [step, was] of steps.entries()) {
      const is = now[green]?.[step] ?? null
      if (was === null || (is !== null && is.startMin < nowMin)) continue
      const minutes =
        is === null ? MOST_MOVED_MIN : Math.min(MOST_MOVED_MIN, Math.abs(is.startMin - was.startMin))
      const moved = is !== null && !sameHands(was, is)
      if (moved) tasksMoved++
      minutesMoved += minutes
      points += nearness(was.startMin - nowMin) * (minutes + (moved ? TASK_MOVED_MIN : 0))
    }
  return { tasksMoved, minutesMoved, points }
}
