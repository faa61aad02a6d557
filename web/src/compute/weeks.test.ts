import { describe, expect, it } from 'vitest'
import { randomCourse, usualPrescription } from '@swardwright/engine'
import type { KeptHistory } from '@swardwright/journal'
import { weeks } from './jobs/weeks.ts'

const { course } = randomCourse({ seed: 7, greens: 1 })
const wanted = {
  course: { ...course, fixtures: [] },
  prescription: usualPrescription(course),
  firstDays: ['2026-08-10', '2026-08-17'],
  days: 5,
  years: 2,
  seed: 1,
  schedules: 2,
}

/** Three years of dry mild days, 2021 to 2023: by the half-years that a season needs after it, 2021 and 2022 serve. */
const record = (): KeptHistory => {
  const days = 3 * 365
  const each = (value: number): number[] => Array.from({ length: days }, () => value)
  return {
    source: 'file',
    name: 'invented',
    receivedAt: '2026-08-09T12:00:00Z',
    station: { latitudeDeg: 53, longitudeDeg: -1, altitudeM: 50, windHeightM: 10 },
    stationAssumed: false,
    from: '2021-01-01',
    to: '2023-12-31',
    rows: days,
    gaps: [],
    refused: [],
    refusedCount: 0,
    columns: { rainMm: each(0), minC: each(10), maxC: each(20) },
  }
}

describe('the weeks, asked by the app', () => {
  it('go by the record of the course where there is one, and tell each week as it is done', () => {
    const told: string[] = []
    const answer = weeks({ ...wanted, history: record() }, ({ week, done, of }) =>
      told.push(`${done} of ${of}: ${week.firstDay}, ${week.finishedYears}`),
    )
    expect(answer).toMatchObject({ ok: true, value: { source: 'record', years: [2021, 2022] } })
    expect(told).toEqual(['1 of 2: 2026-08-10, 2', '2 of 2: 2026-08-17, 2'])
  })

  it('go by drawn years where there is none', () => {
    const answer = weeks({ ...wanted, history: null }, () => undefined)
    expect(answer).toMatchObject({ ok: true, value: { source: 'drawn' } })
  })
})
