import type { ScheduledTask } from './problem.ts'

/** A wish of the manager that stands whatever the search would rather do. Minutes as in the problem. */
export type Pin =
  /** The green is opened on this day (index into the days of the problem) and, where given, at this minute. */
  | {
      readonly kind: 'green'
      readonly green: number
      readonly day: number
      readonly openMin: number | null
    }
  /** One step of a green keeps its start, and its machine and people where they are named. */
  | {
      readonly kind: 'step'
      readonly green: number
      /** Index into the steps of the green. */
      readonly step: number
      readonly startMin: number
      readonly machine: number | null
      readonly people: readonly number[] | null
    }

/**
 * What stands already when a plan is made again in the middle of the work, or when the manager has pinned something.
 * Tasks that are done or running stand as they are, with the finish that is known or expected; nothing else may start before `nowMin`.
 * A step is done when a task of it stands here; the machines and people go on from where these tasks leave them.
 */
export type Committed = {
  readonly nowMin: number
  /** In start order. */
  readonly tasks: readonly ScheduledTask[]
  readonly pins: readonly Pin[]
}
