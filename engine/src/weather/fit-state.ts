import { dateOfDay, dayOfYear, monthOf } from '../time/calendar.ts'
import {
  courseAt,
  logitSun,
  RANGE_SHIFT_C,
  STATE_VARIABLES,
  WIND_SHIFT,
  type Harmonics,
  type StateCourse,
  type StateVariable,
} from './climate.ts'
import type { DailyRecord, Station } from './daily-record.ts'
import { less, lowerRoot, inverse, solve, times, transposed, type Matrix } from './matrix.ts'
import { windAt2M } from './penman.ts'
import { dayLengthHours, extraterrestrialDayMJ, radiationFromSunshineMJ } from './radiation.ts'

/** Least share of days that must have a figure for a variable to be fitted. */
const LEAST_KNOWN = 0.5

/** Wind at 10 m, whatever the height of the gauge. */
const windAt10M = (wind: number, heightM: number): number =>
  heightM === 10 ? wind : windAt2M(wind, heightM) / windAt2M(1, 10)

/** A variable of the state on every day, on the scale on which it is drawn. Sunshine stands in for radiation that is missing. */
export const stateSeries = (record: DailyRecord, station: Station, variable: StateVariable): Float64Array => {
  const { minC, maxC, radiationMJPerM2, sunshineHours, windMPerS } = record.columns
  return Float64Array.from({ length: record.days }, (_, i) => {
    const [low, high] = [minC[i] ?? NaN, maxC[i] ?? NaN]
    if (variable === 'meanC') return (low + high) / 2
    if (variable === 'logRange') return Math.log(Math.max(0, high - low) + RANGE_SHIFT_C)
    if (variable === 'logWind')
      return Math.log(windAt10M(windMPerS[i] ?? NaN, station.windHeightM) + WIND_SHIFT)
    const j = dayOfYear(dateOfDay(record.startDay + i))
    const sky = extraterrestrialDayMJ(j, station.latitudeDeg)
    const measured = radiationMJPerM2[i] ?? NaN
    const solar = Number.isNaN(measured)
      ? radiationFromSunshineMJ(sunshineHours[i] ?? NaN, dayLengthHours(j, station.latitudeDeg), sky)
      : measured
    return sky > 0.5 ? logitSun(solar / sky) : NaN
  })
}

/** Least squares of a yearly course; the five terms as in `Harmonics`. */
export const harmonicsOf = (days: readonly number[], values: readonly number[]): Harmonics => {
  const basis = (t: number): number[] =>
    [0, 1, 2, 3, 4].map((k) =>
      courseAt([0, 1, 2, 3, 4].map((j) => (j === k ? 1 : 0)) as unknown as Harmonics, t),
    )
  const normal = Array.from({ length: 5 }, () => [0, 0, 0, 0, 0])
  const right = [0, 0, 0, 0, 0]
  days.forEach((t, n) => {
    const b = basis(t)
    b.forEach((bi, i) => {
      right[i] = (right[i] ?? 0) + bi * (values[n] ?? 0)
      b.forEach((bj, j) => {
        const row = normal[i]
        if (row !== undefined) row[j] = (row[j] ?? 0) + bi * bj
      })
    })
  })
  // A hair of ridge, so that a short record with few wet days has a solution.
  const [a = 0, b = 0, c = 0, d = 0, e = 0] = solve(
    normal.map((row, i) => row.map((value, j) => (i === j ? value + 1e-6 : value))),
    right,
  )
  return [a, b, c, d, e]
}

const courseOf = (days: readonly number[], values: readonly number[]): StateCourse => {
  const mean = harmonicsOf(days, values)
  // The mean of |normal| is sqrt(2 / pi) of its spread.
  const absolute = values.map(
    (value, n) => Math.abs(value - courseAt(mean, days[n] ?? 0)) * Math.sqrt(Math.PI / 2),
  )
  return { mean, spread: harmonicsOf(days, absolute) }
}

/** Products of departures, today's by today's or today's by those `lag` days before, over the days on which both are known. */
const products = (residuals: readonly Float64Array[], lag: number): Matrix =>
  residuals.map((a) =>
    residuals.map((b) => {
      let [sum, n] = [0, 0]
      for (let i = lag; i < a.length; i++) {
        const product = (a[i] ?? NaN) * (b[i - lag] ?? NaN)
        if (!Number.isNaN(product)) [sum, n] = [sum + product, n + 1]
      }
      return n === 0 ? 0 : sum / n
    }),
  )

