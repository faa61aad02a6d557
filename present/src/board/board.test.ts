import { describe, expect, it } from 'vitest'
import { boardDrawing, boardSheet } from '../board.ts'
import { partsOf, type Drawing } from '../drawing.ts'
import { toSvgString } from '../drawing-text.ts'
import type { BoardDay, BoardGreen, BoardInput, BoardTask } from './board-input.ts'
import { postBlocks } from './posts.ts'
import { caughtOn, tightestOn } from './risk.ts'
import { STATE_PX } from './rows.ts'

const at = (clock: string): number => Date.parse(`2026-08-11T${clock}:00+01:00`)

const day: BoardDay = {
  date: '2026-08-11',
  fromMs: at('06:00'),
  toMs: at('18:00'),
  bands: [{ kind: 'rain', fromMs: at('15:00'), toMs: at('17:00'), words: 'rain 15:00, 3 mm' }],
  lastSafeStartMs: at('11:05'),
}

const task = (id: string, from: string, to: string, letters = 'C'): BoardTask => ({
  id,
  operation: 'core',
  fromMs: at(from),
  toMs: at(to),
  letters,
  words: `${id} in words`,
})

const green = (id: string, times: readonly [string, string, string, string]): BoardGreen => ({
  id,
  name: `Green ${id}`,
  hole: 7,
  tasks: [task(`core-${id}`, times[0], times[1])],
  states: [
    { state: 'opened', fromMs: at(times[0]), toMs: at(times[1]) },
    { state: 'cleared', fromMs: at(times[1]), toMs: at(times[2]) },
    { state: 'dressed', fromMs: at(times[2]), toMs: at(times[3]) },
    { state: 'finished', fromMs: at(times[3]), toMs: at('18:00') },
  ],
})

const early = green('a', ['07:00', '08:00', '09:00', '12:00'])
const late = green('b', ['10:00', '12:00', '13:00', '14:25'])

const input: BoardInput = {
  days: [day],
  greens: [early, late],
  people: [],
  timeZone: 'Europe/London',
  view: { pxPerHour: 60, rowPx: 34, namesPx: 120 },
  scope: 'test',
}

const paths = (drawing: Drawing | undefined): readonly Drawing[] =>
  (drawing?.children ?? []).flatMap((child) =>
    typeof child === 'string' ? [] : child.tag === 'path' ? [child] : paths(child),
  )

describe('a line of the board', () => {
  it('is as thick as what lies open, and as long as the state lasts', () => {
    const states = partsOf(boardDrawing(input).hours, 'state').slice(0, 4)
    expect(states.map((state) => state.attributes['data-id'])).toEqual([
      'opened',
      'cleared',
      'dressed',
      'finished',
    ])
    const widths = states.map((state) => Number(paths(state)[0]?.attributes['stroke-width']))
    expect(widths).toEqual([STATE_PX.opened, STATE_PX.cleared, STATE_PX.dressed, STATE_PX.finished])
    expect(widths).toEqual([...widths].sort((a, b) => b - a))
    // Opened 07:00 to 08:00 at 60 px an hour from 06:00, 16 px of edge: from 76 to 136.
    expect(paths(states[0])[0]?.attributes['d']).toMatch(/^M76 [\d.]+H136$/u)
  })

  it('tells its state and hours on touch', () => {
    const [opened] = partsOf(boardDrawing(input).hours, 'state')
    expect(opened?.attributes['aria-label']).toBe('opened 07:00 to 08:00')
  })
})

describe('what the eye should find', () => {
  it('is the green that finishes with the least time before rain', () => {
    expect(tightestOn(day, input.greens)).toEqual({
      green: 1,
      finishMs: at('14:25'),
      stopMs: at('15:00'),
      spareMin: 35,
    })
    expect(toSvgString(boardDrawing(input).hours)).toContain('35 min to spare')
  })

  it('is nothing on a dry day with no dark in sight', () => {
    expect(tightestOn({ ...day, bands: [] }, input.greens)).toBeNull()
  })

  it('is a green that lies open in the rain, for as long as it does', () => {
    const wet = green('c', ['13:00', '14:30', '15:30', '16:20'])
    const caught = caughtOn(day, [wet])
    // Cleared 14:30 to 15:30 and dressed to 16:20; the rain runs from 15:00 to 17:00.
    expect(caught.map(({ fromMs, toMs }) => [fromMs, toMs])).toEqual([
      [at('15:00'), at('15:30')],
      [at('15:30'), at('16:20')],
    ])
    expect(partsOf(boardDrawing({ ...input, greens: [wet] }).hours, 'caught')).toHaveLength(2)
    expect(caughtOn(day, input.greens)).toEqual([])
  })

  it('in the dark is only a green with cores or debris on it', () => {
    const dark = {
      ...day,
      bands: [{ kind: 'dusk', fromMs: at('12:30'), toMs: at('18:00'), words: 'dark' }],
    } as const
    expect(caughtOn(dark, [green('d', ['11:00', '12:00', '13:30', '14:00'])])).toEqual([])
    expect(caughtOn(dark, [green('e', ['11:00', '13:00', '13:30', '14:00'])])).toHaveLength(1)
  })
})

