import { dateOfDay, dayOfYear, monthOf } from '../time/calendar.ts'
import { chanceOf, type Chance } from './chance.ts'
import {
  courseAt,
  RANGE_SHIFT_C,
  sunOfLogit,
  WIND_SHIFT,
  type Climate,
  type RainMonth,
  type StateVariable,
} from './climate.ts'
import { emptyRecord, type DailyRecord, type Station } from './daily-record.ts'
import { fitRain } from './fit-rain.ts'
import { fitState } from './fit-state.ts'
import { extraterrestrialDayMJ } from './radiation.ts'
import { shiftedChance } from './rain-chain.ts'

/** A day with this much rain counts as wet in a fit, mm: the limit of climate tables, and of the dry spells that matter for work. */
export const FIT_WET_MM = 1

/** Largest rain drawn for one day, mm: a guard against the tail of the distribution, over any figure of a temperate record. */
const MOST_RAIN_MM = 300

/** Fits a climate to a daily record; a few years are enough for means, ten or more for how years differ. */
export const fitClimate = (record: DailyRecord, station: Station): Climate => ({
  station,
  wetMm: FIT_WET_MM,
  rain: fitRain(record, FIT_WET_MM),
  ...fitState(record, station, FIT_WET_MM),
})

/** Chance of a wet day after so many dry ones, 0 for after a wet one. */
const chanceOfWet = (month: RainMonth, dryRun: number): number => {
  const [one, two, more] = month.wetAfterDry
  return dryRun === 0 ? month.wetAfterWet : dryRun === 1 ? one : dryRun === 2 ? two : more
}

/** Rain of a wet day, or the drizzle of one that is not. `more` is what this month's wet days give over their mean. */
const drawRain = (month: RainMonth, isWet: boolean, wetMm: number, more: number, chance: Chance): number => {
  if (!isWet) {
    if (chance.uniform() >= month.drizzleShare) return 0
    return Math.max(0.1, Math.min(wetMm - 0.1, month.drizzleMm * 2 * chance.uniform()))
  }
  const mean = chance.uniform() < month.share ? month.lightMm : month.heavyMm
  return Math.min(MOST_RAIN_MM, wetMm + more * mean * chance.exponential())
}

/** Departures of one day from the yearly courses. */
const nextState = (climate: Climate, before: readonly number[], chance: Chance): number[] => {
  const fresh = climate.variables.map(() => chance.normal())
  return climate.variables.map((_, i) =>
    climate.variables.reduce(
      (sum, _name, k) =>
        sum + (climate.carry[i]?.[k] ?? 0) * (before[k] ?? 0) + (climate.root[i]?.[k] ?? 0) * (fresh[k] ?? 0),
      0,
    ),
  )
}

/** Days drawn before the first, so that it does not show how the chain was started. */
const WARM_UP_DAYS = 60

/** Rounds as records are kept. */
const to = (digits: number, value: number): number => Math.round(value * 10 ** digits) / 10 ** digits

/**
 * Draws daily weather of a climate: whether a day is wet from the day before (two-state chain), how much from two exponentials, temperature, its range, sun and
 * wind as correlated departures from the yearly course of wet or of dry days (Richardson 1981). Each month also draws how wet and how warm it is as a whole, so
 * that years differ as they do. Wind is at 10 m. Figures are rounded as a record is (0.1 mm, 0.1 C, 0.1 m/s, 0.01 MJ/m2).
 */
export const generateDays = (climate: Climate, startDay: number, days: number, seed: number): DailyRecord => {
  const chance = chanceOf(seed)
  const record = emptyRecord(startDay, days)
  const position = (name: StateVariable): number => climate.variables.indexOf(name)
  const [meanAt, rangeAt, sunAt, windAt] = [
    position('meanC'),
    position('logRange'),
    position('logitSun'),
    position('logWind'),
  ]
  let state: number[] = climate.variables.map(() => 0)
  let [dryRun, month, wetter, more, warmerC] = [0, 0, 0, 1, 0]
  for (let i = -WARM_UP_DAYS; i < days; i++) {
    const date = dateOfDay(startDay + i)
    const j = dayOfYear(date)
    const m = monthOf(date)
    const rain = climate.rain[m - 1]
    if (rain === undefined) continue
    if (m !== month) {
      month = m
      wetter = rain.yearSpread * chance.normal()
      more = Math.exp(rain.amountSpread * chance.normal() - rain.amountSpread ** 2 / 2)
      warmerC = (climate.monthSpreadC[m - 1] ?? 0) * chance.normal()
    }
    const isWet = chance.uniform() < shiftedChance(chanceOfWet(rain, dryRun), wetter)
    const rainMm = drawRain(rain, isWet, climate.wetMm, more, chance)
    state = nextState(climate, state, chance)
    dryRun = isWet ? 0 : dryRun + 1
    if (i < 0) continue
    const courses = isWet ? climate.wet : climate.dry
    const value = (at: number): number => {
      const course = courses[at]
      return course === undefined
        ? NaN
        : courseAt(course.mean, j) + Math.max(1e-3, courseAt(course.spread, j)) * (state[at] ?? 0)
    }
    const meanC = value(meanAt) + warmerC
    const rangeC = Math.max(0.5, Math.exp(value(rangeAt)) - RANGE_SHIFT_C)
    record.columns.rainMm[i] = to(1, rainMm)
    record.columns.minC[i] = to(1, meanC - rangeC / 2)
    record.columns.maxC[i] = to(1, meanC + rangeC / 2)
    record.columns.radiationMJPerM2[i] = to(
      2,
      sunOfLogit(value(sunAt)) * extraterrestrialDayMJ(j, climate.station.latitudeDeg),
    )
    record.columns.windMPerS[i] = to(1, Math.max(0, Math.exp(value(windAt)) - WIND_SHIFT))
  }
  return record
}
