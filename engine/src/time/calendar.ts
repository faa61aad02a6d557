import * as v from 'valibot'
import { fail, ok, type Result } from '../result.ts'
import type { CalculationError } from '../catalogue/errors.ts'

/** Milliseconds in a day of 24 hours. */
export const DAY_MS = 86_400_000

const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})$/u

/**
 * Days from 1970-01-01 to a calendar day written `yyyy-mm-dd` (proleptic Gregorian).
 * NaN when the text is no such day: '2025-02-30', '1/2/2025'.
 */
export const dayNumber = (date: string): number => {
  const match = ISO_DATE.exec(date)
  if (match === null) return NaN
  const ms = Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3]))
  return new Date(ms).toISOString().startsWith(date) ? ms / DAY_MS : NaN
}

/** The calendar day that is `day` days after 1970-01-01, as `yyyy-mm-dd`. */
export const dateOfDay = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10)

/** The calendar day `days` later (earlier when negative). The date must be one: see `dayNumber`. */
export const addDays = (date: string, days: number): string => dateOfDay(dayNumber(date) + days)

/** Day of the year, 1 to 366. `J` in FAO-56. */
export const dayOfYear = (date: string): number =>
  dayNumber(date) - dayNumber(`${date.slice(0, 4)}-01-01`) + 1

/** Month of the year, 1 to 12. */
export const monthOf = (date: string): number => Number(date.slice(5, 7))

/** A calendar day in an input; `parseDate` says whether there is such a day. */
export const calendarDate = (meaning: string) => v.pipe(v.string(), v.description(`${meaning}, yyyy-mm-dd`))

/** Days since 1970-01-01, or an error that names the field when the text is no day of the calendar. */
export const parseDate = (field: string, date: string): Result<number, CalculationError> => {
  const day = dayNumber(date)
  return Number.isNaN(day)
    ? fail({
        type: 'wrongType',
        field,
        unit: '1',
        expected: 'a day of the calendar as yyyy-mm-dd',
        received: JSON.stringify(date),
      })
    : ok(day)
}
