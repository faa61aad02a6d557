import { describe, expect, it } from 'vitest'
import { OPERATIONS, type Operation } from '../planning/operations.ts'
import { MIDDLE_ENGLAND, plainDays, withRain, type PlainDay } from './fixtures/plain-days.ts'
import type { WeatherHours } from './hours.ts'
import { DEFAULT_WEATHER_SETTINGS, weatherSettings } from './weather-settings.ts'
import { workableHours, type WorkableHours } from './workable.ts'
import { reasonsOf, type Reason } from './workable-rules.ts'

const { latitudeDeg, longitudeDeg } = MIDDLE_ENGLAND

const ask = (weather: WeatherHours, settings: Readonly<Record<string, number>> = {}): WorkableHours => {
  const read = weatherSettings(settings)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return workableHours({ weather, latitudeDeg, longitudeDeg, settings: read.value, operations: OPERATIONS })
}

const ofHour = (answer: WorkableHours, operation: Operation, hour: number): Reason[] =>
  reasonsOf(answer.byOperation.get(operation)?.reasons[hour] ?? 0)

const can = (answer: WorkableHours, operation: Operation, hour: number): boolean =>
  answer.byOperation.get(operation)?.workable[hour] === 1

/** Hours of the spell's second day, counted from its first midnight (UTC). */
const NEXT = 24
const SEPTEMBER: PlainDay = {
  date: '2026-09-14',
  minC: 8,
  maxC: 18,
  dewPointC: 10,
  windMPerS: 1.5,
  clearness: 0.7,
  days: 3,
}
const AUGUST: PlainDay = {
  date: '2026-08-10',
  minC: 12,
  maxC: 22,
  dewPointC: 11,
  windMPerS: 3,
  clearness: 0.7,
  days: 3,
}

describe('rain and wet leaf', () => {
  const rained = ask(withRain(plainDays(AUGUST), { [NEXT + 14]: 2 }))

  it('stops all but watering in the hour it falls, by the stop the manager set', () => {
    for (const operation of OPERATIONS)
      expect(can(rained, operation, NEXT + 14), operation).toBe(operation === 'water')
    expect(ofHour(rained, 'core', NEXT + 14)).toContain('rain')
    const light = withRain(plainDays(AUGUST), { [NEXT + 14]: 0.3 })
    expect(ofHour(ask(light), 'feed', NEXT + 14)).toEqual(['rain'])
    expect(ofHour(ask(light, { rainStopMmPerH: 0.5 }), 'feed', NEXT + 14)).toEqual([])
  })

  it('keeps mats and mowers off the wet leaf after it, and lets them on in August sun within three hours', () => {
    expect(ofHour(rained, 'dragIn', NEXT + 15)).toEqual(['wetGround'])
    expect(can(rained, 'cut', NEXT + 17)).toBe(true)
    expect(can(rained, 'feed', NEXT + 15)).toBe(true)
  })
})

describe('dew', () => {
  const clear = ask(plainDays(SEPTEMBER))

  it('ends dragging one to two hours before sunset on a clear September evening', () => {
    // Sunset on 15 September at 52.5 N 1.5 W is about 18:20 UTC.
    expect(can(clear, 'dragIn', NEXT + 15)).toBe(true)
    expect(ofHour(clear, 'dragIn', NEXT + 17)).toContain('dew')
  })

  it('lies in the morning until sun has dried it, and does not keep the corer waiting', () => {
    expect(ofHour(clear, 'cut', NEXT + 6)).toEqual(['dew'])
    expect(can(clear, 'core', NEXT + 6)).toBe(true)
    // 0.2 mm of dew is gone by about 08:30 solar time in mid September (FAO-56 hourly rates at mean evapotranspiration); clear nights leave more.
    const dry = [...Array(24).keys()].find((h) => h > 5 && can(clear, 'cut', NEXT + h)) ?? NaN
    expect(dry).toBeGreaterThanOrEqual(7)
    expect(dry).toBeLessThanOrEqual(10)
  })

  it('does not come on a windy, overcast night', () => {
    const dull = ask(
      plainDays({ ...SEPTEMBER, minC: 11, maxC: 14, windMPerS: 7, clearness: 0.25, dewPointC: 8 }),
    )
    expect(can(dull, 'dragIn', NEXT + 17)).toBe(true)
    expect(can(dull, 'cut', NEXT + 7)).toBe(true)
  })

  it('comes as early as the manager says', () => {
    const lead = (eveningDewLeadMin: number) => ask(plainDays(SEPTEMBER), { eveningDewLeadMin })
    expect(can(lead(240), 'dragIn', NEXT + 15)).toBe(false)
    expect(can(lead(0), 'dragIn', NEXT + 17)).toBe(true)
  })
})

