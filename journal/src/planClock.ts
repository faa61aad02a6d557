import { instantOf, localOf, type Course, type Plan } from '@swardwright/engine'

/** What the moments of entries are read against. */
export type PlanKnown = {
  readonly plan: Plan
  /** When that plan was settled, on the true clock; null while it is a draft. */
  readonly settledAt: string | null
  readonly course: Course
  /** Now, by the clock of the course, epoch milliseconds. */
  readonly nowMs: number
}

/**
 * When an entry happened by the clock that the plan goes by, epoch milliseconds; null where it does not concern the plan or lies after now. Entries stand on the true clock (J1): where the course's
 * clock is held, one outside the plan's days counts as happening at the held moment, if it was written on the day the plan was settled or later.
 */
export const planClock = ({ plan, settledAt, course, nowMs }: PlanKnown): ((at: string) => number | null) => {
  const fromMs = instantOf(plan.start, 0, course.timeZone)
  const settledDay =
    settledAt === null
      ? -Infinity
      : instantOf(localOf(Date.parse(settledAt), course.timeZone).date, 0, course.timeZone)
  return (at) => {
    const atMs = Date.parse(at)
    if (atMs >= fromMs && atMs <= nowMs) return atMs
    return course.now !== null && atMs >= settledDay ? nowMs : null
  }
}
