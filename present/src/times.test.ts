import { describe, expect, it } from 'vitest'
import {
  clock,
  clockFrom,
  clockOfMinute,
  clockRange,
  dateAt,
  dateRange,
  dayAndClock,
  dayHeading,
  dayWords,
  durationWords,
  instantMs,
  minutesBetween,
  weekday,
} from './times.ts'

describe('the clock', () => {
  it('is the course\u2019s own, whatever offset the file has', () => {
    // Britain is one hour ahead of UTC in August, New York four behind, Kathmandu 5:45 ahead (tz database).
    expect(clock('2026-08-11T05:30:00Z', 'Europe/London')).toBe('06:30')
    expect(clock('2026-08-11T05:30:59+00:00', 'America/New_York')).toBe('01:30')
    expect(clock('2026-08-11T00:15:00Z', 'Asia/Kathmandu')).toBe('06:00')
  })

  it('keeps to the course\u2019s day over midnight', () => {
    expect(dateAt('2026-08-10T23:30:00Z', 'Europe/London')).toBe('2026-08-11')
    expect(dayAndClock('2026-08-10T23:30:00Z', 'Europe/London')).toBe('Tue 11 Aug 00:30')
    expect(clockRange('2026-08-10T22:30:00Z', '2026-08-10T23:30:00Z', 'Europe/London')).toBe(
      '23:30 to Tue 11 Aug 00:30',
    )
    expect(clockRange('2026-08-10T07:30:00Z', '2026-08-10T08:00:00Z', 'Europe/London')).toBe('08:30 to 09:00')
  })

  it('names the day of a clock that is not of the day in hand', () => {
    expect(clockFrom('2026-08-10', '2026-08-10T06:23:00Z', 'Europe/London')).toBe('07:23')
    expect(clockFrom('2026-08-10', '2026-08-11T06:23:00Z', 'Europe/London')).toBe('Tue 11 Aug 07:23')
    // 23:30 in Greenwich is half past midnight of the next day on the course's clock.
    expect(clockFrom('2026-08-10', '2026-08-10T23:30:00Z', 'Europe/London')).toBe('Tue 11 Aug 00:30')
  })

  it('reads minutes of a day, its end too', () => {
    expect([0, 390, 1439, 1440].map(clockOfMinute)).toEqual(['00:00', '06:30', '23:59', '24:00'])
  })

  it('refuses what is no instant', () => {
    expect(() => instantMs('teatime')).toThrow('teatime is no instant')
  })
})

describe('days', () => {
  it('have the weekday of the calendar on the wall', () => {
    // 11 August 2026 is a Tuesday, 29 February 2024 was a Thursday, 4 September 1966 a Sunday (perpetual calendar).
    expect(['2026-08-11', '2024-02-29', '1966-09-04'].map(dayWords)).toEqual([
      'Tue 11 Aug',
      'Thu 29 Feb',
      'Sun 4 Sept',
    ])
    expect(dayHeading('2026-08-11')).toBe('Tuesday 11 Aug')
    expect(weekday('2026-08-15')).toBe('Saturday')
  })

  it('make a range as short as can be said', () => {
    expect(dateRange('2026-09-05', '2026-09-08')).toBe('5 to 8 Sept')
    expect(dateRange('2026-08-28', '2026-09-03')).toBe('28 Aug to 3 Sept')
    expect(dateRange('2026-12-30', '2027-01-02')).toBe('30 Dec 2026 to 2 Jan 2027')
    expect(dateRange('2026-09-05', '2026-09-05')).toBe('5 Sept')
  })
})

describe('lengths of time', () => {
  it('read in hours and minutes', () => {
    expect([0, 25, 59.6, 120, 200].map(durationWords)).toEqual([
      '0 min',
      '25 min',
      '1 h',
      '2 h',
      '3 h 20 min',
    ])
    expect(minutesBetween('2026-08-11T06:00:00+01:00', '2026-08-11T05:25:00Z')).toBe(25)
  })
})
