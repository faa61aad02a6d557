import { describe, expect, it } from 'vitest'
import { instantOf, randomCourse, unknownHours, type WeatherHours } from '@swardwright/engine'
import { archiveYears, skyDays } from './sky-day.ts'

const course = { ...randomCourse({ seed: 7, greens: 1 }).course, timeZone: 'Europe/London' }

/** Hours of 15 degrees from so many minutes after midnight of 9 August on. */
const from = (minute: number, hours: number): WeatherHours => ({
  ...unknownHours(instantOf('2026-08-09', minute, course.timeZone), hours),
  rainMm: new Float64Array(hours),
  temperatureC: new Float64Array(hours).fill(15),
})

describe('the days ahead', () => {
  it('leave out a day of which the forecast has an hour, and give growth only of whole days', () => {
    // From 23:00 on the 9th: one hour of it, all of the 10th, the first ten hours of the 11th.
    const days = skyDays(course, from(23 * 60, 1 + 24 + 10), '2026-08-09', ['dress'])
    expect(days.map(({ day }) => day.date)).toEqual(['2026-08-10', '2026-08-11'])
    // Growth potential of cool-season grass at 15 C is 0.6615: exp(-0.5 ((15 - 20) / 5.5)^2).
    expect(days[0]?.growth?.value).toBeCloseTo(0.6615, 4)
    expect(days[1]?.growth).toBeNull()
    expect(days[1]?.et).toBeNull()
  })

  it('begin today, whatever lies before', () => {
    const days = skyDays(course, from(0, 72), '2026-08-10', ['dress'])
    expect(days.map(({ day }) => day.date)).toEqual(['2026-08-10', '2026-08-11'])
    expect(skyDays(course, from(0, 72), '2026-09-01', ['dress'])).toEqual([])
  })
})

describe('the archive', () => {
  it('is asked for whole years that are over', () => {
    expect(archiveYears('2026-08-09', 30)).toEqual({ from: '1996-01-01', to: '2025-12-31' })
  })
})
