import { describe, expect, it } from 'vitest'
import { HOUR_MS, instantOf, randomCourse, unknownHours, type WeatherHours } from '@swardwright/engine'
import { darkSpans } from './sky-hours.ts'
import { stoppedWords, workableDays } from './workable-day.ts'

const { course: made } = randomCourse({ seed: 7, greens: 1 })
const course = { ...made, timeZone: 'Europe/London', settings: { ...made.settings, darkFrom: null } }

/** A dry, mild, windless-enough stretch from the course's midnight, with rain in some of its hours. */
const weatherOf = (date: string, days: number, rain: Readonly<Record<number, number>>): WeatherHours => {
  const hours = days * 24
  const all = (value: number) => new Float64Array(hours).fill(value)
  return {
    ...unknownHours(instantOf(date, 0, course.timeZone), hours),
    rainMm: Float64Array.from({ length: hours }, (_, h) => rain[h] ?? 0),
    temperatureC: all(15),
    dewPointC: all(2),
    windMPerS: all(4),
    gustMPerS: all(6),
    radiationWPerM2: all(100),
  }
}

const dayOf = (date: string, next: string) => ({
  fromMs: instantOf(date, 0, course.timeZone),
  toMs: instantOf(next, 0, course.timeZone),
})

describe('when operations can be worked', () => {
  const span = dayOf('2026-08-11', '2026-08-12')

  it('ends with the light, to the minute, and tells whole hours', () => {
    const [dress] = workableDays(course, weatherOf('2026-08-11', 2, {}), span, ['dress']) ?? []
    const evening = darkSpans(course, span).at(-1)?.fromMs
    expect(dress?.spans).toHaveLength(1)
    expect(dress?.spans[0]?.toMs).toBe(evening)
    const workedMs = (dress?.spans[0]?.toMs ?? 0) - (dress?.spans[0]?.fromMs ?? 0)
    expect(dress?.hours).toBe(Math.floor(workedMs / HOUR_MS))
    expect(dress?.stopped).toEqual([])
  })

  it('says what holds them up by day, in words', () => {
    const days = workableDays(course, weatherOf('2026-08-11', 2, { 13: 1, 14: 1 }), span, [
      'solidTine',
      'dragIn',
    ])
    const [tine, drag] = days ?? []
    if (tine === undefined || drag === undefined) throw new Error('both were asked for')
    expect(stoppedWords(tine, course.timeZone)).toBe('13:00 to 15:00 rain')
    expect(stoppedWords(drag, course.timeZone)).toMatch(
      /^13:00 to 15:00 rain and wet from rain, 15:00 to \d\d:00 wet from rain$/u,
    )
  })

  it('has 23 hours in spring and 25 in autumn, on the course’s clock', () => {
    // British clocks change on 29 March and 25 October 2026 at 01:00 UTC.
    for (const [date, next, hours] of [
      ['2026-03-29', '2026-03-30', 23],
      ['2026-10-25', '2026-10-26', 25],
    ] as const) {
      const whole = dayOf(date, next)
      expect((whole.toMs - whole.fromMs) / HOUR_MS).toBe(hours)
      // Water may be given at any hour without frost, so it has all of the day.
      const [water] = workableDays(course, weatherOf(date, 3, {}), whole, ['water']) ?? []
      expect(water?.hours).toBe(hours)
    }
  })
})
