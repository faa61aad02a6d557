import { describe, expect, it } from 'vitest'
import { expectedBack } from '../../recovery/expected-back.ts'
import { addDays, dateOfDay, dayNumber } from '../../time/calendar.ts'
import { emptyRecord, type DailyRecord } from '../../weather/daily-record.ts'
import { makePlan } from '../make-plan.ts'
import { demoInput } from '../testing/demo.ts'
import { yearsOnDates, type PastWeather } from './past-years.ts'
import { reckonWeeks, type Weeks, type WeeksWanted } from './reckon-weeks.ts'

const STATION = { latitudeDeg: 54, longitudeDeg: -2, altitudeM: 34, windHeightM: 10 }
const FIRST = '2026-08-10'

/** Five greens of the demo under one prescription. Competitions only where a test puts them. */
const demo = demoInput()
const course = { ...demo.course, greens: demo.course.greens.slice(0, 5), fixtures: [] }
const prescription = {
  ...demo.prescription,
  groups: demo.prescription.groups.filter(({ greens }) => greens === 'all'),
}

/** Days of bright dry weather, 10 to 22 C, from 2011 to early August 2014; on days named it pours from dull skies. */
const pastWith = (pours: (date: string) => boolean, last = '2014-08-05'): PastWeather => {
  const startDay = dayNumber('2011-01-01')
  const record: DailyRecord = emptyRecord(startDay, dayNumber(last) - startDay + 1)
  for (let i = 0; i < record.days; i++) {
    const wet = pours(dateOfDay(startDay + i))
    record.columns.rainMm[i] = wet ? 30 : 0
    record.columns.minC[i] = wet ? 12 : 10
    record.columns.maxC[i] = wet ? 12.5 : 22
    record.columns.windMPerS[i] = 3
    record.columns.radiationMJPerM2[i] = wet ? 0.5 : 18
    record.columns.humidityPercent[i] = wet ? 100 : 55
  }
  return { record, station: STATION, source: 'record' }
}

const DRY = pastWith(() => false)

const wanted = (more: Partial<WeeksWanted> = {}): WeeksWanted => ({
  course,
  prescription,
  past: DRY,
  firstDays: [FIRST],
  days: 2,
  years: 10,
  seed: 1,
  schedules: 10,
  ...more,
})

const reckoned = (more?: Partial<WeeksWanted>): Weeks => {
  const weeks = reckonWeeks(wanted(more))
  if (!weeks.ok) throw new Error(JSON.stringify(weeks.error))
  return weeks.value
}

const firstWeek = (weeks: Weeks) => {
  const [week] = weeks.weeks
  if (week === undefined) throw new Error('no week')
  return week
}

