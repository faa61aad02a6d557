import { growthPotentialOf, type GrassSeason } from '../agronomy/growth-curve.ts'
import { dateOfDay, monthOf } from '../time/calendar.ts'
import { monthStatistics, type MonthStatistics } from './climate-statistics.ts'
import type { DailyRecord, Station } from './daily-record.ts'
import { recordEvapotranspiration } from './record-et.ts'

/** What a month of the year is like on a course. */
export type ClimateMonth = MonthStatistics & {
  /** Mean of the days' growth potentials, 0 to 1; temperature alone. */
  readonly growth: number
  /** Mean reference evapotranspiration of a day, mm. */
  readonly etMmPerDay: number
  /** Chance that so many days from a day of the month on all stay under the limit of rain; null where the record never tells. */
  readonly dryWindow: number | null
}

/** What counts as a dry window. */
export type DryWindow = {
  /** Days in a row, the first in the month. */
  readonly days: number
  /** A day with less rain than this is dry, mm. */
  readonly underMm: number
}

const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1)

/** For each month, the share of its days from which on so many days stay dry. A stretch with a day without a figure does not count. */
export const dryWindowByMonth = (record: DailyRecord, { days, underMm }: DryWindow): (number | null)[] => {
  const tally = MONTHS.map(() => ({ dry: 0, all: 0 }))
  const rain = record.columns.rainMm
  for (let i = 0; i + days <= record.days; i++) {
    let [isKnown, isDry] = [true, true]
    for (let k = i; k < i + days; k++) {
      const mm = rain[k] ?? NaN
      isKnown &&= !Number.isNaN(mm)
      isDry &&= mm < underMm
    }
    const month = tally[monthOf(dateOfDay(record.startDay + i)) - 1]
    if (!isKnown || month === undefined) continue
    month.all++
    month.dry += isDry ? 1 : 0
  }
  return tally.map(({ dry, all }) => (all === 0 ? null : dry / all))
}

/** Mean of daily figures by month; NaN where a month has none. */
const meanByMonth = (record: DailyRecord, valueOf: (i: number) => number): number[] => {
  const tally = MONTHS.map(() => ({ sum: 0, n: 0 }))
  for (let i = 0; i < record.days; i++) {
    const value = valueOf(i)
    const month = tally[monthOf(dateOfDay(record.startDay + i)) - 1]
    if (Number.isNaN(value) || month === undefined) continue
    month.sum += value
    month.n++
  }
  return tally.map(({ sum, n }) => sum / n)
}

/** The year of a record, January first: rain, temperature, growth, evapotranspiration, and how often a dry window begins. */
export const climateMonths = (
  record: DailyRecord,
  station: Station,
  wanted: { readonly window: DryWindow; readonly season: GrassSeason },
): readonly ClimateMonth[] => {
  const { minC, maxC } = record.columns
  const growth = meanByMonth(record, (i) =>
    growthPotentialOf({ meanC: ((minC[i] ?? NaN) + (maxC[i] ?? NaN)) / 2, season: wanted.season }),
  )
  const et = recordEvapotranspiration(record, station)
  const etMm = meanByMonth(record, (i) => et[i]?.answer?.etMm ?? NaN)
  const dry = dryWindowByMonth(record, wanted.window)
  return monthStatistics(record).map((month, m) => ({
    ...month,
    growth: growth[m] ?? NaN,
    etMmPerDay: etMm[m] ?? NaN,
    dryWindow: dry[m] ?? null,
  }))
}
