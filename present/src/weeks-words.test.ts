import { describe, expect, it } from 'vitest'
import { courseFromCount, type Course, type WeekOutlook, type Weeks } from '@swardwright/engine'
import { yearsOf } from './numbers.ts'
import {
  backWords,
  clashWords,
  daysLostWords,
  growthWords,
  weekSentence,
  weeksErrorWords,
  weeksSummary,
} from './weeks-words.ts'

const made = courseFromCount({ greens: 2, totalAreaM2: 1000 })
if (!made.ok) throw new Error('no course')
const course: Course = {
  ...made.value.course,
  fixtures: ['Tarn Cup', 'Open fourball', 'Medal'].map((name, i) => ({
    id: name,
    name,
    date: `2026-09-0${i + 1}`,
    from: '08:00',
    to: '12:00',
    greens: 'all',
  })),
}

const one = <T>(value: T) => ({ low: value, median: value, high: value })

const week: WeekOutlook = {
  firstDay: '2026-08-24',
  lastDay: '2026-08-27',
  finishedYears: 6,
  clearYears: 6,
  freeYears: 10,
  daysLost: { low: 0, median: 1, high: 2 },
  shutGreenDays: one(2),
  backFrom: { low: '2026-09-05', median: '2026-09-06', high: '2026-09-08' },
  backBy: { low: '2026-09-10', median: '2026-09-12', high: '2026-09-14' },
  daysUntilBack: one(20),
  clashes: [],
  growingDaysLeft: { low: 5.6, median: 8, high: 13.2 },
  years: Array.from({ length: 10 }, (_, i) => ({
    year: 2011 + i,
    greensLeft: 0,
    finishedOn: '2026-08-27',
    daysLost: 0,
    shutGreenDays: 2,
    backFrom: '2026-09-05',
    backBy: '2026-09-12',
    clashes: [],
    growingDaysLeft: 8,
    growthEnds: null,
  })),
}

const clash = (fixture: string, workYears: number, healingYears: number) => ({
  fixture,
  workYears,
  healingYears,
})

describe('a week in words', () => {
  it('is one sentence that is read in ten seconds', () => {
    expect(weekSentence(week, course)).toBe(
      'Finished by Thursday in 6 years of 10; good again 5 to 14 Sept; no clash.',
    )
  })

  it('names two competitions and counts the rest', () => {
    const met = {
      ...week,
      clashes: [clash('Tarn Cup', 2, 8), clash('Open fourball', 0, 10), clash('Medal', 0, 1)],
    }
    expect(weekSentence(met, course)).toMatch(/clash with Tarn Cup, Open fourball and 1 more\.$/u)
    expect(clashWords(met, course)).toEqual([
      'Tarn Cup on Tue 1 Sept: in the work in 2 years of 10, before the greens are back in 8 years of 10',
      'Open fourball on Wed 2 Sept: before the greens are back in all 10 years',
      'Medal on Thu 3 Sept: before the greens are back in 1 year of 10',
    ])
  })

  it('says so where no day can be named', () => {
    const open = { ...week, backBy: { ...week.backBy, high: null } }
    expect(backWords(open)).toBe('good again from 5 Sept on, in bad years too late to tell')
    expect(backWords({ ...open, backFrom: { low: null, median: null, high: null } })).toBe(
      'too late to tell when good again',
    )
  })

  it('tells what is lost and what is left', () => {
    expect(daysLostWords(week)).toBe('0 to 2 days')
    expect(daysLostWords({ ...week, daysLost: one(1) })).toBe('1 day')
    expect(growthWords(week)).toBe('6 to 13 growing days')
  })

  it('counts years as people do', () => {
    expect([0, 1, 9, 10].map((count) => yearsOf(count, 10))).toEqual([
      'no year of 10',
      '1 year of 10',
      '9 years of 10',
      'all 10 years',
    ])
    expect(yearsOf(1, 1)).toBe('1 year of 1')
  })
})

describe('all weeks in words', () => {
  const weeks: Weeks = {
    days: 4,
    horizonDays: 11,
    seed: 1,
    schedules: 20,
    source: 'record',
    years: week.years.map(({ year }) => year),
    excluded: [{ green: course.greens[0]?.id ?? '', reason: 'noMachine', facts: { operation: 'core' } }],
    weeks: [week],
  }

  it('say what they stand on, and which greens no week can do', () => {
    const lines = weeksSummary(weeks, course).split('\n')
    expect(lines[0]).toContain('4 days of work wanted; 10 years of the record, 2011 to 2020')
    expect(lines.at(-1)).toContain(course.greens[0]?.name)
    expect(weeksSummary({ ...weeks, source: 'drawn' }, course)).toContain(
      '10 years drawn from normals, not a record of the course',
    )
  })
})

describe('why nothing can be reckoned', () => {
  it('is one sentence with the field and what is accepted', () => {
    expect(weeksErrorWords({ type: 'badFirstDays', received: 0, min: 1, max: 200 })).toBe(
      'there are 0 first days to choose from; it must be 1 to 200',
    )
    expect(weeksErrorWords({ type: 'noPeople' })).toBe('the course has no people; a plan needs at least one')
  })
})
