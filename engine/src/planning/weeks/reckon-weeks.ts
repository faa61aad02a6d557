import type { Course } from '../../course/course.ts'
import { fail, ok, type Result } from '../../result.ts'
import { addDays, dateOfDay, dayNumber } from '../../time/calendar.ts'
import { daysAhead } from '../../weather/days-ahead.ts'
import type { PlanError } from '../plan-error.ts'
import type { Prescription } from '../prescription.ts'
import type { Excluded } from '../problem.ts'
import { workGround } from '../read-problem.ts'
import { WEATHER_PORTS } from '../make-plan.ts'
import { outlookOf, type WeekOutlook } from './outlook.ts'
import { yearsOnDates, type PastWeather, type Stretch, type YearHours } from './past-years.ts'
import { AFTER_DAYS, LEAD_DAYS, weekInYear, type WeekGround } from './week-in-year.ts'

/** What is asked. */
export type WeeksWanted = {
  readonly course: Course
  readonly prescription: Prescription
  readonly past: PastWeather
  /** First days to choose from, 1 to 200, on the course's calendar, within 370 days. */
  readonly firstDays: readonly string[]
  /** Days from the first to the last in which the work should be done, 1 to 21; every day counts on which the crew may work. */
  readonly days: number
  /** Most years to reckon with; the last ones of the record that serve. */
  readonly years: number
  readonly seed: number
  /** Schedules tried for each plan; default 100. */
  readonly schedules?: number
}

/** What holds for all candidates. */
export type Weeks = {
  readonly days: number
  /** Days looked at from each first day: the work may run over. */
  readonly horizonDays: number
  readonly seed: number
  readonly schedules: number
  readonly source: PastWeather['source']
  readonly years: readonly number[]
  /** Greens that no week can do: nothing is prescribed, or a machine, a skill or a located service is lacking. */
  readonly excluded: readonly Excluded[]
  /** By first day. */
  readonly weeks: readonly WeekOutlook[]
}

/** Why nothing can be reckoned. */
export type WeeksError =
  | PlanError
  | { readonly type: 'badFirstDays'; readonly received: number; readonly min: number; readonly max: number }
  | { readonly type: 'tooLongPeriod'; readonly receivedDays: number; readonly maxDays: number }
  | {
      readonly type: 'noWholeYear'
      /** What a year must have: every day from `from` to `to`, by month and day. */
      readonly from: string
      readonly to: string
      readonly recordFrom: string
      readonly recordTo: string
    }

/** What is asked unless somebody chooses: `weeks` to look at from the first day on. */
export const DEFAULT_WEEKS = { weeks: 12, days: 5, years: 10, seed: 1, schedules: 100, everyDays: 7 } as const

/** Limits of what can be asked. */
export const WEEKS_LIMITS = { days: 21, firstDays: 200, periodDays: 370, years: 60 } as const

/** Days that the work may run over before its greens count as left. */
export const OVERRUN_DAYS = 7
/** Enough of any stock: sand and tines are ordered for the week that is chosen. */
const ENOUGH_T = 1_000_000

/** The course with all the sand and tines that it takes. */
const wellStocked = ({ tineSets: _counted, ...course }: Course): Course => ({
  ...course,
  stores: course.stores.map((store) => ({ ...store, stockT: ENOUGH_T, deliveries: [] })),
})

const wrongDates = ({ firstDays, days }: WeeksWanted): WeeksError | null => {
  const bad = firstDays.find((date) => Number.isNaN(dayNumber(date)))
  if (bad !== undefined) return { type: 'badStart', received: bad }
  if (!Number.isInteger(days) || days < 1 || days > WEEKS_LIMITS.days)
    return { type: 'badDays', received: days, min: 1, max: WEEKS_LIMITS.days }
  const { firstDays: max, periodDays } = WEEKS_LIMITS
  if (firstDays.length < 1 || firstDays.length > max)
    return { type: 'badFirstDays', received: firstDays.length, min: 1, max }
  const numbers = firstDays.map(dayNumber)
  const receivedDays = Math.max(...numbers) - Math.min(...numbers) + 1
  return receivedDays > periodDays ? { type: 'tooLongPeriod', receivedDays, maxDays: periodDays } : null
}

