import { DAY_MS, dateOfDay, dayOfYear } from '../time/calendar.ts'
import { chanceOf, seedOfPart, type Chance } from './chance.ts'
import type { DailyRecord, Station } from './daily-record.ts'
import { extraterrestrialHours } from './energy.ts'
import type { WeatherHours } from './hours.ts'
import { windAt2M } from './penman.ts'
import {
  clearSky,
  dayLengthHours,
  extraterrestrialDayMJ,
  MJ_PER_WH,
  radiationFromRangeMJ,
  radiationFromSunshineMJ,
} from './radiation.ts'
import { dewPointFromHumidityC } from './vapour.ts'

const HOURS = 24
/** The day's maximum comes this long after solar noon, h (common practice, no source). */
const WARMEST_AFTER_NOON_H = 2.5
/** Wind swings this far about its mean, and is strongest with the warmth (common practice, no source). */
const WIND_SWING = 0.25
/** Highest gust of an hour over its mean wind (open country, from memory 1.5 to 1.7). */
const GUST_FACTOR = 1.6
/** Hours with rain on a day of `x` mm: `1 + 2.2 (sqrt(1 + x) - 1)` on average, at most 20 (our assumption: 2 hours at 1 mm, 4 at 5, 9 at 20). */
const wetHoursMean = (rainMm: number): number => Math.min(20, 1 + 2.2 * (Math.sqrt(1 + rainMm) - 1))
/** Chance that the day's rain comes in two spells rather than one (our assumption). */
const TWO_SPELLS = 0.4
/** Least rain written for one hour, mm. */
const GAUGE_MM = 0.1

/** Adds a spell of rain to the hours of a day, `mm` spread by exponential weights. */
const spell = (hours: number[], mm: number, length: number, chance: Chance): void => {
  const start = Math.floor(chance.uniform() * (HOURS - length + 1))
  const weights = Array.from({ length }, () => chance.exponential() + 0.05)
  const sum = weights.reduce((a, b) => a + b, 0)
  weights.forEach((weight, k) => {
    hours[start + k] = (hours[start + k] ?? 0) + (mm * weight) / sum
  })
}

/** The hours of a day's rain: one or two spells at any time of day, their sum exact, no hour under a tenth of a millimetre. */
export const rainHours = (rainMm: number, chance: Chance): readonly number[] => {
  const hours = Array.from({ length: HOURS }, () => 0)
  if (!(rainMm > 0)) return hours.map(() => rainMm)
  const wanted = Math.round(wetHoursMean(rainMm) * (0.5 + chance.uniform()))
  const total = Math.max(1, Math.min(HOURS, wanted, Math.floor(rainMm / GAUGE_MM)))
  const first =
    total >= 2 && chance.uniform() < TWO_SPELLS ? Math.max(1, Math.round(total * chance.uniform())) : total
  spell(hours, (rainMm * first) / total, first, chance)
  if (first < total) spell(hours, (rainMm * (total - first)) / total, total - first, chance)
  const kept = hours.map((mm) => (mm < GAUGE_MM / 2 ? 0 : mm))
  const left = kept.reduce((a, b) => a + b, 0)
  return left > 0 ? kept.map((mm) => (mm * rainMm) / left) : hours
}

type Turn = { readonly atHour: number; readonly c: number }

/** Turning points of the temperature, hours from the start of the record: each day's minimum at sunrise and its maximum in the afternoon. */
const turnsOf = (record: DailyRecord, from: number, days: number, station: Station): Turn[] =>
  Array.from({ length: days + 2 }, (_, k) => k - 1).flatMap((d): Turn[] => {
    const i = Math.max(0, Math.min(record.days - 1, from + d))
    const noon = d * HOURS + 12 - station.longitudeDeg / 15
    const half = dayLengthHours(dayOfYear(dateOfDay(record.startDay + from + d)), station.latitudeDeg) / 2
    return [
      { atHour: noon - Math.max(1, half), c: record.columns.minC[i] ?? NaN },
      { atHour: noon + WARMEST_AFTER_NOON_H, c: record.columns.maxC[i] ?? NaN },
    ]
  })

