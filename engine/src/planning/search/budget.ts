/**
 * What a search may spend. The coin is one placed activity: a complete schedule costs as many as it has activities, a partial rebuild
 * only those that it places again, and each direction of a forward-backward pass a schedule of its own. Everything stays a whole number.
 */
export type Budget = {
  /** Pays for activities just placed. */
  readonly spend: (placed: number) => void
  /** Whether the schedules are spent, or the caller asked to stop. Once true it stays true. */
  readonly isOver: () => boolean
  /** Schedules spent so far, a begun one counted whole. */
  readonly schedules: () => number
  /** Whether the caller's `stop` ended the search before its schedules were spent. */
  readonly isStopped: () => boolean
}

/** Limits of a search. */
export type BudgetLimits = {
  /** Complete schedules, at least 1. */
  readonly schedules: number
  /** Activities (tasks, greens: what the generator places one at a time) in one complete schedule, at least 1. */
  readonly activities: number
  /** Asked about once a schedule; true ends the search. The only way in which a clock may reach it. */
  readonly stop?: () => boolean
}

/** A fresh budget. */
export const budgetOf = ({ schedules, activities, stop }: BudgetLimits): Budget => {
  const limit = schedules * activities
  let spent = 0
  let askAt = 0
  let stopped = false
  const isOver = (): boolean => {
    if (stopped || spent >= limit) return true
    if (stop !== undefined && spent >= askAt) {
      askAt = spent + activities
      stopped = stop()
    }
    return stopped
  }
  return {
    spend: (placed) => {
      spent += placed
    },
    isOver,
    schedules: () => Math.ceil(spent / activities),
    isStopped: () => stopped,
  }
}