/** The days that a year must have: from before the first candidate until the last one has healed. */
const stretchOf = (firstDays: readonly string[], horizonDays: number): Stretch => {
  const numbers = firstDays.map(dayNumber)
  const first = dateOfDay(Math.min(...numbers))
  const from = addDays(first, -LEAD_DAYS - 1)
  const tailFrom = addDays(dateOfDay(Math.max(...numbers)), horizonDays + 2)
  // Twice: the last green to be finished closes within one, and growth is followed for another.
  const end = addDays(tailFrom, 2 * AFTER_DAYS)
  return { year: Number(first.slice(0, 4)), from, days: dayNumber(end) - dayNumber(from), tailFrom }
}

type Year = { readonly hours: YearHours; readonly meanByDate: ReadonlyMap<string, number | null> }

const withMeans = (hours: YearHours, stretch: Stretch, timeZone: string): Year => {
  const days = daysAhead(hours.weather, { from: stretch.from, days: stretch.days, timeZone })
  return { hours, meanByDate: new Map(days.map(({ date, meanC }) => [date, meanC])) }
}

/** Told after each candidate. */
export type WeeksProgress = { readonly week: WeekOutlook; readonly done: number; readonly of: number }

/**
 * For every candidate first day and every past year: the crew's days in that year's hours, then the healing. The plan knows the hours of its year from the start, as if every
 * forecast had been right, and sand and tines are there. Same input, same answer. Errors: `WeeksError`.
 */
export const reckonWeeks = (
  wanted: WeeksWanted,
  onWeek: (progress: WeeksProgress) => void = () => undefined,
): Result<Weeks, WeeksError> => {
  const wrong = wrongDates(wanted)
  if (wrong !== null) return fail(wrong)
  const course = wellStocked(wanted.course)
  const { prescription, past, days, seed, schedules = DEFAULT_WEEKS.schedules } = wanted
  const work = workGround(course, prescription, WEATHER_PORTS)
  if (!work.ok) return work
  const horizonDays = days + OVERRUN_DAYS
  const ground: WeekGround = { course, prescription, work: work.value, horizonDays, seed, schedules }
  const stretch = stretchOf(wanted.firstDays, horizonDays)
  const years = yearsOnDates(past, stretch, wanted).map((hours) => withMeans(hours, stretch, course.timeZone))
  if (years.length === 0) return fail(noWholeYear(past, stretch))
  const firstDays = clearFirst(wanted)
  const weeks: WeekOutlook[] = []
  for (const firstDay of firstDays) {
    const found = []
    for (const { hours, meanByDate } of years) {
      const one = weekInYear(ground, firstDay, hours, meanByDate)
      if (!one.ok) return one
      found.push(one.value)
    }
    const week = outlookOf(firstDay, days, found)
    weeks.push(week)
    onWeek({ week, done: weeks.length, of: firstDays.length })
  }
  return ok({
    days,
    horizonDays,
    seed,
    schedules,
    source: past.source,
    years: years.map(({ hours }) => hours.year),
    excluded: work.value.excluded,
    weeks: weeks.toSorted((a, b) => (a.firstDay < b.firstDay ? -1 : 1)),
  })
}

/** First days in the order in which they are reckoned: those with a competition in the days wanted last, so that whoever stops early has seen the likelier ones. */
const clearFirst = ({ course, firstDays, days }: WeeksWanted): readonly string[] => {
  const meets = (firstDay: string): boolean =>
    course.fixtures.some(({ date }) => date >= firstDay && date < addDays(firstDay, days))
  const each = [...new Set(firstDays)].sort()
  return [...each.filter((day) => !meets(day)), ...each.filter(meets)]
}

const noWholeYear = ({ record }: PastWeather, { from, tailFrom }: Stretch): WeeksError => ({
  type: 'noWholeYear',
  from,
  to: addDays(tailFrom, -1),
  recordFrom: dateOfDay(record.startDay),
  recordTo: dateOfDay(record.startDay + record.days - 1),
})
