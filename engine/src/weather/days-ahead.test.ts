import { describe, expect, it } from 'vitest'
import { daysAhead } from './days-ahead.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'

/** Hours from an instant on, each column from the number of the hour. */
const hoursFrom = (
  start: string,
  hours: number,
  of: Partial<Record<string, (h: number) => number>>,
): WeatherHours => {
  const column = (name: string) => Float64Array.from({ length: hours }, (_, h) => of[name]?.(h) ?? NaN)
  return {
    startMs: Date.parse(start),
    hours,
    members: 1,
    rainMm: column('rainMm'),
    temperatureC: column('temperatureC'),
    dewPointC: column('dewPointC'),
    windMPerS: column('windMPerS'),
    gustMPerS: column('gustMPerS'),
    radiationWPerM2: column('radiationWPerM2'),
  }
}

const LONDON = 'Europe/London'

describe('the days ahead', () => {
  it('have 23 hours when the clocks go forward and 25 when they go back', () => {
    // In 2026 British clocks change on 29 March and 25 October (last Sundays, at 01:00 UTC).
    const spring = hoursFrom('2026-03-28T00:00Z', 96, { rainMm: () => 1, radiationWPerM2: () => 100 })
    const autumn = hoursFrom('2026-10-24T00:00Z', 96, { rainMm: () => 1 })
    const rain = (weather: WeatherHours, from: string) =>
      daysAhead(weather, { from, days: 3, timeZone: LONDON }).map(({ rainMm }) => rainMm)
    expect(rain(spring, '2026-03-28')).toEqual([24, 23, 24])
    expect(rain(autumn, '2026-10-24')).toEqual([23, 25, 24])
    const [, changed] = daysAhead(spring, { from: '2026-03-28', days: 2, timeZone: LONDON })
    expect((changed?.toMs ?? 0) - (changed?.fromMs ?? 0)).toBe(23 * HOUR_MS)
    // 23 h at 100 W/m2 is 2.3 kWh/m2, at 3.6 MJ a kWh.
    expect(changed?.radiationMJPerM2).toBeCloseTo(2.3 * 3.6, 12)
  })

  it('begin at the course’s midnight, whatever UTC says', () => {
    const weather = hoursFrom('2026-08-10T00:00Z', 48, { rainMm: (h) => (h === 23 ? 5 : 0) })
    const days = daysAhead(weather, { from: '2026-08-10', days: 2, timeZone: LONDON })
    expect(days.map(({ rainMm }) => rainMm)).toEqual([0, 5])
    expect(days[0]?.hoursUnknown).toBe(1)
  })

  it('tell extremes and means of what is known, and nothing of what is not', () => {
    const weather = hoursFrom('2026-08-10T00:00Z', 24, {
      rainMm: (h) => (h < 12 ? 0.1 : NaN),
      temperatureC: (h) => 10 + h / 2,
      windMPerS: (h) => (h === 7 ? 9 : 3),
    })
    const [day, next] = daysAhead(weather, { from: '2026-08-10', days: 2, timeZone: 'UTC' })
    // Mean of 10, 10.5, ... 21.5 is 15.75; mean wind (23 x 3 + 9) / 24 = 3.25.
    expect(day).toMatchObject({
      minC: 10,
      maxC: 21.5,
      meanC: 15.75,
      windMPerS: 3.25,
      windMostMPerS: 9,
      gustMPerS: null,
      radiationMJPerM2: null,
      hoursUnknown: 12,
    })
    expect(day?.rainMm).toBeCloseTo(1.2, 12)
    expect(next).toMatchObject({ rainMm: null, meanC: null, hoursUnknown: 24 })
  })
})
