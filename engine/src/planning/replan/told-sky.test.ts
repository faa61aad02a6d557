import { describe, expect, it } from 'vitest'
import { demoInput } from '../testing/demo.ts'
import { unknownHours } from '../../weather/hand-typed.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import { weatherSky } from '../weather-sky.ts'
import type { DayFact } from './facts.ts'
import { skyWithFacts } from './told-sky.ts'

const { course } = demoInput()
const ORIGIN_MS = Date.parse('2026-08-10T00:00:00+01:00')
const DAY_MIN = 1440

const clock = (text: string): string => `2026-08-10T${text}:00+01:00`
const minute = (text: string): number => {
  const [hours = 0, minutes = 0] = text.split(':').map(Number)
  return hours * 60 + minutes
}

/** A day of which nothing is known but the rain of some hours, mm. */
const dayWith = (rainByHour: Readonly<Record<number, number>>): WeatherHours => {
  const weather = unknownHours(ORIGIN_MS, 24)
  return { ...weather, rainMm: weather.rainMm.map((_, hour) => rainByHour[hour] ?? 0) }
}

const skyOf = (facts: readonly DayFact[], weather: WeatherHours | null = dayWith({})) => {
  const wanted = { course, weather, originMs: ORIGIN_MS, days: [], horizonMin: DAY_MIN }
  const sky = skyWithFacts(weatherSky, wanted, facts)
  if (!sky.ok) throw new Error('the thresholds of the course are in range')
  return sky.value
}

const rain = (from: string, until: string): DayFact => ({
  kind: 'rain',
  from: clock(from),
  until: clock(until),
  mmPerH: 1,
})
const spans = (...pairs: readonly (readonly [string, string])[]) =>
  pairs.map(([start, end]) => ({ start: minute(start), end: minute(end) }))

describe('the sky with what was told of the rain', () => {
  it('is left alone where nothing was told of it', () => {
    expect(skyOf([{ kind: 'late', at: clock('07:00') }])).toBeNull()
  })

  it.each([
    ['from the very minute on', [rain('13:42', '15:17')], {}, spans(['13:42', '16:00'])],
    ['from a full hour on', [rain('13:00', '14:00')], {}, spans(['13:00', '14:00'])],
    ['within one hour', [rain('13:10', '13:40')], {}, spans(['13:10', '14:00'])],
    [
      'from its earlier minute on where it is told twice',
      [rain('13:10', '13:50'), rain('13:42', '15:00')],
      {},
      spans(['13:10', '15:00']),
    ],
    [
      'also where the forecast has it that hour',
      [rain('13:42', '14:30')],
      { 13: 1 },
      spans(['13:00', '15:00']),
    ],
  ] as const)('has rain %s', (_what, facts, forecast, told) => {
    expect(skyOf(facts, dayWith(forecast))?.rain).toEqual(told)
  })

  it('lets work go on until the minute in which rain begins', () => {
    const blow = (facts: readonly DayFact[]) => skyOf(facts)?.workable.get('blow') ?? []
    const upTo = (facts: readonly DayFact[]) => blow(facts).find(({ end }) => end > minute('12:30'))
    expect(upTo([rain('14:00', '15:00')])?.end).toBe(minute('14:00'))
    expect(upTo([rain('13:42', '15:00')])?.end).toBe(minute('13:42'))
  })

  it('reaches to the end of the hour in which rain that is over was to come', () => {
    const dry: DayFact = { kind: 'dry', from: clock('13:20'), until: clock('16:00') }
    expect(skyOf([dry], dayWith({ 13: 2, 16: 2 }))?.rain).toEqual(spans(['16:00', '17:00']))
  })
})
