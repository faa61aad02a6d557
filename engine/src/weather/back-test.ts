import { chanceOf, seedOfPart, type Chance } from './chance.ts'
import type { DailyRecord, Station } from './daily-record.ts'
import { hoursOfDays } from './hours-of-days.ts'
import type { WeatherHours } from './hours.ts'
import { joinMembers, memberOf } from './members.ts'

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

/** Dew point never over the air's temperature, whatever the errors of both. */
const withinAir = (weather: WeatherHours): WeatherHours => ({
  ...weather,
  dewPointC: weather.dewPointC.map((dew, h) => Math.min(dew, weather.temperatureC[h] ?? dew)),
})

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
    return withinAir(astray(weather, other, skill, chance))
  }
  const centre = strayed(truth, issuedDay)
  return joinMembers(Array.from({ length: members }, (_, m) => strayed(centre, seedOfPart(issuedDay, m))))
}

/** How one forecast is spread into members. */
export type Spread = {
  readonly members: number
  readonly seed: number
  readonly skill?: Skill
  /** Other weather of the same hours and season, by a seed, for members that lose the track; default: the forecast's own days in another order. */
  readonly otherWeather?: (seed: number) => WeatherHours
}

/** Each day of a forecast replaced by one of its days, drawn at random. */
const daysReordered = (weather: WeatherHours, chance: Chance): WeatherHours => {
  const days = Math.max(1, Math.floor(weather.hours / 24))
  const from = Array.from({ length: days }, () => Math.floor(chance.uniform() * days))
  const column = (values: Float64Array) =>
    values.map((value, h) => values[(from[Math.floor(h / 24)] ?? 0) * 24 + (h % 24)] ?? value)
  return {
    ...weather,
    rainMm: column(weather.rainMm),
    temperatureC: column(weather.temperatureC),
    dewPointC: column(weather.dewPointC),
    windMPerS: column(weather.windMPerS),
    gustMPerS: column(weather.gustMPerS),
    radiationWPerM2: column(weather.radiationWPerM2),
  }
}

/**
 * What may come of one plain forecast (the first member of what is given): members scattered round it by the usual errors, which grow with the lead time.
 * For clubs whose source gives no ensemble. The forecast itself is not among the members.
 */
export const spreadForecast = (weather: WeatherHours, spread: Spread): WeatherHours => {
  const plain = memberOf(weather, 0)
  const { skill = USUAL_SKILL, otherWeather } = spread
  return joinMembers(
    Array.from({ length: spread.members }, (_, m) => {
      const chance = chanceOf(seedOfPart(spread.seed, m))
      const other = (): WeatherHours =>
        otherWeather === undefined
          ? daysReordered(plain, chance)
          : otherWeather(seedOfPart(spread.seed, m + 1_000_000))
      return withinAir(astray(plain, other, skill, chance))
    }),
  )
}
