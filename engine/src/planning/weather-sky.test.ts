import { describe, expect, it } from 'vitest'
import { randomCourse } from '../course/random-course.ts'
import { plainDays, withRain, type PlainDay } from '../weather/fixtures/plain-days.ts'
import { joinMembers, memberOf } from '../weather/members.ts'
import { HOUR_MS } from '../weather/hours.ts'
import { surfaceHours } from '../weather/surface.ts'
import { DEFAULT_WEATHER_SETTINGS } from '../weather/weather-settings.ts'
import { weatherSky } from './weather-sky.ts'

const { course } = randomCourse({ seed: 3, greens: 2 })
const [longitudeDeg = 0, latitudeDeg = 0] = course.greens[0]?.at ?? []
const place = { latitudeDeg, longitudeDeg, altitudeM: course.altitudeM }

const CLEAR: PlainDay = {
  date: '2026-08-10',
  minC: 9,
  maxC: 22,
  dewPointC: 11,
  windMPerS: 1.5,
  clearness: 0.75,
  days: 2,
}

const skyOf = (weather: ReturnType<typeof plainDays>) => {
  const sky = weatherSky({
    course,
    weather,
    originMs: weather.startMs,
    days: [],
    horizonMin: weather.hours * 60,
  })
  if (!sky.ok) throw new Error('the thresholds of the course are in range')
  return sky.value
}

describe('the sky that a plan goes by', () => {
  it('lets no sand be dragged in the morning after a clear night before the dew on it has dried', () => {
    const weather = plainDays(CLEAR, place)
    const { dewOnLeafMm } = surfaceHours(weather, 0, place, DEFAULT_WEATHER_SETTINGS)
    const sunrise = 24 + 4
    expect(dewOnLeafMm[sunrise]).toBeGreaterThan(0.05)
    const dryHour = dewOnLeafMm.findIndex((mm, h) => h > sunrise && mm <= DEFAULT_WEATHER_SETTINGS.dryLeafMm)
    expect(dryHour).toBeGreaterThan(sunrise)
    const secondDay = (skyOf(weather).workable.get('dragIn') ?? []).filter(({ end }) => end > 24 * 60)
    // The hour in which it dries may be worked from its middle on at best, so never before that hour begins.
    expect(secondDay[0]?.start).toBeGreaterThanOrEqual(dryHour * 60)
  })

  it('can be that of any member of an ensemble', () => {
    const dry = plainDays(CLEAR, place)
    const ensemble = joinMembers([dry, withRain(dry, { 12: 3, 13: 3 })])
    expect(skyOf(memberOf(ensemble, 0)).rain).toEqual([])
    expect(skyOf(memberOf(ensemble, 1)).rain).toEqual([{ start: 12 * 60, end: 14 * 60 }])
    expect(() => memberOf(ensemble, 2)).toThrow(RangeError)
    expect(ensemble.hours * HOUR_MS).toBe(2 * 86_400_000)
  })
})
