import type { Schedule, ScheduledTask } from '../problem.ts'
import type { Score } from '../score.ts'

/** A schedule to stay near to, and what it costs to move away from it: a whole number, judged after the greens that are left out and before the finish. */
export type Near = {
  readonly tasks: readonly ScheduledTask[]
  readonly penalty: (tasks: readonly ScheduledTask[]) => number
}

/** How a search is run. Same problem, seed and count of schedules: same result, on every machine. */
export type SolveOptions = {
  readonly seed: number
  /** Complete schedules to spend, at least 1; what is rebuilt of one counts as its share, and so does what is tried in vain. */
  readonly schedules: number
  /** Told after every improvement and about fifty times in between; changes nothing. */
  readonly onProgress?: (progress: { readonly schedules: number; readonly best: Score }) => void
  /** Asked once a schedule; true ends the search with the best so far. */
  readonly stop?: () => boolean
  /** Greens (indices, all of them) in the order to begin from instead of the usual ones: that of a plan made before. */
  readonly startOrder?: readonly number[]
  readonly near?: Near
}

/** The best schedule found, its score, and the schedules really spent. */
export type Solved = { readonly schedule: Schedule; readonly score: Score; readonly schedules: number }
