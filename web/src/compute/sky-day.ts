import {
  calculate,
  dateOfDay,
  dayNumber,
  daysAhead,
  HOUR_MS,
  localOf,
  type Course,
  type DayAhead,
  type Operation,
  type WeatherHours,
} from '@swardwright/engine'
import { workableDays, type WorkableDay } from '@swardwright/present'

/** A figure with the calculation that gave it. */
type Figured = {
  readonly value: number
  readonly from: {
    readonly item: string
    readonly input: Readonly<Record<string, unknown>>
    readonly output: string
  }
}

/** One day ahead as the weather page shows it. */
export type SkyDay = {
  readonly day: DayAhead
  readonly workable: readonly WorkableDay[]
  /** Growth potential, 0 to 1, from the mean temperature of the day. */
  readonly growth: Figured | null
  /** Reference evapotranspiration of the day, mm. */
  readonly et: Figured | null
  /** What sunrise and sunset are worked out from. */
  readonly sun: Figured['from']
}

/** Asks the catalogue, so that the figure shown is the one that its panel explains. */
const figured = (item: string, input: Figured['from']['input'], output: string): Figured | null => {
  const answer = calculate(item, input)
  if (!answer.ok || typeof answer.value !== 'object' || answer.value === null) return null
  const value: unknown = Object.entries(answer.value).find(([name]) => name === output)?.[1]
  return typeof value === 'number' ? { value, from: { item, input, output } } : null
}

const optional = (name: string, value: number | null): Readonly<Record<string, number>> =>
  value === null ? {} : { [name]: value }

const etOf = (day: DayAhead, course: Course, latitudeDeg: number): Figured | null => {
  if (day.minC === null || day.maxC === null || !isWhole(day)) return null
  return figured(
    'weather.referenceEvapotranspiration',
    {
      date: day.date,
      latitudeDeg,
      altitudeM: course.altitudeM,
      minC: day.minC,
      maxC: day.maxC,
      ...optional('dewPointC', day.dewPointC),
      ...optional('windMPerS', day.windMPerS),
      ...(day.windMPerS === null ? {} : { windHeightM: 10 }),
      ...optional('radiationMJPerM2', day.radiationMJPerM2),
    },
    'etMm',
  )
}

/** A day with fewer known hours is left out: a forecast that begins an hour before midnight says nothing of that day. */
const LEAST_HOURS = 3

/** Growth and water use are figures of a whole day: at most so many of its hours may be missing. */
const MISSING_MOST = 6

const isWhole = (day: DayAhead): boolean => day.hoursUnknown <= MISSING_MOST

/** The days of the weather from a day on that have hours in it. */
export const skyDays = (
  course: Course,
  weather: WeatherHours,
  from: string,
  operations: readonly Operation[],
): readonly SkyDay[] => {
  const { timeZone } = course
  const [longitudeDeg, latitudeDeg] = course.greens[0]?.at ?? [0, 0]
  const firstHas = localOf(weather.startMs, timeZone).date
  const first = firstHas > from ? firstHas : from
  const last = localOf(weather.startMs + (weather.hours - 1) * HOUR_MS, timeZone).date
  const days = dayNumber(last) - dayNumber(first) + 1
  if (days < 1) return []
  const known = daysAhead(weather, { from: first, days, timeZone }).filter(
    (day) => (day.toMs - day.fromMs) / HOUR_MS - day.hoursUnknown >= LEAST_HOURS,
  )
  return known.map((day) => ({
    day,
    workable: workableDays(course, weather, day, operations) ?? [],
    growth:
      day.meanC === null || !isWhole(day)
        ? null
        : figured('growth.potential', { meanC: day.meanC, season: 'cool' }, 'potential'),
    et: etOf(day, course, latitudeDeg),
    sun: {
      item: 'daylight.sun',
      input: {
        date: day.date,
        latitudeDeg,
        longitudeDeg,
        utcOffsetMinutes: localOf((day.fromMs + day.toMs) / 2, timeZone).offsetMin,
      },
      output: 'sunset',
    },
  }))
}

/** The stretch of days of a record that the archive is asked for: whole years, ending with the last one. */
export const archiveYears = (
  today: string,
  years: number,
): { readonly from: string; readonly to: string } => {
  const lastYear = Number(today.slice(0, 4)) - 1
  return { from: `${lastYear - years + 1}-01-01`, to: dateOfDay(dayNumber(`${lastYear}-12-31`)) }
}
