import { dateOfDay, monthOf } from '../time/calendar.ts'
import type { DailyRecord } from './daily-record.ts'

/** Mean over the years, and spread between them. */
export type Spread = { readonly mean: number; readonly betweenYears: number }

/** What a month of the year is like in a record. Only months with at least 28 days of figures count. */
export type MonthStatistics = {
  readonly month: number
  readonly years: number
  /** Days of 1 mm or more. */
  readonly wetDays: Spread
  readonly rainMm: Spread
  readonly meanC: Spread
  /** Spread of the daily mean temperature about its month's own mean, C. */
  readonly dailySpreadC: number
  readonly maxC: number
  readonly minC: number
}

/** Lengths of dry spells (days under 1 mm between wet ones). */
export type DrySpells = {
  readonly meanDays: number
  /** Length that one spell in ten passes. */
  readonly longDays: number
  /** Spells of three days or more in a year. */
  readonly threeOrMorePerYear: number
  readonly longestDays: number
}

/** A day with at least this much rain counts, mm. */
const WET_MM = 1

const spreadOf = (values: readonly number[]): Spread => {
  const mean = values.reduce((a, b) => a + b, 0) / values.length
  const squares = values.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  return { mean, betweenYears: Math.sqrt(squares / Math.max(1, values.length - 1)) }
}

type Tally = { n: number; wet: number; rain: number; sum: number; squares: number; high: number; low: number }

/** Statistics of each month of the year, January first. */
export const monthStatistics = (record: DailyRecord): MonthStatistics[] => {
  const tallies = new Map<string, Tally>()
  const { rainMm, minC, maxC } = record.columns
  for (let i = 0; i < record.days; i++) {
    const [rain, low, high] = [rainMm[i] ?? NaN, minC[i] ?? NaN, maxC[i] ?? NaN]
    if (Number.isNaN(rain + low + high)) continue
    const key = dateOfDay(record.startDay + i).slice(0, 7)
    const tally = tallies.get(key) ?? { n: 0, wet: 0, rain: 0, sum: 0, squares: 0, high: 0, low: 0 }
    tallies.set(key, tally)
    const mean = (low + high) / 2
    tally.n++
    tally.wet += rain >= WET_MM ? 1 : 0
    tally.rain += rain
    tally.sum += mean
    tally.squares += mean * mean
    tally.high += high
    tally.low += low
  }
  return Array.from({ length: 12 }, (_, m) => {
    const whole = [...tallies]
      .filter(([key, { n }]) => monthOf(`${key}-01`) === m + 1 && n >= 28)
      .map(([, tally]) => tally)
    const means = whole.map(({ sum, n }) => sum / n)
    const within = whole.map(({ squares, n }, i) => squares / n - (means[i] ?? 0) ** 2)
    const average = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length
    return {
      month: m + 1,
      years: whole.length,
      wetDays: spreadOf(whole.map(({ wet }) => wet)),
      rainMm: spreadOf(whole.map(({ rain }) => rain)),
      meanC: spreadOf(means),
      dailySpreadC: Math.sqrt(average(within)),
      maxC: average(whole.map(({ high, n }) => high / n)),
      minC: average(whole.map(({ low, n }) => low / n)),
    }
  })
}

/** Rain of each whole year, mm, and how it varies. Years with under 360 days of figures are left out. */
export const yearRainMm = (record: DailyRecord): Spread => {
  const years = new Map<string, { n: number; sum: number }>()
  for (let i = 0; i < record.days; i++) {
    const rain = record.columns.rainMm[i] ?? NaN
    if (Number.isNaN(rain)) continue
    const year = dateOfDay(record.startDay + i).slice(0, 4)
    const { n, sum } = years.get(year) ?? { n: 0, sum: 0 }
    years.set(year, { n: n + 1, sum: sum + rain })
  }
  return spreadOf([...years.values()].filter(({ n }) => n >= 360).map(({ sum }) => sum))
}

/** Lengths of all dry spells of a record. A day without a figure ends a spell. */
export const drySpells = (record: DailyRecord): DrySpells => {
  const lengths: number[] = []
  let run = 0
  for (const rain of [...record.columns.rainMm, NaN]) {
    if (rain < WET_MM) run++
    else {
      if (run > 0) lengths.push(run)
      run = 0
    }
  }
  const sorted = lengths.toSorted((a, b) => a - b)
  return {
    meanDays: lengths.reduce((a, b) => a + b, 0) / Math.max(1, lengths.length),
    longDays: sorted[Math.floor(sorted.length * 0.9)] ?? 0,
    threeOrMorePerYear: (lengths.filter((days) => days >= 3).length * 365.25) / Math.max(1, record.days),
    longestDays: sorted.at(-1) ?? 0,
  }
}
