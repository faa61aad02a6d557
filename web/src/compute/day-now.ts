import {
  lastSafeStartNow,
  ok,
  replan,
  type Course,
  type DayFact,
  type Plan,
  type PlanError,
  type Replanned,
  type Result,
  type SituationError,
  type WeatherHours,
} from '@swardwright/engine'
import { dateAt } from '@swardwright/present'
import { problemFor } from './plan-problem.ts'

/** What the day is worked out from. */
export type DayAsk = {
  readonly plan: Plan
  readonly course: Course
  readonly weather: WeatherHours | null
  readonly facts: readonly DayFact[]
  /** An instant with its offset. */
  readonly now: string
  readonly hasNewForecast: boolean
}

/** The day at one minute. */
export type DayNow = {
  readonly again: Replanned
  /** The green opened next today and until when it may be; null where none is. `until` null: it can't be opened in time any more. */
  readonly next: { readonly green: string; readonly opened: string; readonly until: string | null } | null
}

/** Makes the plan again from the facts of the day and finds the last safe start of the green that comes next. */
export const dayNow = (ask: DayAsk): Result<DayNow, PlanError | SituationError> => {
  const problem = problemFor(ask.plan, ask.course, ask.weather)
  if (!problem.ok) return problem
  const input = { ...ask, problem: problem.value }
  const made = replan(input)
  if (!made.ok) return made
  const again = made.value
  const { timeZone } = ask.course
  const nowMs = Date.parse(ask.now)
  const coming = again.plan.openings
    .filter(
      ({ opened }) => Date.parse(opened) >= nowMs && dateAt(opened, timeZone) === dateAt(nowMs, timeZone),
    )
    .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))[0]
  if (coming === undefined) return ok({ again, next: null })
  const { green, opened } = coming
  const safe = lastSafeStartNow({ ...input, plan: again.plan }, green)
  if (!safe.ok) return safe
  const isLost = again.caught.some((one) => one.green === green)
  return ok({ again, next: { green, opened, until: isLost ? null : safe.value } })
}
