import { chanceOf, seedOfPart, type Chance } from './chance.ts'
import type { DailyRecord, Station } from './daily-record.ts'
import { hoursOfDays } from './hours-of-days.ts'
import type { WeatherHours } from './hours.ts'

/** How a forecast goes wrong with lead time. All are our assumption, set to what forecasters publish for middle latitudes: little skill for rain after nine days. */
export type Skill = {
  /** Chance that a forecast loses the track on its first day, and what is added each day after. */
  readonly lost: number
  readonly lostMorePerDay: number
  /** Spread of the timing of rain, h, on the first day, and what is added each day after. */
  readonly shiftH: number
  readonly shiftMorePerDayH: number
  /** Spread of the logarithm of amounts of rain. */
  readonly amount: number
  /** Spread of temperature on the first day and what is added each day, C. */
  readonly errorC: number
  readonly errorMorePerDayC: number
  /** Spread of the logarithm of wind. */
  readonly wind: number
}

/** Skill of a good national forecast. */
export const USUAL_SKILL: Skill = {
  lost: 0.02,
  lostMorePerDay: 0.03,
  shiftH: 0.6,
  shiftMorePerDayH: 0.7,
  amount: 0.4,
  errorC: 0.6,
  errorMorePerDayC: 0.25,
  wind: 0.15,
}

/** Days round the calendar day from which other weather is taken. */
const SEASON_DAYS = 15
const YEAR_DAYS = 365.25

export type BackTest = {
  /** Day on which the forecast is made, from 1970-01-01: its first day. */
  readonly issuedDay: number
  readonly days: number
  readonly members: number
  readonly seed: number
  /** Seed of the hours of the true days: that of the truth it is judged against. */
  readonly truthSeed: number
  readonly skill?: Skill
}

/** First day of a stretch of the record at the same season of an earlier year; of any other year when there is none. */
const otherStart = (record: DailyRecord, test: BackTest, chance: Chance): number => {
  const before = Math.floor((test.issuedDay - record.startDay - SEASON_DAYS) / YEAR_DAYS)
  const after = Math.floor(
    (record.startDay + record.days - test.issuedDay - test.days - SEASON_DAYS) / YEAR_DAYS,
  )
  const years =
    before > 0
      ? -(1 + Math.floor(chance.uniform() * before))
      : after > 0
        ? 1 + Math.floor(chance.uniform() * after)
        : 0
  const jitter = Math.round((2 * chance.uniform() - 1) * SEASON_DAYS)
  const start = test.issuedDay + Math.round(years * YEAR_DAYS) + jitter
  return Math.max(record.startDay, Math.min(record.startDay + record.days - test.days, start))
}

/** One weather gone wrong: from some day on another year's, and until then too early or late, too much or little, too warm or cold. */
const astray = (
  weather: WeatherHours,
  other: () => WeatherHours,
  skill: Skill,
  chance: Chance,
): WeatherHours => {
  const days = Math.round(weather.hours / 24)
  let lostFrom = days
  for (let d = 0; d < days; d++)
    if (chance.uniform() < Math.min(0.6, skill.lost + skill.lostMorePerDay * d)) {
      lostFrom = d
      break
    }
  const replaced = lostFrom < days ? other() : weather
  const [late, amount, warm, windy] = [chance.normal(), chance.normal(), chance.normal(), chance.normal()]
  const source = (h: number): WeatherHours => (h >= lostFrom * 24 ? replaced : weather)
  const shift = (h: number): number => Math.round(late * (skill.shiftH + (skill.shiftMorePerDayH * h) / 24))
  const column = (read: (from: WeatherHours, h: number) => number) =>
    Float64Array.from({ length: weather.hours }, (_, h) => read(source(h), h))
  const errorC = (h: number): number => warm * (skill.errorC + (skill.errorMorePerDayC * h) / 24)
  const more = Math.exp(amount * skill.amount)
  const gale = Math.exp(windy * skill.wind)
  const within = (h: number): number => Math.max(0, Math.min(weather.hours - 1, h))
  return {
    ...weather,
    rainMm: column((from, h) => (from.rainMm[within(h - shift(h))] ?? NaN) * more),
    temperatureC: column((from, h) => (from.temperatureC[h] ?? NaN) + errorC(h)),
    dewPointC: column((from, h) => (from.dewPointC[h] ?? NaN) + errorC(h)),
    windMPerS: column((from, h) => (from.windMPerS[h] ?? NaN) * gale),
    gustMPerS: column((from, h) => (from.gustMPerS[h] ?? NaN) * gale),
    radiationWPerM2: column((from, h) => from.radiationWPerM2[h] ?? NaN),
  }
}

/**
 * An ensemble forecast of realistic skill, made from a true record, for trials of the planner that must not see the future. The truth goes astray once to make the
 * forecast's centre, and the centre goes astray again for each member: so the truth lies among the members as one of them would. Weather from earlier years
 * takes the place of what is lost. Member 0 is the plain forecast.
 */
export const forecastOfTruth = (record: DailyRecord, station: Station, test: BackTest): WeatherHours => {
  const { issuedDay, days, members, seed, truthSeed, skill = USUAL_SKILL } = test
  const truth = hoursOfDays(record, station, { fromDay: issuedDay, days, seed: truthSeed })
  const strayed = (weather: WeatherHours, part: number): WeatherHours => {
    const chance = chanceOf(seedOfPart(seed, part))
    const other = (): WeatherHours => ({
      ...hoursOfDays(record, station, {
        fromDay: otherStart(record, test, chance),
        days,
        seed: seedOfPart(seed, part + 1_000_000),
      }),
      startMs: truth.startMs,
    })
    return astray(weather, other, skill, chance)
  }
  const centre = strayed(truth, issuedDay)
  const all = Array.from({ length: members }, (_, m) => strayed(centre, seedOfPart(issuedDay, m)))
  const join = (read: (one: WeatherHours) => Float64Array): Float64Array => {
    const whole = new Float64Array(members * truth.hours)
    all.forEach((one, m) => whole.set(read(one), m * truth.hours))
    return whole
  }
  return {
    startMs: truth.startMs,
    hours: truth.hours,
    members,
    rainMm: join((one) => one.rainMm),
    temperatureC: join((one) => one.temperatureC),
    dewPointC: join((one) => one.dewPointC.map((dew, h) => Math.min(dew, one.temperatureC[h] ?? dew))),
    windMPerS: join((one) => one.windMPerS),
    gustMPerS: join((one) => one.gustMPerS),
    radiationWPerM2: join((one) => one.radiationWPerM2),
  }
}
