import type { Course } from '../../course/course.ts'
import { expectedBack } from '../../recovery/expected-back.ts'
import { ok, type Result } from '../../result.ts'
import { addDays } from '../../time/calendar.ts'
import { localOf, MINUTE_MS } from '../../time/zone.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import { groupOf } from '../green-work.ts'
import type { PlanError } from '../plan-error.ts'
import type { Prescription } from '../prescription.ts'
import type { Problem } from '../problem.ts'
import { problemOnGround, type WorkGround } from '../read-problem.ts'
import { openedGreens, type Opened } from '../score.ts'
import { solve } from '../solve/solve.ts'
import { weatherSky } from '../weather-sky.ts'
import { clashesOf, type Clash } from './clashes.ts'
import { growthLeft } from './growth-left.ts'
import { daysOf, type YearHours } from './past-years.ts'

/** Days of weather before the first day: how wet the ground is to begin with. */
export const LEAD_DAYS = 3
/** Days over which `expectedBack` looks for the closing of holes, and growth is followed. */
export const AFTER_DAYS = 180

/** What one candidate came to in the weather of one year. */
export type WeekInYear = {
  readonly year: number
  /** Greens that could be worked and were not finished within the days looked at. */
  readonly greensLeft: number
  /** Day on which the last green was finished; null when some were not. */
  readonly finishedOn: string | null
  /** Days lost to weather: see `daysLost`. */
  readonly daysLost: number
  /** Green-days between opening and finishing, as a plan counts them. */
  readonly shutGreenDays: number
  /** First day on which all greens may be back, and the day by which they should be; null when it cannot be said. */
  readonly backFrom: string | null
  readonly backBy: string | null
  readonly clashes: readonly Clash[]
  /** Growing days from `backBy` until growth ends; 0 where it is not known when the greens are back: nobody can count on any. */
  readonly growingDaysLeft: number
  /** Day on which growth ends; null when it goes on for the half-year after, or when they are not back. */
  readonly growthEnds: string | null
}

/** What is alike for all candidates and years. */
export type WeekGround = {
  /** With enough sand and tines: they are ordered for the week that is chosen. */
  readonly course: Course
  readonly prescription: Prescription
  readonly work: WorkGround
  /** Days of the horizon. */
  readonly horizonDays: number
  readonly seed: number
  readonly schedules: number
}

/**
 * Days lost to weather: days until the last green is opened (or of the whole horizon) on which somebody is at work and greens are still to be opened, but none can be, and no
 * competition holds any of those: it rains, the ground is too wet or frozen, or sand would not dry by evening. A day cut short is not counted.
 */
const daysLost = (problem: Problem, opened: readonly Opened[]): number => {
  const openedAt = new Map(opened.map((one) => [one.green, one.opened]))
  return problem.days.filter(({ startMin, endMin }) => {
    const isStaffed = problem.people.some(({ shifts }) =>
      shifts.some(({ start }) => start >= startMin && start < endMin),
    )
    const left = problem.greens.flatMap(({ fixtures }, green) => {
      const at = openedAt.get(green) ?? Infinity
      return at < startMin ? [] : [{ at, fixtures }]
    })
    const isOpened = left.some(({ at }) => at < endMin)
    const isHeld = left.some(({ fixtures }) =>
      fixtures.some(({ start, end }) => start < endMin && end > startMin),
    )
    return isStaffed && left.length > 0 && !isOpened && !isHeld
  }).length
}

type Back = { readonly from: string; readonly by: string | null }

/** When each group is back, reckoned from the day on which its last green is finished. */
const backs = (
  { course, prescription }: WeekGround,
  finishedByGreen: ReadonlyMap<string, string>,
  weather: WeatherHours,
): readonly Back[] =>
  prescription.groups.flatMap((group) => {
    const dates = [...finishedByGreen].flatMap(([green, date]) =>
      groupOf(prescription, green) === group ? [date] : [],
    )
    if (dates.length === 0) return []
    const finished = dates.reduce(later)
    const hours = daysOf(weather, addDays(finished, -1), AFTER_DAYS + 3)
    const back = expectedBack({ group, finished, weather: hours, timeZone: course.timeZone })
    // A group that opens nothing is back as soon as it is finished.
    return [back === null ? { from: finished, by: finished } : { from: back.from, by: back.to }]
  })

const later = (a: string, b: string): string => (b > a ? b : a)

/** When all groups are back; at least one is given. */
const allBack = (each: readonly Back[]): Back => ({
  from: each.map(({ from }) => from).reduce(later),
  by: each.map(({ by }) => by).reduce((a, b) => (a === null || b === null ? null : later(a, b))),
})

const growthAfter = (
  backBy: string | null,
  meanByDate: ReadonlyMap<string, number | null>,
): Pick<WeekInYear, 'growingDaysLeft' | 'growthEnds'> => {
  if (backBy === null) return { growingDaysLeft: 0, growthEnds: null }
  const means = Array.from({ length: AFTER_DAYS }, (_, day) => meanByDate.get(addDays(backBy, day)) ?? null)
  const { growingDays, endsAfterDays } = growthLeft(means)
  return {
    growingDaysLeft: growingDays,
    growthEnds: endsAfterDays === null ? null : addDays(backBy, endsAfterDays),
  }
}

/** Works the renovation from a first day on in the weather of one year, then lets it heal. Errors: `PlanError`. */
export const weekInYear = (
  ground: WeekGround,
  firstDay: string,
  year: YearHours,
  meanByDate: ReadonlyMap<string, number | null>,
): Result<WeekInYear, PlanError> => {
  const { course, prescription, horizonDays: days, seed, schedules } = ground
  const weather = daysOf(year.weather, addDays(firstDay, -LEAD_DAYS), days + LEAD_DAYS + 2)
  const problem = problemOnGround(
    { course, prescription, weather, start: firstDay, days },
    weatherSky,
    ground.work,
  )
  if (!problem.ok) return problem
  const solved = solve(problem.value, { seed, schedules })
  const opened = openedGreens(problem.value, solved.schedule.tasks)
  const dateOf = (minute: number): string =>
    localOf(problem.value.originMs + minute * MINUTE_MS, course.timeZone).date
  const finishedByGreen = new Map(
    opened.map(({ green, finished }) => [problem.value.greens[green]?.id ?? '', dateOf(finished)]),
  )
  const greensLeft = problem.value.greens.length - opened.length
  const isWhole = greensLeft === 0 && opened.length > 0
  const finishedOn = isWhole ? [...finishedByGreen.values()].reduce(later) : null
  const back = isWhole ? allBack(backs(ground, finishedByGreen, year.weather)) : null
  const backBy = back?.by ?? null
  const until = backBy ?? addDays(finishedOn ?? firstDay, finishedOn === null ? days : AFTER_DAYS)
  const worked = new Set(problem.value.greens.map(({ id }) => id))
  return ok({
    year: year.year,
    greensLeft,
    finishedOn,
    daysLost: daysLost(problem.value, opened),
    shutGreenDays: solved.score.shutGreenDays,
    backFrom: back?.from ?? null,
    backBy,
    clashes: clashesOf(course.fixtures, worked, { firstDay, finishedOn, until }),
    ...growthAfter(backBy, meanByDate),
  })
}
