import { dateOfDay, monthOf } from '../time/calendar.ts'
import type { RainMonth } from './climate.ts'
import type { DailyRecord } from './daily-record.ts'
import { shiftedChances, wetCountVariance, wetShareOf, type WetChances } from './rain-chain.ts'

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
/** Days of a mean month, to the whole day. */
const MONTH_DAYS = 30

/** Step over which the effect of the logits on the count is taken; their spread is about as large. */
const LOGIT_STEP = 0.3

/**
 * Spread of the logit of the chances that makes the count of wet days vary from year to year as it did. The chain alone gives part of that variance
 * (`wetCountVariance`); what is left over is put on the chances, by how much the count moves with them.
 */
const yearSpreadOf = (counts: readonly number[], chances: WetChances): number => {
  if (counts.length < LEAST_YEARS) return 0
  const left = variance(counts) - wetCountVariance(chances, MONTH_DAYS)
  const share = (logit: number): number => wetShareOf(shiftedChances(chances, logit))
  const slope = (MONTH_DAYS * (share(LOGIT_STEP) - share(-LOGIT_STEP))) / (2 * LOGIT_STEP)
  return left <= 0 ? 0 : Math.min(1.5, Math.sqrt(left) / slope)
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
    const chances: WetChances = { wetAfterDry: [after(1), after(2), after(3)], wetAfterWet: after(0) }
    const whole = [...years.values()].filter(({ days }) => days >= 28)
    const counts = whole.map(({ wet }) => wet)
    const totals = whole.map(({ rainMm }) => rainMm)
    const dryDays = [...years.values()].reduce((n, { days, wet }) => n + days - wet, 0)
    return {
      ...chances,
      ...mixedExponential(amounts),
      drizzleShare: drizzle.length / Math.max(1, dryDays),
      drizzleMm: drizzle.length === 0 ? 0 : drizzle.reduce((a, b) => a + b, 0) / drizzle.length,
      yearSpread: yearSpreadOf(counts, chances),
      amountSpread: amountSpreadOf(
        totals,
        counts,
        amounts.map((x) => x + wetMm),
      ),
    }
  })
