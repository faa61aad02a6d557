import { describe, expect, it } from 'vitest'
import { dayNumber } from '../time/calendar.ts'
import { climateMonths, dryWindowByMonth } from './climate-months.ts'
import { emptyRecord } from './daily-record.ts'
import { dublinText, NO_DUBLIN, SEATTLE_LAYOUT, seattleText } from './fixtures/records.ts'
import { readHistory } from './history.ts'
import { serviceLayout, type Layout } from './history-map.ts'

const recordOf = (text: string, layout: Layout | undefined) => {
  const read = layout === undefined ? null : readHistory(text, layout)
  if (read === null || !read.ok) throw new Error('the record can be read')
  return read.value.record
}

const PUBLISHED = [0.29, 0.35, 0.39, 0.38, 0.39, 0.39, 0.35, 0.33, 0.34, 0.32, 0.28, 0.27]
const dublin = dublinText()

const rainy = (from: string, mm: readonly number[]) => {
  const record = emptyRecord(dayNumber(from), mm.length)
  record.columns.rainMm.set(mm)
  return record
}

describe('the chance of a dry window', () => {
  it('counts the days from which on enough days stay dry', () => {
    // By hand, 2 days under 1 mm from 29 January: 29+30 dry; 30+31 no; 31+1 no; 1+2 dry; 2+3 dry; 3+4 unknown.
    const record = rainy('2023-01-29', [0, 0.9, 1, 0, 0, 0.2, NaN])
    const months = dryWindowByMonth(record, { days: 2, underMm: 1 })
    expect(months[0]).toBeCloseTo(1 / 3, 12)
    expect(months[1]).toBe(1)
    expect(months[2]).toBeNull()
  })

  it.skipIf(dublin === undefined)(
    // Counted independently on the same record: three days under 1 mm from a day of the month on, 1991 to 2020, to a hundredth.
    `is what others have counted at Dublin Airport (${dublin === undefined ? NO_DUBLIN : 'three days, 1991-2020'})`,
    () => {
      const whole = recordOf(dublin ?? '', serviceLayout(dublin ?? ''))
      const from = dayNumber('1991-01-01') - whole.startDay
      const days = dayNumber('2021-01-01') - dayNumber('1991-01-01')
      const part = rainy('1991-01-01', [...whole.columns.rainMm.subarray(from, from + days)])
      const months = dryWindowByMonth(part, { days: 3, underMm: 1 })
      for (const [m, share] of months.entries())
        expect(Math.abs((share ?? NaN) - (PUBLISHED[m] ?? NaN)), `month ${m + 1}`).toBeLessThan(0.0101)
    },
  )
})

describe('the year of a record', () => {
  it('has growth and evapotranspiration month by month (Seattle)', () => {
    const station = { latitudeDeg: 47.45, longitudeDeg: -122.31, altitudeM: 130, windHeightM: 10 }
    const months = climateMonths(recordOf(seattleText(), SEATTLE_LAYOUT), station, {
      window: { days: 3, underMm: 1 },
      season: 'cool',
    })
    expect(months).toHaveLength(12)
    const [january, july] = [months[0], months[6]]
    expect(july?.etMmPerDay).toBeGreaterThan(4 * (january?.etMmPerDay ?? NaN))
    expect(july?.growth).toBeGreaterThan(0.8)
    expect(january?.growth).toBeLessThan(0.2)
    expect(july?.dryWindow).toBeGreaterThan(2 * (january?.dryWindow ?? NaN))
    for (const { growth, dryWindow } of months) {
      expect(growth).toBeGreaterThanOrEqual(0)
      expect(growth).toBeLessThanOrEqual(1)
      expect(dryWindow).toBeLessThanOrEqual(1)
    }
  })
})
