import { dateOfDay, monthOf } from '../time/calendar.ts'
import type { RainMonth } from './climate.ts'
import type { DailyRecord } from './daily-record.ts'

const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1)

/** Mixture of two exponentials by expectation and maximisation (Woolhiser and Pegram 1979 use it for daily rain). */
export const mixedExponential = (
  amounts: readonly number[],
): Pick<RainMonth, 'share' | 'lightMm' | 'heavyMm'> => {
  const mean = amounts.reduce((a, b) => a + b, 0) / Math.max(1, amounts.length)
  let [share, light, heavy] = [0.5, mean * 0.4, mean * 1.6]
  for (let round = 0; round < 200 && amounts.length > 0; round++) {
    let [weight, lightSum, heavySum] = [0, 0, 0]
    for (const x of amounts) {
      const a = (share / light) * Math.exp(-x / light)
      const b = ((1 - share) / heavy) * Math.exp(-x / heavy)
      const p = a + b > 0 ? a / (a + b) : 0
      weight += p
      lightSum += p * x
      heavySum += (1 - p) * x
    }
    share = Math.max(0.01, Math.min(0.99, weight / amounts.length))
    light = Math.max(0.01, lightSum / Math.max(1e-9, weight))
    heavy = Math.max(0.01, heavySum / Math.max(1e-9, amounts.length - weight))
  }
  return { share, lightMm: light, heavyMm: heavy }
}

const variance = (values: readonly number[]): number => {
  const mean = values.reduce((a, b) => a + b, 0) / values.length
  return values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / Math.max(1, values.length - 1)
}

/** Years it takes to say how years differ. */
const LEAST_YEARS = 8
/** Days of a mean month. */
const MONTH_DAYS = 30.4

/**
 * Spread of the logit of the chances that makes the count of wet days vary from year to year as it did. A two-state chain alone gives the variance
 * `n p (1 - p) (1 + r) / (1 - r)`, r its persistence (Katz 1985); what is left over is put on the chances. A small step of both logits moves the count
 * by `n p (1 - p) (1 + r)` (derivative of p = wetAfterDry / (1 - r)).
 */
const yearSpreadOf = (counts: readonly number[], wetAfterDry: number, wetAfterWet: number): number => {
  if (counts.length < LEAST_YEARS) return 0
  const r = wetAfterWet - wetAfterDry
  const wet = wetAfterDry / (1 - r)
  const left = variance(counts) - (MONTH_DAYS * wet * (1 - wet) * (1 + r)) / (1 - r)
  return left <= 0 ? 0 : Math.min(1.5, Math.sqrt(left) / (MONTH_DAYS * wet * (1 - wet) * (1 + r)))
}

/** Spread of the logarithm of wet-day amounts that makes monthly totals vary as they did, beyond counts and daily chance: Var S = E N Var X + Var N (E X)^2. */
const amountSpreadOf = (
  totals: readonly number[],
  counts: readonly number[],
  amounts: readonly number[],
): number => {
  if (totals.length < LEAST_YEARS) return 0
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length
  const left = variance(totals) - mean(counts) * variance(amounts) - variance(counts) * mean(amounts) ** 2
  return left <= 0 ? 0 : Math.min(0.6, Math.sqrt(left) / mean(totals))
}

/** Days that were [dry, wet] after a wet day (index 0) and after one, two, three or more dry ones. */
type Tally = [dry: number, wet: number][]

/** Chances with a tenth of a day added to each side, so that a month without one kind of day keeps a chance of it. */
const chance = (wet: number, dry: number): number => (wet + 0.1) / (wet + dry + 0.2)

type MonthOfYear = { wet: number; days: number; rainMm: number }
type Collected = {
  readonly tally: Tally
  readonly amounts: number[]
  readonly drizzle: number[]
  readonly years: Map<string, MonthOfYear>
}

const collect = (record: DailyRecord, wetMm: number): Collected[] => {
  const rain = record.columns.rainMm
  let run = NaN
  const months = MONTHS.map((): Collected => ({
    tally: [
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ],
    amounts: [],
    drizzle: [],
    years: new Map(),
  }))
  for (let i = 0; i < record.days; i++) {
    const today = rain[i] ?? NaN
    const date = dateOfDay(record.startDay + i)
    const month = months[monthOf(date) - 1]
    if (Number.isNaN(today)) run = NaN
    if (Number.isNaN(today) || month === undefined) continue
    const year = month.years.get(date.slice(0, 4)) ?? { wet: 0, days: 0, rainMm: 0 }
    month.years.set(date.slice(0, 4), year)
    const isWet = today >= wetMm
    year.days++
    year.rainMm += today
    year.wet += isWet ? 1 : 0
    if (isWet) month.amounts.push(today - wetMm)
    else if (today > 0) month.drizzle.push(today)
    // How long it had been dry is not known before the first wet day; from three dry days on it does not matter.
    const row = month.tally[Math.min(3, run)]
    if (row !== undefined) row[isWet ? 1 : 0]++
    run = isWet ? 0 : run + 1
  }
  return months
}

/** Fits each month's rain to a record. Days without a figure are left out, and so are pairs across them. */
export const fitRain = (record: DailyRecord, wetMm: number): RainMonth[] =>
  collect(record, wetMm).map(({ tally: t, amounts, drizzle, years }) => {
    const after = (run: number): number => chance(t[run]?.[1] ?? 0, t[run]?.[0] ?? 0)
    const dry = t.slice(1).reduce(([d, w], [dry, wet]) => [d + dry, w + wet] as const, [0, 0] as const)
    const wetAfterWet = after(0)
    const whole = [...years.values()].filter(({ days }) => days >= 28)
    const counts = whole.map(({ wet }) => wet)
    const totals = whole.map(({ rainMm }) => rainMm)
    const dryDays = [...years.values()].reduce((n, { days, wet }) => n + days - wet, 0)
    return {
      wetAfterDry: [after(1), after(2), after(3)],
      wetAfterWet,
      ...mixedExponential(amounts),
      drizzleShare: drizzle.length / Math.max(1, dryDays),
      drizzleMm: drizzle.length === 0 ? 0 : drizzle.reduce((a, b) => a + b, 0) / drizzle.length,
      yearSpread: yearSpreadOf(counts, chance(dry[1], dry[0]), wetAfterWet),
      amountSpread: amountSpreadOf(
        totals,
        counts,
        amounts.map((x) => x + wetMm),
      ),
    }
  })