describe('the weeks', () => {
  it('are finished in every year where it never rains, with nothing lost', () => {
    const weeks = reckoned()
    expect(weeks.years).toEqual([2011, 2012, 2013])
    const week = firstWeek(weeks)
    expect([week.finishedYears, week.clearYears]).toEqual([3, 3])
    expect(week.years.map(({ greensLeft, daysLost }) => [greensLeft, daysLost])).toEqual([
      [0, 0],
      [0, 0],
      [0, 0],
    ])
  })

  it('are never finished where it never stops raining, and every day looked at is lost', () => {
    const { horizonDays, weeks } = reckoned({ past: pastWith(() => true) })
    for (const year of weeks[0]?.years ?? [])
      expect(year).toMatchObject({
        greensLeft: 5,
        finishedOn: null,
        daysLost: horizonDays,
        backBy: null,
        growingDaysLeft: 0,
      })
    expect(weeks[0]?.finishedYears).toBe(0)
  })

  it('count by the year: one dry, one that pours on three days, one all month', () => {
    const pours = (date: string): boolean =>
      ['2012-08-10', '2012-08-11', '2012-08-12'].includes(date) || date.startsWith('2013-08')
    const week = firstWeek(reckoned({ past: pastWith(pours) }))
    expect(week.years.map(({ daysLost }) => daysLost)).toEqual([0, 3, 9])
    const [dry, late, never] = week.years
    // Two days were wanted, so by the 11th; rain over on the 12th is too late for that.
    expect(dry?.finishedOn).toMatch(/^2026-08-1[01]$/u)
    expect(late?.finishedOn).toMatch(/^2026-08-1[3-8]$/u)
    expect(never).toMatchObject({ finishedOn: null, greensLeft: 5 })
    expect(week.finishedYears).toBe(1)
  })

  it('take as long as a plan of those hours takes', () => {
    const [dry] = firstWeek(reckoned()).years
    const stretch = { year: 2026, from: '2026-08-06', days: 20, tailFrom: '2026-08-26' }
    const [year] = yearsOnDates(DRY, stretch, { years: 1, seed: 1 })
    const plan = makePlan({
      ...demo,
      course,
      prescription,
      weather: year?.weather ?? null,
      start: FIRST,
      days: 9,
      schedules: 10,
    })
    if (!plan.ok) throw new Error('no plan')
    expect(plan.value.unplanned).toEqual([])
    expect(plan.value.objective.finish?.slice(0, 10)).toBe(dry?.finishedOn)
    expect(plan.value.objective.shutGreenDays).toBe(dry?.shutGreenDays)
  })

  it('are good again when `expectedBack` says so of the same hours', () => {
    const stretch = { year: 2026, from: '2026-08-01', days: 240, tailFrom: '2026-08-26' }
    const years = yearsOnDates(DRY, stretch, { years: 3, seed: 1 })
    const [group] = prescription.groups
    if (group === undefined) throw new Error('no group')
    for (const [i, found] of firstWeek(reckoned()).years.entries()) {
      const back = expectedBack({
        group,
        finished: found.finishedOn ?? '',
        weather: years[i]?.weather ?? null,
        timeZone: course.timeZone,
      })
      expect(back?.by).toBe('closure')
      expect([found.backFrom, found.backBy]).toEqual([back?.from, back?.to])
    }
  })

  it('meet the competitions in the work and before the greens are back', () => {
    const [year] = firstWeek(reckoned()).years
    const backBy = year?.backBy ?? ''
    const on = (id: string, date: string) =>
      ({ id, name: id, date, from: '08:00', to: '12:00', greens: 'all' }) as const
    const fixtures = [
      on('first', FIRST),
      on('eve', addDays(backBy, -1)),
      on('back', backBy),
      on('past', '2026-08-09'),
    ]
    const week = firstWeek(reckoned({ course: { ...course, fixtures: fixtures.slice(1) } }))
    expect(week.clashes).toEqual([{ fixture: 'eve', workYears: 0, healingYears: 3 }])
    expect([week.finishedYears, week.clearYears]).toEqual([3, 0])
    const met = firstWeek(reckoned({ course: { ...course, fixtures } }))
    expect(met.clashes.find(({ fixture }) => fixture === 'first')?.workYears).toBe(3)
  })

  it('do not want for sand or tines, which are ordered for the week that is chosen', () => {
    const bare = {
      ...course,
      stores: course.stores.map((store) => ({ ...store, stockT: 0, deliveries: [] })),
      tineSets: [],
    }
    expect(firstWeek(reckoned({ course: bare })).finishedYears).toBe(3)
  })

  it('come out alike again, and one by one as all together', () => {
    const past = pastWith((date) => date.endsWith('-08-11'))
    const both = reckoned({ past, firstDays: ['2026-08-17', FIRST] })
    expect(reckoned({ past, firstDays: ['2026-08-17', FIRST] })).toEqual(both)
    expect(both.weeks.map(({ firstDay }) => firstDay)).toEqual([FIRST, '2026-08-17'])
    expect(both.weeks[0]).toEqual(firstWeek(reckoned({ past })))
  })

  it('are told one by one, those that meet a competition in the days wanted last', () => {
    const fixture = {
      id: 'cup',
      name: 'cup',
      date: FIRST,
      from: '08:00',
      to: '12:00',
      greens: 'all',
    } as const
    const told: string[] = []
    reckonWeeks(
      wanted({ course: { ...course, fixtures: [fixture] }, firstDays: [FIRST, '2026-08-17'], years: 1 }),
      ({ week, done, of }) => told.push(`${done} of ${of}: ${week.firstDay}`),
    )
    expect(told).toEqual(['1 of 2: 2026-08-17', `2 of 2: ${FIRST}`])
  })
})

describe('what can’t be reckoned', () => {
  it.each([
    [{ firstDays: ['2026-02-30'] }, { type: 'badStart', received: '2026-02-30' }],
    [{ firstDays: [] }, { type: 'badFirstDays', received: 0, min: 1, max: 200 }],
    [{ days: 0 }, { type: 'badDays', received: 0, min: 1, max: 21 }],
    [{ firstDays: ['2026-01-01', '2027-02-01'] }, { type: 'tooLongPeriod', receivedDays: 397, maxDays: 370 }],
    [{ course: { ...course, people: [] } }, { type: 'noPeople' }],
  ])('%j: %j', (more, error) => {
    expect(reckonWeeks(wanted(more))).toEqual({ ok: false, error })
  })

  it('a record without one whole season', () => {
    const short = pastWith(() => false, '2011-07-19')
    // Four days before 10 August and ten after the nine days looked at: 6 to 20 August.
    expect(reckonWeeks(wanted({ past: short }))).toMatchObject({
      error: {
        type: 'noWholeYear',
        from: '2026-08-06',
        to: '2026-08-20',
        recordFrom: '2011-01-01',
        recordTo: '2011-07-19',
      },
    })
  })
})
