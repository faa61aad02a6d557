import {
  climateMonths,
  climateOfNormals,
  dayNumber,
  emptyRecord,
  generateDays,
  maritimeNormals,
  rainChance,
  weatherOfCourse,
  windowChance,
  workableHours,
  type ClimateMonth,
  type Course,
  type DailyRecord,
  type DryWindow,
  type Operation,
  type Station,
  type WeatherHours,
} from '@swardwright/engine'
import { DAILY_COLUMN_NAMES } from '@swardwright/engine'
import type { KeptHistory } from '@swardwright/journal'

/** A year by months, and what it stands on. */
export type Climate = {
  readonly months: readonly ClimateMonth[]
  /** Years of days behind it. */
  readonly years: number
  /** True when there is no record, so that the days were drawn from the normals of a maritime climate. */
  readonly generated: boolean
}

/** What a climate is asked of. */
export type ClimateWanted = {
  readonly history: KeptHistory | null
  readonly place: Omit<Station, 'windHeightM'>
  readonly window: DryWindow
}

/** Years drawn where there is no record: enough for a chance to a few percent. */
const DRAWN_YEARS = 40
const DRAWN_FROM = '2101-01-01'
const SEED = 1

/** A kept record as columns. */
export const recordOf = (history: KeptHistory): DailyRecord => {
  const startDay = dayNumber(history.from)
  const record = emptyRecord(startDay, dayNumber(history.to) - startDay + 1)
  for (const name of DAILY_COLUMN_NAMES)
    for (const [i, value] of (history.columns[name] ?? []).entries())
      if (value !== null) record.columns[name][i] = value
  return record
}

/** The year of a course by months: from its record, else from days drawn from the normals of a maritime climate. */
export const climateOf = ({ history, place, window }: ClimateWanted): Climate => {
  const days = Math.round(DRAWN_YEARS * 365.25)
  const [record, station] =
    history === null
      ? [
          generateDays(climateOfNormals(maritimeNormals(place)), dayNumber(DRAWN_FROM), days, SEED),
          { ...place, windHeightM: 10 },
        ]
      : [recordOf(history), history.station]
  return {
    months: climateMonths(record, station, { window, season: 'cool' }),
    years: record.days / 365.25,
    generated: history === null,
  }
}

/** What the members of an ensemble say together, hour by hour. */
export type Chances = {
  readonly startMs: number
  readonly members: number
  /** Chance that the club’s rain stop is reached in the hour. */
  readonly rain: Float64Array
  /** Chance that work begun with the hour can go on as long as asked. */
  readonly window: Float64Array
}

/** An ensemble, and for what work how many hours on end are wished for. */
export type ChancesWanted = {
  readonly course: Course
  readonly weather: WeatherHours
  readonly operation: Operation
  readonly hours: number
}

/** Chances of an ensemble over a course; null when a threshold of the club’s is out of range. */
export const chancesOf = (wanted: ChancesWanted): Chances | null => {
  const { course, weather, operation, hours } = wanted
  const judged = weatherOfCourse(course)
  if (!judged.ok) return null
  const workableOf = (member: number): Uint8Array =>
    workableHours({ weather, member, ...judged.value, operations: [operation] }).byOperation.get(operation)
      ?.workable ?? new Uint8Array(weather.hours)
  return {
    startMs: weather.startMs,
    members: weather.members,
    rain: rainChance(weather, judged.value.settings.rainStopMmPerH),
    window: windowChance(weather, hours, workableOf),
  }
}
