import { describe, expect, it } from 'vitest'
import { addDays, instantOf } from '@swardwright/engine'
import { partsOf, type Drawing } from './drawing.ts'
import { toSvgString } from './drawing-text.ts'
import { hourStrip, type HourStripInput } from './hour-strip.ts'
import type { SkyHour } from './sky-hours.ts'
import { METRIC } from './units.ts'

const at = (clock: string): number => Date.parse(`2026-08-11T${clock}:00+01:00`)
const hour = (clock: string, changes: Partial<SkyHour> = {}): SkyHour => ({
  startMs: at(clock),
  rainMm: 0,
  isRain: false,
  isDew: false,
  isFrost: false,
  ...changes,
})

const input: HourStripInput = {
  hours: [
    hour('06:00', { isDew: true }),
    hour('07:00'),
    hour('08:00', { rainMm: 1.6, isRain: true }),
    hour('09:00', { rainMm: 0.8, isRain: true }),
    hour('10:00', { rainMm: null }),
  ],
  dark: [],
  workable: [{ operation: 'dragIn', spans: [{ fromMs: at('07:00'), toMs: at('08:00') }] }],
  timeZone: 'Europe/London',
  units: METRIC,
  // 96 px of labels and 10 px at the right leave 100 px an hour.
  widthPx: 606,
  scope: 'test',
}

const titles = (drawing: Drawing, kind: string): readonly unknown[] =>
  partsOf(drawing, kind).map((found) => found.attributes['aria-label'])

describe('a strip of hours', () => {
  it('tells of each hour what falls and what lies, and where nothing is known', () => {
    expect(titles(hourStrip(input), 'hour')).toEqual([
      '06:00, dry, dew',
      '07:00, dry',
      '08:00, rain 1.6 mm',
      '09:00, rain 0.8 mm',
      '10:00, no forecast, counted as dry',
    ])
  })

  it('names each pattern where there is room for its word, one word a stretch', () => {
    const words = (changes: Partial<HourStripInput>): readonly string[] =>
      [...toSvgString(hourStrip({ ...input, ...changes })).matchAll(/>(dark|dew|frost)</gu)].map(
        ([, word]) => word ?? '',
      )
    const hours = [
      hour('06:00', { isDew: true }),
      hour('07:00', { isDew: true }),
      hour('08:00', { isDew: true, isFrost: true }),
    ]
    const dark = [{ fromMs: at('06:00'), toMs: at('07:00') }]
    // Each word stands twice: its halo, then itself.
    expect(words({ hours, dark }).toSorted()).toEqual(['dark', 'dark', 'dew', 'dew', 'frost', 'frost'])
    // 5 px an hour leave no room.
    expect(words({ hours, dark, widthPx: 121 })).toEqual([])
  })

  it('shows when an operation can be worked, to scale', () => {
    const [row] = partsOf(hourStrip(input), 'workable')
    expect(row?.attributes['aria-label']).toBe('dragging in: 07:00 to 08:00')
    expect(toSvgString(row as Drawing)).toContain('d="M196 96H296"')
  })

  it('says so when no hour can be worked', () => {
    const none = hourStrip({ ...input, workable: [{ operation: 'dress', spans: [] }] })
    expect(titles(none, 'workable')).toEqual(['dressing: no hour'])
  })

  it('gives rain hour by hour where there is room, and one sum a stretch where there is not', () => {
    const wide = toSvgString(hourStrip(input))
    expect(wide).toContain('>1.6<')
    expect(wide).toContain('>0.8<')
    // 1.6 + 0.8 = 2.4 mm
    expect(toSvgString(hourStrip({ ...input, widthPx: 206 }))).toContain('>2.4 mm<')
  })

  it('draws heavier rain with more lines', () => {
    const lines = (mm: number): number => {
      const one = hourStrip({ ...input, workable: [], hours: [hour('06:00', { rainMm: mm, isRain: true })] })
      return (toSvgString(one).match(/M[^M"]*l-/gu) ?? []).length
    }
    expect(lines(0.3)).toBeGreaterThan(0)
    expect(lines(3)).toBeGreaterThan(lines(0.3))
  })

  it('marks now only inside its hours', () => {
    expect(partsOf(hourStrip({ ...input, nowMs: at('07:30') }), 'now')).toHaveLength(1)
    expect(partsOf(hourStrip({ ...input, nowMs: at('11:00') }), 'now')).toEqual([])
  })

  it.each([
    // British clocks change on 29 March and 25 October 2026 at 01:00 UTC: no 01:00 in spring, two in autumn.
    ['2026-03-29', 23, 0],
    ['2026-10-25', 25, 2],
  ])('draws %s with its %i hours, each in its place, on the course’s clock', (date, hours, ones) => {
    const startMs = instantOf(date, 0, 'Europe/London')
    expect(instantOf(addDays(date, 1), 0, 'Europe/London') - startMs).toBe(hours * 3_600_000)
    const drawing = hourStrip({
      ...input,
      workable: [],
      // 10 px at each side leave 40 px an hour, so that every hour has its figure.
      widthPx: 20 + hours * 40,
      hours: Array.from({ length: hours }, (_, h) => hour('06:00', { startMs: startMs + h * 3_600_000 })),
    })
    const told = titles(drawing, 'hour').map(String)
    expect(told).toHaveLength(hours)
    expect(told.filter((words) => words.startsWith('01:00'))).toHaveLength(ones)
    expect(told.at(-1)).toBe('23:00, dry')
    const svg = toSvgString(drawing)
    // Noon stands where it is: 11 or 13 hours after midnight.
    const noon = (instantOf(date, 720, 'Europe/London') - startMs) / 3_600_000
    expect(svg).toContain(
      `x="${10 + noon * 40}" y="12" font-size="12" text-anchor="middle" fill="var(--quiet)">12<`,
    )
  })
})
