import { addDays } from '../time/calendar.ts'
import { instantOf } from '../time/zone.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'
import { MJ_PER_WH } from './radiation.ts'

/** One day of the course's own calendar in one member of the weather. A figure is null where no hour of the day has it. */
export type DayAhead = {
  readonly date: string
  /** Local midnight to local midnight; 23 or 25 hours apart when the clocks change. */
  readonly fromMs: number
  readonly toMs: number
  readonly rainMm: number | null
  readonly minC: number | null
  readonly maxC: number | null
  /** Mean of the hours' temperatures. */
  readonly meanC: number | null
  readonly dewPointC: number | null
  /** Mean and highest wind at 10 m, m/s. */
  readonly windMPerS: number | null
  readonly windMostMPerS: number | null
  readonly gustMPerS: number | null
  /** Global radiation of the day, MJ/m2; null unless every hour has it. */
  readonly radiationMJPerM2: number | null
  /** Hours of the day without a rain figure. */
  readonly hoursUnknown: number
}

const known = (column: Float64Array, rows: readonly number[]): number[] =>
  rows.flatMap((row) => {
    const value = column[row] ?? NaN
    return Number.isNaN(value) ? [] : [value]
  })

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0)
const orNull = (values: readonly number[], of: (values: readonly number[]) => number): number | null =>
  values.length === 0 ? null : of(values)
const mean = (values: readonly number[]): number => sum(values) / values.length
const least = (values: readonly number[]): number => Math.min(...values)
const most = (values: readonly number[]): number => Math.max(...values)

/** Sums the hours up by days of the course's own calendar. An hour belongs to the day in which it begins. */
export const daysAhead = (
  weather: WeatherHours,
  wanted: {
    readonly from: string
    readonly days: number
    readonly timeZone: string
    readonly member?: number
  },
): readonly DayAhead[] =>
  Array.from({ length: wanted.days }, (_, index): DayAhead => {
    const date = addDays(wanted.from, index)
    const fromMs = instantOf(date, 0, wanted.timeZone)
    const toMs = instantOf(addDays(date, 1), 0, wanted.timeZone)
    const first = Math.ceil((fromMs - weather.startMs) / HOUR_MS)
    const end = Math.ceil((toMs - weather.startMs) / HOUR_MS)
    const base = (wanted.member ?? 0) * weather.hours
    const rows = Array.from({ length: end - first }, (_hour, h) => first + h)
      .filter((h) => h >= 0 && h < weather.hours)
      .map((h) => base + h)
    const rain = known(weather.rainMm, rows)
    const temperature = known(weather.temperatureC, rows)
    const wind = known(weather.windMPerS, rows)
    const radiation = known(weather.radiationWPerM2, rows)
    return {
      date,
      fromMs,
      toMs,
      rainMm: orNull(rain, sum),
      minC: orNull(temperature, least),
      maxC: orNull(temperature, most),
      meanC: orNull(temperature, mean),
      dewPointC: orNull(known(weather.dewPointC, rows), mean),
      windMPerS: orNull(wind, mean),
      windMostMPerS: orNull(wind, most),
      gustMPerS: orNull(known(weather.gustMPerS, rows), most),
      radiationMJPerM2: radiation.length === end - first ? sum(radiation) * MJ_PER_WH : null,
      hoursUnknown: end - first - rain.length,
    }
  })
