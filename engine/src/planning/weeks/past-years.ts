import type { Course } from '../../course/course.ts'
import { addDays, dateOfDay, dayNumber } from '../../time/calendar.ts'
import { seedOfPart } from '../../weather/chance.ts'
import {
  DAILY_COLUMN_NAMES,
  emptyRecord,
  type DailyRecord,
  type Station,
} from '../../weather/daily-record.ts'
import { generateDays } from '../../weather/generate.ts'
import { hoursOfDays } from '../../weather/hours-of-days.ts'
import { HOUR_MS, type WeatherHours } from '../../weather/hours.ts'
import { maritimeNormals } from '../../weather/usual-normals.ts'
import { climateOfNormals, type ClimateNormals } from '../../weather/normals.ts'

/** Years of daily weather: a record of the place, or days drawn from a climate. */
export type PastWeather = {
  readonly record: DailyRecord
  readonly station: Station
  readonly source: 'record' | 'drawn'
}

/** First year of drawn weather: after all records, so that nobody takes it for one. */
const DRAWN_FROM_YEAR = 2101

/** Days drawn for so many years of renovations: a season begins in one year and recovers in the next. */
export const drawnYears = (normals: ClimateNormals, years: number, seed: number): PastWeather => {
  const climate = climateOfNormals(normals)
  const startDay = dayNumber(`${DRAWN_FROM_YEAR - 1}-01-01`)
  const days = dayNumber(`${DRAWN_FROM_YEAR + years + 1}-01-01`) - startDay
  return { record: generateDays(climate, startDay, days, seed), station: climate.station, source: 'drawn' }
}

/** The same from the usual normals of the place where a course lies: not the course's own. */
export const usualYears = (course: Course, years: number, seed: number): PastWeather => {
  const [longitudeDeg, latitudeDeg] = course.greens[0]?.at ?? [0, 0]
  const { altitudeM } = course
  return drawnYears(maritimeNormals({ latitudeDeg, longitudeDeg, altitudeM }), years, seed)
}

/** A stretch of the calendar on which past years are laid. */
export type Stretch = {
  /** Year of the first candidate: weather of year Y is laid so that its days of year Y fall into this one. */
  readonly year: number
  readonly from: string
  readonly days: number
  /** From this day on only the temperature counts, and one day in ten may lack it. */
  readonly tailFrom: string
}

/** The day of a past year that stands for a day of the calendar: the same day and month; 28 February for a 29th that the year does not have. */
export const sameDayOf = (date: string, yearsOn: number): number => {
  const year = String(Number(date.slice(0, 4)) + yearsOn).padStart(4, '0')
  const day = dayNumber(`${year}${date.slice(4)}`)
  return Number.isNaN(day) ? dayNumber(`${year}-02-28`) : day
}

/** Largest share of the days after the work that may lack their temperature. */
const GAPS_MAX = 0.1

/** A past year laid on a stretch of the calendar; null where the record lacks a day of the work, or too many after it. */
export const yearOnDates = (record: DailyRecord, stretch: Stretch, year: number): DailyRecord | null => {
  const startDay = dayNumber(stretch.from)
  const tail = dayNumber(stretch.tailFrom) - startDay
  const laid = emptyRecord(startDay, stretch.days)
  let gaps = 0
  for (let i = 0; i < stretch.days; i++) {
    const at = sameDayOf(dateOfDay(startDay + i), year - stretch.year) - record.startDay
    for (const name of DAILY_COLUMN_NAMES) laid.columns[name][i] = record.columns[name][at] ?? NaN
    const [rainMm, minC, maxC] = [laid.columns.rainMm[i], laid.columns.minC[i], laid.columns.maxC[i]]
    const isCold = Number.isNaN(minC) || Number.isNaN(maxC)
    if (i < tail && (isCold || Number.isNaN(rainMm))) return null
    if (isCold) gaps++
  }
  return gaps > GAPS_MAX * (stretch.days - tail) ? null : laid
}

/** A year laid on the calendar, hour by hour. */
export type YearHours = { readonly year: number; readonly weather: WeatherHours }

/**
 * The last years of a record that serve for every day of a stretch, oldest first, hour by hour. Days are laid date on date in UTC, so that sun and weather stay together and the
 * club's clock changes when the calendar of the stretch says so, not that of the past year. When in a day it rained is drawn (`hoursOfDays`), for each year by a seed of its own.
 */
export const yearsOnDates = (
  { record, station }: PastWeather,
  stretch: Stretch,
  wanted: { readonly years: number; readonly seed: number },
): readonly YearHours[] => {
  const [first, last] = [record.startDay, record.startDay + record.days - 1].map((day) =>
    Number(dateOfDay(day).slice(0, 4)),
  )
  const found: YearHours[] = []
  for (let year = last ?? 0; year >= (first ?? 0) - 1 && found.length < wanted.years; year--) {
    const laid = yearOnDates(record, stretch, year)
    if (laid === null) continue
    const span = { fromDay: laid.startDay, days: laid.days, seed: seedOfPart(wanted.seed, year) }
    found.push({ year, weather: hoursOfDays(laid, station, span) })
  }
  return found.toReversed()
}

/** Some days of weather hours, without a copy: `days` UTC days from a date on, as far as there are any. */
export const daysOf = (weather: WeatherHours, from: string, days: number): WeatherHours => {
  const first = Math.max(0, Math.round((Date.parse(`${from}T00:00:00Z`) - weather.startMs) / HOUR_MS))
  const end = Math.min(weather.hours, first + days * 24)
  const part = (column: Float64Array): Float64Array => column.subarray(first, end)
  return {
    startMs: weather.startMs + first * HOUR_MS,
    hours: end - first,
    members: 1,
    rainMm: part(weather.rainMm),
    temperatureC: part(weather.temperatureC),
    dewPointC: part(weather.dewPointC),
    windMPerS: part(weather.windMPerS),
    gustMPerS: part(weather.gustMPerS),
    radiationWPerM2: part(weather.radiationWPerM2),
  }
}

/** First days to choose from: every so many days from one date to another, both included where they fall so. */
export const firstDaysBetween = (from: string, to: string, everyDays: number): readonly string[] => {
  const count = Math.floor((dayNumber(to) - dayNumber(from)) / everyDays) + 1
  return Array.from({ length: Math.max(0, count) }, (_, i) => addDays(from, i * everyDays))
}

/** 5 January 1970, a Monday, in days since the first. */
const A_MONDAY = 4

/** The first Monday after a day. */
export const mondayAfter = (date: string): string => {
  const day = dayNumber(date)
  return dateOfDay(day + 7 - ((((day - A_MONDAY) % 7) + 7) % 7))
}
