import { describe, expect, it } from 'vitest'
import { dayNumber } from '../time/calendar.ts'
import { chanceOf } from './chance.ts'
import { DUBLIN_STATION, SEATTLE_LAYOUT, seattleText } from './fixtures/records.ts'
import { readHistory } from './history.ts'
import { hoursOfDays, rainHours } from './hours-of-days.ts'

const history = readHistory(seattleText(), SEATTLE_LAYOUT)
if (!history.ok) throw new Error('record not readable')
const { record } = history.value
const SEATTLE = { ...DUBLIN_STATION, latitudeDeg: 47.45, longitudeDeg: -122.31, altitudeM: 130 }
const year = hoursOfDays(record, SEATTLE, { fromDay: dayNumber('2013-01-01'), days: 365, seed: 9 })
const offset = dayNumber('2013-01-01') - record.startDay

const daySum = (column: Float64Array, d: number): number =>
  column.subarray(d * 24, d * 24 + 24).reduce((a, b) => a + b, 0)

describe('hours made from daily figures', () => {
  it('keep the rain and the wind of every day', () => {
    for (let d = 0; d < 365; d++) {
      expect(daySum(year.rainMm, d)).toBeCloseTo(record.columns.rainMm[offset + d] ?? NaN, 9)
      expect(daySum(year.windMPerS, d) / 24).toBeCloseTo(record.columns.windMPerS[offset + d] ?? NaN, 9)
    }
  })

  it('stay within the extremes of the days round about, and come near to both', () => {
    let [worstLow, worstHigh] = [0, 0]
    for (let d = 1; d < 364; d++) {
      // Pacific days run from 8 UTC; the minimum lies at sunrise, the maximum in the afternoon.
      const local = year.temperatureC.subarray(d * 24 + 8, d * 24 + 32)
      worstLow = Math.max(
        worstLow,
        Math.abs(Math.min(...local.subarray(0, 14)) - (record.columns.minC[offset + d] ?? NaN)),
      )
      worstHigh = Math.max(worstHigh, Math.abs(Math.max(...local) - (record.columns.maxC[offset + d] ?? NaN)))
    }
    expect(worstHigh).toBeLessThan(0.6)
    expect(worstLow).toBeLessThan(0.6)
  })

  it('have sun only by day and dew points never over the air', () => {
    expect(year.radiationWPerM2[8]).toBe(0)
    expect(Math.max(...year.radiationWPerM2)).toBeLessThan(1100)
    expect(year.dewPointC.every((dew, h) => dew <= (year.temperatureC[h] ?? NaN))).toBe(true)
  })

  it('are the same for a day whatever stretch is asked, and others for another seed', () => {
    const week = hoursOfDays(record, SEATTLE, { fromDay: dayNumber('2013-03-01'), days: 7, seed: 9 })
    expect([...week.rainMm]).toEqual([...year.rainMm.subarray(59 * 24, 66 * 24)])
    const other = hoursOfDays(record, SEATTLE, { fromDay: dayNumber('2013-01-01'), days: 365, seed: 10 })
    expect([...other.rainMm]).not.toEqual([...year.rainMm])
  })

  it('leave a day without a figure without one', () => {
    const holed = {
      ...record,
      columns: {
        ...record.columns,
        rainMm: record.columns.rainMm.map((mm, i) => (i === offset + 1 ? NaN : mm)),
      },
    }
    const hours = hoursOfDays(holed, SEATTLE, { fromDay: dayNumber('2013-01-01'), days: 3, seed: 9 })
    expect([...hours.rainMm.subarray(24, 48)].every(Number.isNaN)).toBe(true)
    expect([...hours.rainMm.subarray(48)].some(Number.isNaN)).toBe(false)
  })
})

describe('the hours of a day’s rain', () => {
  it('grow in number with the amount, and never fall under the gauge', () => {
    const chance = chanceOf(3)
    const count = (mm: number): number => {
      let wet = 0
      for (let n = 0; n < 500; n++) {
        const hours = rainHours(mm, chance)
        expect(hours.reduce((a, b) => a + b, 0)).toBeCloseTo(mm, 9)
        wet += hours.filter((x) => x > 0).length
      }
      return wet / 500
    }
    const [drizzle, shower, wet, soak] = [0.2, 1, 5, 20].map(count)
    expect(drizzle).toBeLessThanOrEqual(2)
    expect(shower).toBeGreaterThan(drizzle ?? NaN)
    expect(wet).toBeGreaterThan(shower ?? NaN)
    expect(soak).toBeGreaterThan(wet ?? NaN)
    expect(soak).toBeLessThan(12)
  })
})
