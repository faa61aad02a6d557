import { describe, expect, it } from 'vitest'
import { addDays } from '../../time/calendar.ts'
import type { Fixture } from '../../course/course.ts'
import { chooseWeeks } from './choose-weeks.ts'
import { clashesOf, type Clash } from './clashes.ts'
import { growthLeft } from './growth-left.ts'
import { outlookOf, type WeekOutlook } from './outlook.ts'
import type { WeekInYear } from './week-in-year.ts'

const fixture = (id: string, date: string, greens: Fixture['greens'] = 'all'): Fixture => ({
  id,
  name: id,
  date,
  from: '08:00',
  to: '17:00',
  greens,
})

describe('a competition', () => {
  const worked = new Set(['g1', 'g2'])
  const fixtures = [
    fixture('back', '2026-09-20'),
    fixture('before', '2026-08-09'),
    fixture('work', '2026-08-12'),
    fixture('healing', '2026-09-19'),
    fixture('elsewhere', '2026-08-12', ['g3']),
    fixture('one-green', '2026-08-15', ['g2', 'g3']),
  ]

  it('clashes from the first day until the greens are in play again, if it is on a worked green', () => {
    const away = { firstDay: '2026-08-10', finishedOn: '2026-08-14', until: '2026-09-20' }
    expect(clashesOf(fixtures, worked, away)).toEqual([
      { fixture: 'work', when: 'work' },
      { fixture: 'one-green', when: 'healing' },
      { fixture: 'healing', when: 'healing' },
    ])
  })

  it('falls into the work as long as a green is not finished', () => {
    const away = { firstDay: '2026-08-10', finishedOn: null, until: '2026-08-22' }
    expect(clashesOf(fixtures, worked, away).map(({ when }) => when)).toEqual(['work', 'work'])
  })
})

const year = (more: Partial<WeekInYear>): WeekInYear => ({
  year: 2011,
  greensLeft: 0,
  finishedOn: '2026-08-13',
  daysLost: 0,
  shutGreenDays: 19,
  backFrom: '2026-08-25',
  backBy: '2026-09-08',
  clashes: [],
  growingDaysLeft: 12,
  growthEnds: '2026-11-01',
  ...more,
})

const met: readonly Clash[] = [{ fixture: 'cup', when: 'healing' }]

describe('three invented years of one candidate', () => {
  const outlook = outlookOf('2026-08-10', 4, [
    year({ clashes: met }),
    year({
      finishedOn: '2026-08-14',
      daysLost: 1,
      backFrom: '2026-08-23',
      backBy: '2026-09-03',
      growingDaysLeft: 20,
    }),
    year({ finishedOn: null, greensLeft: 3, daysLost: 6, backFrom: null, backBy: null, growingDaysLeft: 0 }),
  ])

  it('are counted: by Thursday in the first alone, and that one meets the cup', () => {
    expect(outlook.lastDay).toBe('2026-08-13')
    expect([outlook.finishedYears, outlook.clearYears, outlook.freeYears]).toEqual([1, 0, 2])
    expect(outlook.clashes).toEqual([{ fixture: 'cup', workYears: 0, healingYears: 1 }])
  })

  it('are ranked, what cannot be said last: ranks 1, 2 and 3 of three', () => {
    expect(outlook.daysLost).toEqual({ low: 0, median: 1, high: 6 })
    expect(outlook.backFrom).toEqual({ low: '2026-08-23', median: '2026-08-25', high: null })
    expect(outlook.daysUntilBack).toEqual({ low: 24, median: 29, high: null })
    expect(outlook.growingDaysLeft).toEqual({ low: 0, median: 12, high: 20 })
  })

  it('of ten the ranks are 1, 5 and 9', () => {
    const ten = Array.from({ length: 10 }, (_, i) => year({ daysLost: 9 - i }))
    expect(outlookOf('2026-08-10', 4, ten).daysLost).toEqual({ low: 0, median: 4, high: 8 })
  })
})

describe('choosing', () => {
  /** A candidate of four years of which so many are finished in time, and so many of those meet the cup. */
  const week = (
    firstDay: string,
    finished: number,
    clashing: number,
    back = addDays(firstDay, 30),
  ): WeekOutlook =>
    outlookOf(
      firstDay,
      5,
      Array.from({ length: 4 }, (_, i) =>
        year({
          finishedOn: i < finished ? firstDay : null,
          clashes: i < clashing ? met : [],
          backBy: back,
        }),
      ),
    )
  const days = (list: readonly { readonly week: WeekOutlook }[]) =>
    list.map(({ week: { firstDay } }) => firstDay)

  it('goes by years clear, then finished, then soonest back, then the earlier', () => {
    const { ranked } = chooseWeeks([
      week('2026-08-03', 4, 3),
      week('2026-08-10', 2, 1),
      week('2026-08-17', 2, 0),
      week('2026-08-24', 3, 2, '2026-09-10'),
      week('2026-08-31', 3, 2, '2026-09-10'),
    ])
    // Clear years 1, 1, 2, 1, 1; finished 4, 2, 2, 3, 3; days until back of the last two 17 and 10.
    expect(days(ranked)).toEqual(['2026-08-17', '2026-08-03', '2026-08-31', '2026-08-24', '2026-08-10'])
  })

  it('puts three forward that begin a week or more apart', () => {
    const { picks } = chooseWeeks([
      week('2026-08-03', 4, 0),
      week('2026-08-05', 4, 0),
      week('2026-08-10', 3, 0),
      week('2026-08-14', 2, 0),
      week('2026-08-17', 1, 0),
      week('2026-08-31', 0, 0),
    ])
    expect(days(picks)).toEqual(['2026-08-03', '2026-08-10', '2026-08-17'])
  })

  it('names as reserve the next candidate after the days wanted that half the years find free', () => {
    const { ranked } = chooseWeeks([
      week('2026-08-03', 4, 0),
      week('2026-08-07', 4, 0),
      week('2026-08-08', 4, 3),
      week('2026-08-10', 0, 2),
    ])
    const reserves = new Map(ranked.map(({ week: { firstDay }, reserve }) => [firstDay, reserve]))
    expect(reserves.get('2026-08-03')).toBe('2026-08-10')
    expect(reserves.get('2026-08-10')).toBeNull()
  })
})

describe('growth left', () => {
  it('adds up growth potential until the fortnight that follows hardly grows', () => {
    // By hand: 20 C is the optimum, so each of ten days counts 1; -10 C counts exp(-0.5 (30/5.5)^2) < 1e-6.
    const cold = Array.from({ length: 30 }, () => -10)
    const { growingDays, endsAfterDays } = growthLeft([...Array.from({ length: 10 }, () => 20), ...cold])
    expect(growingDays).toBeCloseTo(10, 5)
    expect(endsAfterDays).toBe(10)
  })

  it('has no end while grass goes on growing: 180 days of 15 C are 180 x 0.6615', () => {
    const { growingDays, endsAfterDays } = growthLeft(Array.from({ length: 180 }, () => 15))
    expect(growingDays).toBeCloseTo(180 * 0.6615, 1)
    expect(endsAfterDays).toBeNull()
  })
})
