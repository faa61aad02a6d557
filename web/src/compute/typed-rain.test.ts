import { describe, expect, it } from 'vitest'
import { HOUR_MS, type WeatherHours } from '@swardwright/engine'
import { rainMoved, showersOf, spellsOf, withTypedRain } from './typed-rain.ts'

const ZONE = 'Europe/London'
/** Local midnight of 11 August 2026, one hour ahead of UTC. */
const START = Date.parse('2026-08-10T23:00:00Z')

/** Two days of hours, dry but for what is given by hour of the first day. */
const hours = (rain: Readonly<Record<number, number>>): WeatherHours => {
  const column = (value: number) => new Float64Array(48).fill(value)
  const rainMm = column(0)
  for (const [hour, mm] of Object.entries(rain)) rainMm[Number(hour)] = mm
  return {
    startMs: START,
    hours: 48,
    members: 1,
    rainMm,
    temperatureC: column(15),
    dewPointC: column(9),
    windMPerS: column(3),
    gustMPerS: column(5),
    radiationWPerM2: column(200),
  }
}

const spell = { start: '2026-08-11T13:00:00+01:00', finish: '2026-08-11T15:00:00+01:00', mmPerH: 2 }

describe('withTypedRain', () => {
  it('rains in the typed hours of the typed day and in no other hour of it', () => {
    const typed = { from: '2026-08-11', to: '2026-08-11', spells: [spell] }
    const rain = withTypedRain(hours({ 3: 5, 30: 1 }), [typed], ZONE)?.rainMm
    expect([rain?.[3], rain?.[12], rain?.[13], rain?.[14], rain?.[15]]).toEqual([0, 0, 2, 2, 0])
    expect(rain?.[30]).toBe(1)
  })

  it('leaves the forecast itself untouched', () => {
    const forecast = hours({ 3: 5 })
    withTypedRain(forecast, [{ from: '2026-08-11', to: '2026-08-11', spells: [] }], ZONE)
    expect(forecast.rainMm[3]).toBe(5)
  })

  it('goes by the later word where two name one day', () => {
    const first = { from: '2026-08-11', to: '2026-08-11', spells: [spell] }
    const second = { from: '2026-08-11', to: '2026-08-11', spells: [] }
    expect(withTypedRain(hours({}), [first, second], ZONE)?.rainMm[13]).toBe(0)
  })

  it('counts half an hour of 2 mm/h as 1 mm', () => {
    const half = { ...spell, start: '2026-08-11T13:30:00+01:00', finish: '2026-08-11T14:00:00+01:00' }
    const typed = { from: '2026-08-11', to: '2026-08-11', spells: [half] }
    expect(withTypedRain(hours({}), [typed], ZONE)?.rainMm[13]).toBe(1)
  })

  it('knows the typed days alone where there is no forecast', () => {
    const typed = { from: '2026-08-11', to: '2026-08-11', spells: [spell] }
    const weather = withTypedRain(null, [typed], ZONE)
    expect(weather?.startMs).toBe(START)
    expect(weather?.hours).toBe(24)
    expect(weather?.rainMm[13]).toBe(2)
    expect(weather?.temperatureC[13]).toBeNaN()
  })

  it('is nothing where nothing is known', () => {
    expect(withTypedRain(null, [], ZONE)).toBeNull()
  })
})

describe('rainMoved', () => {
  it('brings the rain of a day two hours forward and keeps the rain of the next day', () => {
    const weather = hours({ 16: 0.7, 17: 1.6, 30: 1 })
    const after = withTypedRain(weather, [rainMoved(weather, '2026-08-11', -2, ZONE)], ZONE)
    const rain = after?.rainMm
    expect([rain?.[13], rain?.[14], rain?.[15], rain?.[16], rain?.[30]]).toEqual([0, 0.7, 1.6, 0, 1])
  })

  it('lets rain move over midnight', () => {
    const weather = hours({ 23: 2 })
    const after = withTypedRain(weather, [rainMoved(weather, '2026-08-11', 2, ZONE)], ZONE)
    expect([after?.rainMm[23], after?.rainMm[25]]).toEqual([0, 2])
  })
})

describe('spellsOf', () => {
  it('joins hours of one rate and parts hours of another', () => {
    const spells = spellsOf(hours({ 5: 1, 6: 1, 7: 2 }), { from: '2026-08-11', to: '2026-08-11' }, ZONE)
    expect(spells).toEqual([
      {
        start: new Date(START + 5 * HOUR_MS).toISOString(),
        finish: new Date(START + 7 * HOUR_MS).toISOString(),
        mmPerH: 1,
      },
      {
        start: new Date(START + 7 * HOUR_MS).toISOString(),
        finish: new Date(START + 8 * HOUR_MS).toISOString(),
        mmPerH: 2,
      },
    ])
  })
})

describe('showersOf', () => {
  it('joins hours that follow each other and keeps the hardest rate: 0.7, 2.4, 1.1 mm is one shower of up to 2.4', () => {
    const spells = spellsOf(
      hours({ 16: 0.7, 17: 2.4, 18: 1.1, 21: 0.3 }),
      { from: '2026-08-11', to: '2026-08-11' },
      ZONE,
    )
    expect(showersOf(spells).map(({ start, mostMmPerH }) => [Date.parse(start) - START, mostMmPerH])).toEqual(
      [
        [16 * HOUR_MS, 2.4],
        [21 * HOUR_MS, 0.3],
      ],
    )
  })
})
