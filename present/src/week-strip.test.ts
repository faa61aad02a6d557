import { describe, expect, it } from 'vitest'
import { addDays, type WeekOutlook } from '@swardwright/engine'
import { partsOf, type Drawing } from './drawing.ts'
import { weekStrip, type WeekStripInput } from './week-strip.ts'

const over = <T>(low: T, high: T | null) => ({ low, median: low, high })

const week = (
  firstDay: string,
  finishedYears: number,
  clearYears: number,
  backBy: string | null,
): WeekOutlook => ({
  firstDay,
  lastDay: addDays(firstDay, 4),
  finishedYears,
  clearYears,
  freeYears: 10,
  daysLost: over(0, 2),
  shutGreenDays: over(19, 19),
  backFrom: over(addDays(firstDay, 14), addDays(firstDay, 20)),
  backBy: over(addDays(firstDay, 20), backBy),
  daysUntilBack: over(20, 30),
  clashes: [],
  growingDaysLeft: over(1, 2),
  years: Array.from({ length: 10 }, (_, i) => ({
    year: 2011 + i,
    greensLeft: 0,
    finishedOn: firstDay,
    daysLost: 0,
    shutGreenDays: 19,
    backFrom: null,
    backBy: null,
    clashes: [],
    growingDaysLeft: 0,
    growthEnds: null,
  })),
})

const first = week('2026-08-10', 10, 4, '2026-09-10')
const second = week('2026-08-17', 5, 5, null)
const FIRST_DAYS = ['2026-08-10', '2026-08-17', '2026-08-24', '2026-09-07']

const strip = (more: Partial<WeekStripInput> = {}): Drawing =>
  weekStrip({
    firstDays: FIRST_DAYS,
    weeks: [first, second],
    picks: [first, second],
    words: ({ firstDay }) => `about ${firstDay}`,
    widthPx: 358,
    scope: 'test',
    ...more,
  })

const heights = (drawing: Drawing): readonly number[] =>
  partsOf(drawing, 'week').map(({ children }) => {
    const rects = children.filter((one) => typeof one !== 'string' && one.tag === 'rect')
    const last = rects.at(-1)
    return typeof last === 'object' ? Number(last.attributes['height']) : NaN
  })

describe('the strip of weeks', () => {
  it('draws each week as high as its years finished in time: 10 of 10 twice as high as 5', () => {
    const [ten = 0, five = 0] = heights(strip())
    expect(ten).toBeGreaterThan(0)
    expect(five).toBeCloseTo(ten / 2, 6)
  })

  it('tells a week in words, and a pick with its bracket', () => {
    const drawing = strip()
    expect(partsOf(drawing, 'week').map(({ attributes }) => attributes['aria-label'])).toEqual([
      'about 2026-08-10',
      'about 2026-08-17',
    ])
    expect(partsOf(drawing, 'pick').map(({ attributes }) => attributes['aria-label'])).toEqual([
      'Mon 10 Aug: good again 24 Aug to 10 Sept',
      'Mon 17 Aug: good again from 31 Aug on',
    ])
  })

  it('keeps its places while weeks are still to come', () => {
    const place = (drawing: Drawing): unknown =>
      partsOf(drawing, 'week')[0]?.children.flatMap((one) =>
        typeof one === 'string' ? [] : [one.attributes['x']],
      )
    expect(place(strip({ weeks: [first], picks: [] }))).toEqual(place(strip({ picks: [] })))
    expect(strip({ weeks: [], picks: [] }).attributes['width']).toBe(358)
  })

  it('stays within its width on a phone, also with a candidate every day', () => {
    const days = Array.from({ length: 60 }, (_, i) => addDays('2026-08-10', i))
    const drawing = strip({
      firstDays: days,
      weeks: days.map((day) => week(day, 5, 5, null)),
      picks: [first],
    })
    const rights = partsOf(drawing, 'week').flatMap(({ children }) =>
      children.flatMap((one) =>
        typeof one !== 'string' && one.tag === 'rect'
          ? [Number(one.attributes['x']) + Number(one.attributes['width'])]
          : [],
      ),
    )
    expect(Math.max(...rights)).toBeLessThanOrEqual(358)
  })
})