describe('the rest of the board', () => {
  it('has the last safe start as one rule with its time', () => {
    const flags = partsOf(boardDrawing(input).hours, 'flag')
    expect(flags.map((flag) => flag.attributes['data-id'])).toEqual(['last safe start 11:05'])
    // 11:05 is 5 h 5 min after 06:00: 16 + 305 px.
    expect(paths(flags[0])[0]?.attributes['d']).toMatch(/^M321 /u)
    const none = { ...input, days: [{ ...day, lastSafeStartMs: null }] }
    expect(partsOf(boardDrawing(none).hours, 'flag')).toEqual([])
  })

  it('has rain as a band from its first minute to its last', () => {
    const [band] = partsOf(boardDrawing(input).hours, 'band')
    const rect = band?.children.find((child) => typeof child !== 'string' && child.tag === 'rect')
    expect(rect).toMatchObject({ attributes: { x: 16 + 9 * 60, width: 120 } })
    expect(band?.attributes['aria-label']).toBe('rain 15:00, 3 mm')
  })

  it('lays names and hours out to the same height, and side by side on paper', () => {
    const { names, hours } = boardDrawing(input)
    expect(names.attributes['height']).toBe(hours.attributes['height'])
    expect(boardSheet(input).attributes['width']).toBe(120 + Number(hours.attributes['width']))
  })

  it('shows several days side by side, each with its heading', () => {
    const DAY_MS = 86_400_000
    const next = {
      ...day,
      date: '2026-08-12',
      fromMs: day.fromMs + DAY_MS,
      toMs: day.toMs + DAY_MS,
      bands: [],
    }
    const text = toSvgString(boardDrawing({ ...input, days: [day, next] }).hours)
    expect(text).toContain('Tuesday 11 Aug')
    expect(text).toContain('Wednesday 12 Aug')
  })

  it('leaves out letters that would run into the ones before', () => {
    const crowded = {
      ...early,
      tasks: [
        task('1', '07:00', '07:20', 'S1'),
        task('2', '07:04', '07:20', 'S2'),
        task('3', '09:00', '09:30', 'K'),
      ],
    }
    const text = toSvgString(boardDrawing({ ...input, greens: [crowded] }).hours)
    expect(text).toContain('>S1<')
    expect(text).not.toContain('>S2<')
    expect(text).toContain('>K<')
  })
})

describe('posts', () => {
  const own = (id: string, from: string, to: string, letters: string, name: string) => ({
    ...task(id, from, to, letters),
    green: name,
  })

  it('gather a person\u2019s tasks at one machine, greens in order and once each', () => {
    const blocks = postBlocks([
      own('1', '07:00', '07:30', 'C', '4'),
      own('2', '07:40', '08:10', 'C', '5'),
      own('3', '08:10', '08:20', 'C', '5'),
      own('4', '08:30', '09:00', 'D', '4'),
    ])
    expect(blocks.map(({ letters, greens }) => [letters, greens])).toEqual([
      ['C', ['4', '5']],
      ['D', ['4']],
    ])
    expect([blocks[0]?.fromMs, blocks[0]?.toMs]).toEqual([at('07:00'), at('08:20')])
  })

  it('end with a long pause', () => {
    // 45 minutes still belong together, 46 do not.
    const gap = (second: string) =>
      postBlocks([own('1', '07:00', '07:30', 'C', '4'), own('2', second, '09:00', 'C', '5')]).length
    expect([gap('08:15'), gap('08:16')]).toEqual([1, 2])
  })
})