describe('frost, wind, heat and soft ground', () => {
  it('keeps every machine off a frozen green until it has thawed', () => {
    const cold = ask(
      plainDays({
        date: '2026-03-10',
        minC: -3,
        maxC: 9,
        dewPointC: -4,
        windMPerS: 2,
        clearness: 0.7,
        days: 3,
      }),
    )
    for (const operation of OPERATIONS) expect(ofHour(cold, operation, NEXT + 6)).toContain('frost')
    expect(ofHour(cold, 'core', NEXT + 12)).toEqual([])
  })

  it('stops the spinner in strong wind or gusts and warns before', () => {
    const windy = (windMPerS: number) => ask(plainDays({ ...AUGUST, windMPerS }))
    expect(ofHour(windy(9), 'dress', NEXT + 12)).toEqual(['wind'])
    expect(can(windy(9), 'dragIn', NEXT + 12)).toBe(true)
    expect(ofHour(windy(6), 'dress', NEXT + 12)).toEqual(['gusty'])
    expect(can(windy(6), 'dress', NEXT + 12)).toBe(true)
    expect(ofHour(windy(4), 'dress', NEXT + 12)).toEqual([])
  })

  it('opens no green in great heat and warns of wilting before', () => {
    const hot = (maxC: number) => ask(plainDays({ ...AUGUST, minC: 18, maxC }))
    expect(ofHour(hot(35), 'core', NEXT + 14)).toEqual(['heat', 'wilt'])
    expect(can(hot(35), 'dragIn', NEXT + 14)).toBe(true)
    expect(ofHour(hot(29), 'core', NEXT + 14)).toEqual(['wilt'])
  })

  it('keeps machines off ground that is still draining', () => {
    const soaked = ask(withRain(plainDays(AUGUST), { [NEXT + 8]: 25 }))
    // 25 mm less 3 mm an hour: 22 left at 09:00, under 5 from the sixth hour after.
    expect(ofHour(soaked, 'solidTine', NEXT + 13)).toEqual(['softGround'])
    expect(can(soaked, 'solidTine', NEXT + 14)).toBe(true)
  })
})

describe('light and the end of the forecast', () => {
  it('is dark at night, and says so where an hour is only partly light', () => {
    const answer = ask(plainDays(AUGUST))
    // 11 August at 52.5 N 1.5 W: civil dawn 04:05 UTC, sunset 19:40 UTC, to a few minutes.
    expect(ofHour(answer, 'core', NEXT + 3)).toEqual(['dark'])
    expect(ofHour(answer, 'core', NEXT + 19)).toContain('partlyDark')
    expect(can(answer, 'core', NEXT + 19)).toBe(true)
    expect(ofHour(answer, 'core', NEXT + 20)).toEqual(['dark'])
    expect(can(answer, 'water', NEXT + 2)).toBe(true)
  })

  it('takes hours past the forecast as dry, inside daylight, and counts them', () => {
    const weather = plainDays({ ...AUGUST, days: 1 })
    const answer = workableHours({
      weather,
      latitudeDeg,
      longitudeDeg,
      operations: ['core'],
      span: { startMs: weather.startMs, hours: 48 },
    })
    expect(answer.hoursAssumedDry).toBe(24)
    expect(ofHour(answer, 'core', NEXT + 12)).toEqual(['noForecast'])
    expect(can(answer, 'core', NEXT + 12)).toBe(true)
    expect(can(answer, 'core', NEXT + 1)).toBe(false)
  })

  it('takes a lost figure of rain as dry and says so', () => {
    const answer = ask(withRain(plainDays(AUGUST), { [NEXT + 12]: NaN }))
    expect(ofHour(answer, 'core', NEXT + 12)).toEqual(['noForecast'])
    expect(answer.hoursAssumedDry).toBe(1)
  })

  it('works from rain alone', () => {
    const full = withRain(plainDays(AUGUST), { [NEXT + 14]: 2 })
    const nothing = new Float64Array(full.hours).fill(NaN)
    const answer = ask({
      ...full,
      temperatureC: nothing,
      dewPointC: nothing,
      windMPerS: nothing,
      gustMPerS: nothing,
      radiationWPerM2: nothing,
    })
    expect(ofHour(answer, 'cut', NEXT + 10)).toEqual([])
    expect(ofHour(answer, 'cut', NEXT + 14)).toEqual(['rain', 'wetGround'])
    expect(can(answer, 'cut', NEXT + 18)).toBe(true)
  })

  it('answers for the member asked', () => {
    const one = plainDays({ ...AUGUST, days: 1 })
    const both = (column: Float64Array) => Float64Array.from([...column, ...column])
    const weather: WeatherHours = {
      ...one,
      members: 2,
      rainMm: Float64Array.from({ length: 48 }, (_, k) => (k === 24 + 12 ? 1 : 0)),
      temperatureC: both(one.temperatureC),
      dewPointC: both(one.dewPointC),
      windMPerS: both(one.windMPerS),
      gustMPerS: both(one.gustMPerS),
      radiationWPerM2: both(one.radiationWPerM2),
    }
    const of = (member: number) =>
      can(workableHours({ weather, member, latitudeDeg, longitudeDeg, operations: ['core'] }), 'core', 12)
    expect([of(0), of(1)]).toEqual([true, false])
  })
})

describe('thresholds', () => {
  it("start from the stated values and take the manager's own", () => {
    expect(weatherSettings({})).toEqual({ ok: true, value: DEFAULT_WEATHER_SETTINGS })
    expect(weatherSettings({ spinnerWindStopMPerS: 6 })).toMatchObject({
      ok: true,
      value: { spinnerWindStopMPerS: 6 },
    })
  })

  it('names the field, unit and range of a bad one', () => {
    expect(weatherSettings({ rainStopMmPerH: 40 })).toMatchObject({
      ok: false,
      error: { type: 'outOfRange', field: 'rainStopMmPerH', unit: 'mm/h', min: 0.05, max: 10, received: 40 },
    })
    expect(weatherSettings({ rainStop: 1 })).toMatchObject({
      ok: false,
      error: { type: 'wrongType', field: 'rainStop' },
    })
  })
})