/** Spread of the monthly mean temperature beyond what a chain of daily departures gives: variance of a mean of n with autocorrelation r^k. */
const monthSpreads = (
  record: DailyRecord,
  residualC: Float64Array,
  r: number,
  spreadC: (month: number) => number,
): number[] => {
  const byMonth = Array.from({ length: 12 }, () => new Map<string, { sum: number; n: number }>())
  for (let i = 0; i < record.days; i++) {
    const value = residualC[i] ?? NaN
    if (Number.isNaN(value)) continue
    const date = dateOfDay(record.startDay + i)
    const months = byMonth[monthOf(date) - 1]
    const entry = months?.get(date.slice(0, 4)) ?? { sum: 0, n: 0 }
    months?.set(date.slice(0, 4), { sum: entry.sum + value, n: entry.n + 1 })
  }
  const n = 30.4
  const inMean = (1 + (2 * r) / (1 - r) - (2 * r * (1 - r ** n)) / (n * (1 - r) ** 2)) / n
  return byMonth.map((years, m) => {
    const means = [...years.values()].filter((year) => year.n >= 28).map((year) => year.sum / year.n)
    if (means.length < 8) return 0
    const average = means.reduce((a, b) => a + b, 0) / means.length
    const seen = means.reduce((sum, x) => sum + (x - average) ** 2, 0) / (means.length - 1)
    return Math.sqrt(Math.max(0, seen - inMean * spreadC(m + 1) ** 2))
  })
}

/** Everything of a climate besides rain. */
export type FittedState = {
  readonly variables: readonly StateVariable[]
  readonly dry: readonly StateCourse[]
  readonly wet: readonly StateCourse[]
  readonly carry: Matrix
  readonly root: Matrix
  readonly monthSpreadC: readonly number[]
}

/** Fits temperature, its range, sun and wind to a record: yearly courses on dry and wet days, and a chain of correlated departures from them. */
export const fitState = (record: DailyRecord, station: Station, wetMm: number): FittedState => {
  const rain = record.columns.rainMm
  const dayOf = Array.from({ length: record.days }, (_, i) => dayOfYear(dateOfDay(record.startDay + i)))
  const all = STATE_VARIABLES.map((name) => ({ name, series: stateSeries(record, station, name) }))
  const used = all.filter(
    ({ series }) => series.filter((x) => !Number.isNaN(x)).length >= LEAST_KNOWN * record.days,
  )
  const fitted = used.map(({ series }) => {
    const courseFor = (isWet: boolean): StateCourse => {
      const rows = [...series.keys()].filter(
        (i) =>
          !Number.isNaN(series[i] ?? NaN) &&
          (rain[i] ?? NaN) >= wetMm === isWet &&
          !Number.isNaN(rain[i] ?? NaN),
      )
      return courseOf(
        rows.map((i) => dayOf[i] ?? 1),
        rows.map((i) => series[i] ?? 0),
      )
    }
    const [dry, wet] = [courseFor(false), courseFor(true)]
    const residual = series.map((value, i) => {
      const course = (rain[i] ?? 0) >= wetMm ? wet : dry
      return (
        (value - courseAt(course.mean, dayOf[i] ?? 1)) /
        Math.max(1e-3, courseAt(course.spread, dayOf[i] ?? 1))
      )
    })
    return { dry, wet, residual }
  })
  const residuals = fitted.map(({ residual }) => residual)
  const [m0, m1] = [products(residuals, 0), products(residuals, 1)]
  const carry = times(m1, inverse(m0))
  const root = lowerRoot(less(m0, times(carry, transposed(m1))))
  const mean = fitted[0]
  const spreadC = (month: number): number =>
    mean === undefined ? 0 : courseAt(mean.dry.spread, (month - 0.5) * 30.4)
  const departuresC =
    mean === undefined
      ? new Float64Array(0)
      : mean.residual.map((x, i) => x * spreadC(monthOf(dateOfDay(record.startDay + i))))
  return {
    variables: used.map(({ name }) => name),
    dry: fitted.map(({ dry }) => dry),
    wet: fitted.map(({ wet }) => wet),
    carry,
    root,
    monthSpreadC: monthSpreads(record, departuresC, m1[0]?.[0] ?? 0, spreadC),
  }
}
