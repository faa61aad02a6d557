import { describe, expect, it } from 'vitest'
import { addDays, DAY_MS, dateOfDay, dayNumber } from '../../time/calendar.ts'
import { localOf } from '../../time/zone.ts'
import { sunDay } from '../../weather/daylight.ts'
import { emptyRecord, type DailyRecord } from '../../weather/daily-record.ts'
import { HOUR_MS } from '../../weather/hours.ts'
import { daysOf, firstDaysBetween, mondayAfter, sameDayOf, yearOnDates, yearsOnDates } from './past-years.ts'

/** A record whose highest temperature tells month and day: 2 March is 3.02 C over the lowest of 1 C. */
const dated = (from: string, to: string): DailyRecord => {
  const startDay = dayNumber(from)
  const record = emptyRecord(startDay, dayNumber(to) - startDay + 1)
  for (let i = 0; i < record.days; i++) {
    const date = dateOfDay(startDay + i)
    record.columns.rainMm[i] = 0
    record.columns.minC[i] = 1
    record.columns.maxC[i] = 1 + Number(date.slice(5, 7)) + Number(date.slice(8)) / 100
  }
  return record
}

const LONDON = { latitudeDeg: 51.5, longitudeDeg: -0.1, altitudeM: 20, windHeightM: 10 }

describe('days of a past year on the calendar', () => {
  it('are those of the same day and month; 29 February is 28 February where the year has none', () => {
    // 2024 and 2028 are leap years of the Gregorian calendar, 2023 is none.
    expect(dateOfDay(sameDayOf('2027-08-16', -4))).toBe('2023-08-16')
    expect(dateOfDay(sameDayOf('2028-02-29', -4))).toBe('2024-02-29')
    expect(dateOfDay(sameDayOf('2028-02-29', -5))).toBe('2023-02-28')
    expect(dateOfDay(sameDayOf('2028-03-01', -5))).toBe('2023-03-01')
  })

  it('lie date on date over the end of February and of the year, whichever years are leap years', () => {
    const record = dated('2023-01-01', '2025-12-31')
    const laidOn = (from: string, days: number, year: number): readonly number[] => {
      const stretch = { year: Number(from.slice(0, 4)), from, days, tailFrom: addDays(from, days) }
      return [...(yearOnDates(record, stretch, year)?.columns.maxC ?? [])].map(
        (c) => Math.round(c * 100) - 100,
      )
    }
    expect(laidOn('2028-02-28', 3, 2023)).toEqual([228, 228, 301])
    expect(laidOn('2028-02-28', 3, 2024)).toEqual([228, 229, 301])
    expect(laidOn('2027-02-28', 2, 2024)).toEqual([228, 301])
    expect(laidOn('2027-12-31', 2, 2024)).toEqual([1231, 101])
  })

  it('do without a year that lacks a day of the work, or more than one day in ten after it', () => {
    const stretch = { year: 2027, from: '2027-06-01', days: 40, tailFrom: '2027-06-11' }
    const usedWithout = (...dates: readonly string[]): boolean => {
      const record = dated('2023-01-01', '2023-12-31')
      for (const date of dates) record.columns.maxC[dayNumber(date) - record.startDay] = NaN
      return yearOnDates(record, stretch, 2023) !== null
    }
    expect(usedWithout()).toBe(true)
    expect(usedWithout('2023-06-10')).toBe(false)
    expect(usedWithout('2023-06-11', '2023-06-12', '2023-06-13')).toBe(true)
    expect(usedWithout('2023-06-11', '2023-06-12', '2023-06-13', '2023-06-14')).toBe(false)
  })
})

describe('past years hour by hour', () => {
  const past = { record: dated('2021-01-01', '2024-12-31'), station: LONDON, source: 'record' } as const
  const stretch = { year: 2026, from: '2026-03-26', days: 10, tailFrom: '2026-04-05' }

  it('are the last ones that serve, oldest first', () => {
    expect(yearsOnDates(past, stretch, { years: 3, seed: 1 }).map(({ year }) => year)).toEqual([
      2022, 2023, 2024,
    ])
    expect(yearsOnDates(past, stretch, { years: 30, seed: 1 })).toHaveLength(4)
  })

  it('keep sun and sky together when the clocks change, by the calendar of the candidate', () => {
    // tz database, Europe/London: summer time begins on 29 March 2026; in 2023 it began on 26 March.
    const [of2023] = yearsOnDates(past, stretch, { years: 2, seed: 1 })
    expect(of2023?.year).toBe(2023)
    for (const date of ['2026-03-28', '2026-03-30']) {
      const { weather } = of2023 ?? { weather: null }
      const hours = weather === null ? null : daysOf(weather, date, 1)
      const firstLight = hours?.radiationWPerM2.findIndex((w) => w > 0) ?? -1
      const atMs = (hours?.startMs ?? 0) + firstLight * HOUR_MS
      const sunrise = sunDay(dayNumber(date), LONDON.latitudeDeg, LONDON.longitudeDeg, 0).sunrise.atMs ?? 0
      expect(Math.abs(sunrise - atMs)).toBeLessThanOrEqual(HOUR_MS)
      const wallHour = Math.floor(localOf(atMs, 'Europe/London').minuteOfDay / 60)
      // Sunrise in London: 05:46 GMT on 28 March, 06:42 BST on 30 March.
      expect(wallHour).toBe(date === '2026-03-28' ? 5 : 6)
    }
  })

  it('are cut out without a copy, and end where the weather ends', () => {
    const [year] = yearsOnDates(past, stretch, { years: 1, seed: 1 })
    const weather = year?.weather
    if (weather === undefined) throw new Error('no year')
    const part = daysOf(weather, '2026-04-03', 5)
    expect(part.startMs).toBe(dayNumber('2026-04-03') * DAY_MS)
    expect(part.hours).toBe(2 * 24)
    expect(part.rainMm.buffer).toBe(weather.rainMm.buffer)
  })
})

it('first days follow each other by so many days, the last one included', () => {
  expect(firstDaysBetween('2026-12-21', '2027-01-04', 7)).toEqual(['2026-12-21', '2026-12-28', '2027-01-04'])
  expect(firstDaysBetween('2028-02-28', '2028-03-01', 1)).toEqual(['2028-02-28', '2028-02-29', '2028-03-01'])
})

it('the Monday after a Sunday is the next day, after a Monday a week on', () => {
  // 9 August 2026 is a Sunday; 29 December 1969 was a Monday.
  expect(mondayAfter('2026-08-09')).toBe('2026-08-10')
  expect(mondayAfter('2026-08-10')).toBe('2026-08-17')
  expect(mondayAfter('1969-12-29')).toBe('1970-01-05')
})
