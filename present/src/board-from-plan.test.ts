import { describe, expect, it } from 'vitest'
import { HOUR_MS, type WeatherHours } from '@swardwright/engine'
import { boardFromPlan } from './board-from-plan.ts'
import { course, plan } from './fixtures/two-greens.ts'
import { skyBands, skyHours } from './sky-hours.ts'

const at = (clock: string): number => Date.parse(`2026-08-11T${clock}:00+01:00`)
const view = { pxPerHour: 60, rowPx: 34, namesPx: 120 }

/** A dry warm day with the rain given, by the hour from 00:00 of the course's 11 August. */
const weather = (rainByHour: Readonly<Record<number, number>>): WeatherHours => {
  const column = (value: number): Float64Array => new Float64Array(24).fill(value)
  const rainMm = column(0)
  for (const [hour, mm] of Object.entries(rainByHour)) rainMm[Number(hour)] = mm
  return {
    startMs: at('00:00'),
    hours: 24,
    members: 1,
    rainMm,
    temperatureC: column(18),
    dewPointC: column(4),
    windMPerS: column(4),
    gustMPerS: column(6),
    radiationWPerM2: column(200),
  }
}

const day = { fromMs: at('06:00'), toMs: at('22:00') }

describe('the sky behind a board', () => {
  it('joins hours of rain at or over the club\u2019s stop, and adds them up', () => {
    // The club stops at 0.2 mm: 14:00 (0.2) and 15:00 (1.1) count, 16:00 (0.1) does not. 0.2 + 1.1 = 1.3 mm.
    const rain = skyBands(course, weather({ 14: 0.2, 15: 1.1, 16: 0.1 }), day).filter(
      (band) => band.kind === 'rain',
    )
    expect(rain).toEqual([
      { kind: 'rain', fromMs: at('14:00'), toMs: at('16:00'), words: 'rain 14:00, 1.3 mm' },
    ])
  })

  it('keeps two showers apart', () => {
    const rain = skyBands(course, weather({ 9: 1, 12: 1 }), day).filter((band) => band.kind === 'rain')
    expect(rain.map(({ fromMs }) => fromMs)).toEqual([at('09:00'), at('12:00')])
  })

  it('is dark from sunset, or from the hour that the club sets', () => {
    const dusk = (darkFrom: string | null) =>
      skyBands({ ...course, settings: { ...course.settings, darkFrom } }, null, day).find(
        (band) => band.kind === 'dusk',
      )
    // suncalc 2.0.2: sunset at 53.71 N, 4.92 W on 11 August 2026 is 19:57:14 UTC.
    expect(Math.abs((dusk(null)?.fromMs ?? 0) - Date.parse('2026-08-11T19:57:14Z'))).toBeLessThan(60_000)
    expect(dusk('20:30')?.fromMs).toBe(at('20:30'))
  })

  it('is dry and unknown without a forecast', () => {
    const hours = skyHours(course, null, { fromMs: at('06:00'), toMs: at('08:00') })
    expect(hours.map(({ startMs, rainMm, isRain }) => [startMs, rainMm, isRain])).toEqual([
      [at('06:00'), null, false],
      [at('07:00'), null, false],
    ])
  })

  it('is unknown past the end of the forecast', () => {
    const [last, past] = skyHours(course, weather({}), {
      fromMs: at('23:00'),
      toMs: at('23:00') + 2 * HOUR_MS,
    })
    expect([last?.rainMm, past?.rainMm]).toEqual([0, null])
  })
})

describe('the board of a plan', () => {
  const board = boardFromPlan({ course, plan, weather: null, view, scope: 'b' })

  it('has the days with work, each with its last safe start or none', () => {
    expect(board.days.map(({ date, lastSafeStartMs }) => [date, lastSafeStartMs])).toEqual([
      ['2026-08-11', at('11:05')],
      ['2026-08-12', null],
    ])
  })

  it('begins half an hour or more before the first task and shows the dark', () => {
    // First task 05:00, so the hour of 04:30: 04:00. Sunset 20:57 and half an hour: 22:00.
    expect([board.days[0]?.fromMs, board.days[0]?.toMs]).toEqual([at('04:00'), at('22:00')])
  })

  it('puts greens in the order they are opened, then says which the plan leaves out', () => {
    expect(board.greens.map(({ id, note }) => [id, note])).toEqual([
      ['g2', undefined],
      ['g1', 'not in this plan'],
    ])
  })

  it('follows the states of a green, the finished one to the end of its day', () => {
    expect(board.greens[0]?.states.map(({ state, fromMs, toMs }) => [state, fromMs, toMs])).toEqual([
      ['opened', at('06:10'), at('07:00')],
      ['cleared', at('07:00'), at('08:00')],
      ['dressed', at('08:00'), at('09:30')],
      ['finished', at('09:30'), at('22:00')],
    ])
  })

  it('words each task with green, machine and people', () => {
    expect(board.greens[0]?.tasks.map(({ words, letters }) => [letters, words])).toEqual([
      ['C', "core 06:10 to 06:50, Practice, Corer, Ann O'Dea"],
    ])
  })

  it('gives everybody with a task a row, with the green\u2019s number or short name', () => {
    expect(board.people.map(({ name }) => name)).toEqual(["Ann O'Dea", 'Bob', 'Cy'])
    expect(board.people[0]?.tasks.map((task) => task.green)).toEqual(['', '1', '1', 'Pra'])
  })

  it('of one day has only the greens and people of that day', () => {
    const one = boardFromPlan({ course, plan, weather: null, view, scope: 'b', dates: ['2026-08-12'] })
    expect(one.days).toHaveLength(1)
    expect(one.greens.map(({ id }) => id)).toEqual(['g1'])
    expect(one.people.map(({ id }) => id)).toEqual(['cy'])
  })

  it('of single days with all rows stands side by side, the word for a green left out in the first alone', () => {
    // The same rows as the board of the whole plan (the two tests of order and people above), each day with its own work.
    const [first, second] = ['2026-08-11', '2026-08-12'].map((date) =>
      boardFromPlan({ course, plan, weather: null, view, scope: 'b', dates: [date], allRows: true }),
    )
    for (const one of [first, second]) {
      expect(one?.greens.map(({ id }) => id)).toEqual(['g2', 'g1'])
      expect(one?.people.map(({ name }) => name)).toEqual(["Ann O'Dea", 'Bob', 'Cy'])
    }
    expect([first, second].map((one) => one?.greens.map(({ note }) => note))).toEqual([
      [undefined, 'not in this plan'],
      [undefined, undefined],
    ])
    expect(first?.greens[0]?.tasks.map(({ letters }) => letters)).toEqual(['C'])
    expect(second?.greens[0]?.tasks).toEqual([])
    expect(second?.people.map(({ tasks }) => tasks.length > 0)).toEqual([false, false, true])
  })
})