/** Half a cosine from one turning point to the next. */
const between = (turns: readonly Turn[], hours: number): Float64Array => {
  let k = 0
  return Float64Array.from({ length: hours }, (_, h) => {
    const t = h + 0.5
    while ((turns[k + 1]?.atHour ?? Infinity) <= t) k++
    const [a, b] = [turns[k], turns[k + 1]]
    if (a === undefined || b === undefined) return NaN
    return a.c + ((b.c - a.c) * (1 - Math.cos((Math.PI * (t - a.atHour)) / (b.atHour - a.atHour)))) / 2
  })
}

/** Solar radiation of a day, MJ/m2: measured, from sunshine, or from the range of temperature. */
const solarOf = (record: DailyRecord, i: number, station: Station): number => {
  const j = dayOfYear(dateOfDay(record.startDay + i))
  const sky = extraterrestrialDayMJ(j, station.latitudeDeg)
  const { radiationMJPerM2, sunshineHours, minC, maxC } = record.columns
  const measured = radiationMJPerM2[i] ?? NaN
  if (!Number.isNaN(measured)) return measured
  const sun = sunshineHours[i] ?? NaN
  if (!Number.isNaN(sun)) return radiationFromSunshineMJ(sun, dayLengthHours(j, station.latitudeDeg), sky)
  return Math.min(
    clearSky(sky, station.altitudeM),
    radiationFromRangeMJ((maxC[i] ?? NaN) - (minC[i] ?? NaN), sky, 0.16),
  )
}

/** Dew point of a day, C: from humidity, else the minimum (FAO-56 equation 48). */
const dewOf = (record: DailyRecord, i: number): number => {
  const [low, high] = [record.columns.minC[i] ?? NaN, record.columns.maxC[i] ?? NaN]
  const humidity = record.columns.humidityPercent[i] ?? NaN
  return Number.isNaN(humidity) ? low : dewPointFromHumidityC((low + high) / 2, humidity)
}

/**
 * Hours of weather from daily figures, which are all that most clubs have. Day `d` of the answer runs from 00:00 to 24:00 UTC. Daily rain and radiation are kept to the
 * last digit; temperature swings between the day's extremes; wind has the day's mean. When in the day it rained is drawn: the same seed and day always give
 * the same hours, whatever stretch is asked. Days without a figure have hours without one. Times of rain rest on no record, so trust how much and how often, not when.
 */
export const hoursOfDays = (
  record: DailyRecord,
  station: Station,
  wanted: { readonly fromDay: number; readonly days: number; readonly seed: number },
): WeatherHours => {
  const { fromDay, days, seed } = wanted
  const from = fromDay - record.startDay
  const hours = days * HOURS
  const startMs = fromDay * DAY_MS
  const sky = extraterrestrialHours(startMs, hours, station)
  const temperatureC = between(turnsOf(record, from, days, station), hours)
  const made = (): Float64Array => new Float64Array(hours).fill(NaN)
  const [rainMm, dewPointC, windMPerS, radiationWPerM2] = [made(), made(), made(), made()]
  const to10M = station.windHeightM === 10 ? 1 : windAt2M(1, station.windHeightM) / windAt2M(1, 10)
  for (let d = 0; d < days; d++) {
    const i = from + d
    rainMm.set(rainHours(record.columns.rainMm[i] ?? NaN, chanceOf(seedOfPart(seed, fromDay + d))), d * HOURS)
    const skyMJ = sky.subarray(d * HOURS, (d + 1) * HOURS).reduce((a, b) => a + b, 0)
    const clearness = skyMJ > 0 ? solarOf(record, i, station) / skyMJ : 0
    const [dew, wind] = [dewOf(record, i), (record.columns.windMPerS[i] ?? NaN) * to10M]
    for (let k = 0; k < HOURS; k++) {
      const h = d * HOURS + k
      const solarHour = (h + 0.5 + station.longitudeDeg / 15) % HOURS
      radiationWPerM2[h] = (clearness * (sky[h] ?? 0)) / MJ_PER_WH
      windMPerS[h] =
        wind * (1 + WIND_SWING * Math.cos((Math.PI * (solarHour - 12 - WARMEST_AFTER_NOON_H)) / 12))
      dewPointC[h] = Math.min(dew, temperatureC[h] ?? NaN)
    }
  }
  return {
    startMs,
    hours,
    members: 1,
    rainMm,
    temperatureC,
    dewPointC,
    windMPerS,
    gustMPerS: windMPerS.map((mean) => mean * GUST_FACTOR),
    radiationWPerM2,
  }
}
