import type { Matrix } from './matrix.ts'
import type { Station } from './daily-record.ts'

/** Chance and amount of rain in one month of the year. */
export type RainMonth = {
  /** Chance of a wet day after one, two, and three or more dry days: the longer it has been dry, the drier it stays. */
  readonly wetAfterDry: readonly [number, number, number]
  /** Chance of a wet day after a wet one. */
  readonly wetAfterWet: number
  /** Rain of a wet day over the wet-day limit: with `share` exponential of mean `lightMm`, else of mean `heavyMm`. */
  readonly share: number
  readonly lightMm: number
  readonly heavyMm: number
  /** Chance of a little rain, under the wet-day limit, on a day that is not wet, and its mean, mm. */
  readonly drizzleShare: number
  readonly drizzleMm: number
  /** Spread from year to year of the logit of both chances: some Julys are wet, some dry. */
  readonly yearSpread: number
  /** Spread from year to year of the logarithm of what falls on a wet day. */
  readonly amountSpread: number
}

/** What varies from day to day besides rain, each on the scale on which it is drawn. */
export const STATE_VARIABLES = ['meanC', 'logRange', 'logitSun', 'logWind'] as const

/** One of them. */
export type StateVariable = (typeof STATE_VARIABLES)[number]

/** Yearly course: `a0 + a1 cos wt + b1 sin wt + a2 cos 2wt + b2 sin 2wt`, t in days of the year. */
export type Harmonics = readonly [number, number, number, number, number]

/** Mean and spread of one variable through the year, on dry and on wet days. */
export type StateCourse = { readonly mean: Harmonics; readonly spread: Harmonics }

/** A climate that weather can be drawn from. */
export type Climate = {
  readonly station: Station
  /** A day with at least this much rain is wet, mm. */
  readonly wetMm: number
  /** January to December. */
  readonly rain: readonly RainMonth[]
  /** Variables that the climate knows, in the order of the matrices. */
  readonly variables: readonly StateVariable[]
  readonly dry: readonly StateCourse[]
  readonly wet: readonly StateCourse[]
  /** Today's departures are `carry * yesterday's + root * fresh normals` (Matalas 1967). */
  readonly carry: Matrix
  readonly root: Matrix
  /** Spread from month to month of the mean temperature beyond what daily chance gives, C, January to December. */
  readonly monthSpreadC: readonly number[]
}

/** Value of a yearly course on a day of the year. */
export const courseAt = (h: Harmonics, dayOfYear: number): number => {
  const w = (2 * Math.PI * dayOfYear) / 365.25
  return h[0] + h[1] * Math.cos(w) + h[2] * Math.sin(w) + h[3] * Math.cos(2 * w) + h[4] * Math.sin(2 * w)
}

/** Solar over extraterrestrial radiation lies between these. */
const SUN_LOW = 0.02
const SUN_HIGH = 0.8

/** Solar share of the radiation above the atmosphere as a logit. */
export const logitSun = (share: number): number => {
  const x = Math.max(0.005, Math.min(0.995, (share - SUN_LOW) / (SUN_HIGH - SUN_LOW)))
  return Math.log(x / (1 - x))
}

/** And back. */
export const sunOfLogit = (logit: number): number => SUN_LOW + (SUN_HIGH - SUN_LOW) / (1 + Math.exp(-logit))

/** Range of the day's temperature (C) and mean wind (m/s) are drawn as logarithms; this keeps noughts finite. */
export const RANGE_SHIFT_C = 0.5
export const WIND_SHIFT = 0.2
