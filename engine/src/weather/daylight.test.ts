import { getTimes } from 'suncalc'
import { describe, expect, it } from 'vitest'
import { DAY_MS, dayNumber } from '../time/calendar.ts'
import { runItem } from '../catalogue/run.ts'
import { daylightSun, sunDay, type SunDay, type SunEvent } from './daylight.ts'
import { USNO_SUN_TIMES } from './fixtures/usno-sun-times.ts'

/** quantity: sunrise, sunset, civil dawn and dusk; unit min; reason: the tables print whole minutes, the algorithm adds up to 0.1 (grazing arctic events more). */
const WITHIN_MIN = { belowLatitude66: 1, arctic: 3 }

const KIND = { dawn: 'civilDawn', rise: 'sunrise', set: 'sunset', dusk: 'civilDusk' } as const

const rows = USNO_SUN_TIMES.trim()
  .split('\n')
  .map((line) => {
    const [place = '', latitude, longitude, date = '', events = ''] = line.split(',')
    return {
      place,
      latitude: Number(latitude),
      longitude: Number(longitude),
      date,
      events: events.split(';'),
    }
  })

const around = (day: number, latitude: number, longitude: number): SunDay[] =>
  [-1, 0, 1].map((k) => sunDay(day + k, latitude, longitude, longitude * 240_000))

const atOf = (event: SunEvent): number => event.atMs ?? NaN

describe('against the US Naval Observatory', () => {
  it('reads all rows of the fixture', () => {
    expect(rows).toHaveLength(14 * 13)
  })

  it.each(rows)('keeps to the minute at $place on $date', ({ latitude, longitude, date, events }) => {
    const day = dayNumber(date)
    const days = around(day, latitude, longitude)
    const limit = Math.abs(latitude) < 66 ? WITHIN_MIN.belowLatitude66 : WITHIN_MIN.arctic
    for (const text of events) {
      const [kind = '', clock = ''] = text.split(' ')
      if (kind === 'dawn' || kind === 'rise' || kind === 'set' || kind === 'dusk') {
        const truth = Date.parse(`${date}T${clock}:00Z`)
        const misses = days.map((d) => Math.abs(atOf(d[KIND[kind]]) - truth) / 60_000).filter(Number.isFinite)
        expect(Math.min(...misses), `${kind} ${clock}`).toBeLessThanOrEqual(limit)
      }
      if (kind === 'up' || kind === 'down')
        expect(days[1]?.sunrise).toEqual({
          atMs: null,
          because: kind === 'up' ? 'sunStaysUp' : 'sunStaysDown',
        })
      if (kind === 'light' || kind === 'dark')
        expect(days[1]?.civilDawn).toEqual({
          atMs: null,
          because: kind === 'light' ? 'twilightAllNight' : 'darkAllDay',
        })
    }
  })
})

describe('against suncalc 2', () => {
  it('agrees within a minute on every day of 2026 at 53.4 N', () => {
    let worst = 0
    for (let day = dayNumber('2026-01-01'); day <= dayNumber('2026-12-31'); day++) {
      const ours = sunDay(day, 53.428, -6.241, 0)
      const theirs = getTimes(new Date(day * DAY_MS + DAY_MS / 2), 53.428, -6.241)
      worst = Math.max(
        worst,
        Math.abs(atOf(ours.sunrise) - Number(theirs.sunrise)),
        Math.abs(atOf(ours.sunset) - Number(theirs.sunset)),
        Math.abs(atOf(ours.civilDusk) - Number(theirs.dusk)),
      )
    }
    expect(worst / 60_000).toBeLessThanOrEqual(1)
  })
})

describe('daylight.sun', () => {
  const run = (input: unknown) => runItem(daylightSun, input)

  it('gives the sunrise of the calendar day in Melbourne, which is the day before in UTC', () => {
    const result = run({
      date: '2026-06-21',
      latitudeDeg: -37.814,
      longitudeDeg: 144.96332,
      utcOffsetMinutes: 600,
    })
    // The one-day table has Rise 21:36 on 21 June UTC; near the solstice it moves by seconds from day to day.
    expect(result.ok && result.value.sunrise?.slice(0, 16)).toMatch(/^2026-06-20T21:3[56]$/u)
  })

  it('gives null and the reason in the polar summer', () => {
    const result = run({ date: '2026-06-21', latitudeDeg: 69.6489, longitudeDeg: 18.95508 })
    expect(result).toMatchObject({
      ok: true,
      value: {
        sunrise: null,
        sunset: null,
        utcHours: { sunrise: null },
        because: { sunrise: 'sunStaysUp', civilDawn: 'twilightAllNight' },
      },
    })
  })

  it('names the field of a day that is none and of a latitude off the globe', () => {
    expect(run({ date: '2026-02-30', latitudeDeg: 50, longitudeDeg: 0 })).toMatchObject({
      error: { type: 'wrongType', field: 'date' },
    })
    expect(run({ date: '2026-02-20', latitudeDeg: 95, longitudeDeg: 0 })).toMatchObject({
      error: { type: 'outOfRange', field: 'latitudeDeg', unit: 'deg', max: 90 },
    })
  })
})
