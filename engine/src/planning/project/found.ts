/** How a project is searched. Same project, seed and count of schedules: same answer, on every machine. */
export type ProjectSearch = {
  /** Schedules to spend, at least 1; a partial rebuild counts as its share, each direction of a forward-backward pass as one more. */
  readonly schedules: number
  /** Any whole number. */
  readonly seed: number
  /** Asked now and then; true ends the search early with the best so far. The only way in which a clock may reach it. */
  readonly stop?: () => boolean
}

/** What a search found. */
export type ProjectFound = {
  /** Start of each activity, in the project's own numbering; null when no schedule was found. */
  readonly starts: Int32Array | null
  /** Latest finish of any activity; null without a schedule. */
  readonly makespan: number | null
  /** Schedules spent. */
  readonly schedules: number
  /** Whether it is proven that there is no schedule at all (only with maximum lags). */
  readonly infeasibleProven: boolean
}
