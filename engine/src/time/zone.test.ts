import { describe, expect, it } from 'vitest'
import { addDays, instantOf, isoWithOffset, isTimeZone, localOf } from './zone.ts'

/**
 * Rules of the changes, from the tz database (europe, northamerica, australasia files):
 * Britain last Sunday of March and October at 01:00 UTC; USA second Sunday of March, first of November at 02:00 wall time;
 * Lord Howe first Sunday of April and October at 02:00 wall time, by half an hour (+10:30 and +11:00).
 */
const at = (iso: string): number => Date.parse(iso)

describe('a club clock', () => {
  it('shows summer time in Britain and knows its offset', () => {
    expect(isoWithOffset(at('2026-08-10T05:00:00Z'), 'Europe/London')).toBe('2026-08-10T06:00:00+01:00')
    expect(localOf(at('2026-08-09T23:30:00Z'), 'Europe/London')).toEqual({
      date: '2026-08-10',
      minuteOfDay: 30,
      offsetMin: 60,
    })
  })

  it.each([
    ['Europe/London', '2026-03-29', 59, '2026-03-29T00:59:00Z'],
    ['Europe/London', '2026-03-29', 120, '2026-03-29T01:00:00Z'],
    ['Europe/London', '2026-10-25', 59, '2026-10-24T23:59:00Z'],
    ['Europe/London', '2026-10-25', 120, '2026-10-25T02:00:00Z'],
    ['America/New_York', '2026-03-08', 119, '2026-03-08T06:59:00Z'],
    ['America/New_York', '2026-03-08', 180, '2026-03-08T07:00:00Z'],
    ['America/New_York', '2026-11-01', 120, '2026-11-01T07:00:00Z'],
    ['Australia/Lord_Howe', '2026-04-05', 60, '2026-04-04T14:00:00Z'],
    ['Australia/Lord_Howe', '2026-04-05', 120, '2026-04-04T15:30:00Z'],
    ['Australia/Lord_Howe', '2026-10-04', 119, '2026-10-03T15:29:00Z'],
    ['Australia/Lord_Howe', '2026-10-04', 150, '2026-10-03T15:30:00Z'],
  ])('in %s on %s minute %i is %s', (zone, date, minute, iso) => {
    expect(new Date(instantOf(date, minute, zone)).toISOString()).toBe(new Date(at(iso)).toISOString())
  })

  it('moves a time skipped in spring on by the gap', () => {
    expect(isoWithOffset(instantOf('2026-03-29', 90, 'Europe/London'), 'Europe/London')).toBe(
      '2026-03-29T02:30:00+01:00',
    )
    expect(isoWithOffset(instantOf('2026-10-04', 130, 'Australia/Lord_Howe'), 'Australia/Lord_Howe')).toBe(
      '2026-10-04T02:40:00+11:00',
    )
  })

  it('takes the first of a time that comes twice in autumn', () => {
    expect(isoWithOffset(instantOf('2026-10-25', 90, 'Europe/London'), 'Europe/London')).toBe(
      '2026-10-25T01:30:00+01:00',
    )
    expect(isoWithOffset(instantOf('2026-11-01', 90, 'America/New_York'), 'America/New_York')).toBe(
      '2026-11-01T01:30:00-04:00',
    )
    expect(isoWithOffset(instantOf('2026-04-05', 105, 'Australia/Lord_Howe'), 'Australia/Lord_Howe')).toBe(
      '2026-04-05T01:45:00+11:00',
    )
  })

  it('lets minutes run over midnight, also on a night of change', () => {
    expect(instantOf('2026-03-28', 1440 + 180, 'Europe/London')).toBe(at('2026-03-29T02:00:00Z'))
    expect(instantOf('2026-08-10', -30, 'Europe/London')).toBe(at('2026-08-09T22:30:00Z'))
  })

  it.each(['Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Asia/Kathmandu'])(
    'in %s comes back to the same instant over every half hour of a year, save the repeated ones',
    (zone) => {
      let repeated = 0
      const end = at('2027-01-01T00:00:00Z')
      for (let t = at('2026-01-01T00:00:00Z'); t < end; t += 1_800_000) {
        const local = localOf(t, zone)
        if (instantOf(local.date, local.minuteOfDay, zone) !== t) repeated++
      }
      // The autumn hour holds two half hours; Lord Howe repeats one; Nepal has no summer time.
      expect(repeated).toBe({ 'Asia/Kathmandu': 0, 'Australia/Lord_Howe': 1 }[zone] ?? 2)
    },
  )

  it('tells a zone from a word', () => {
    expect(isTimeZone('Europe/London')).toBe(true)
    expect(isTimeZone('Europe/Atlantis')).toBe(false)
  })
})

describe('the calendar', () => {
  it('adds days over months, leap days and backwards', () => {
    expect(addDays('2024-02-28', 2)).toBe('2024-03-01')
    expect(addDays('2025-12-31', 1)).toBe('2026-01-01')
    expect(addDays('2026-01-01', -1)).toBe('2025-12-31')
  })
})
