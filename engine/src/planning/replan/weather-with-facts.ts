import { HOUR_MS, type WeatherHours } from '../../weather/hours.ts'
import { unknownHours } from '../../weather/hand-typed.ts'
import { parseInstant } from '../check/instant.ts'
import type { DayFact } from './facts.ts'

/** Rain in an hour when only 'rain' is said, mm: steady rain (common practice, no source). */
const PLAIN_RAIN_MM = 1

/** The same hours with unknown ones put on both ends, so that they reach from one moment to another. */
const reaching = (weather: WeatherHours, fromMs: number, untilMs: number): WeatherHours => {
  const before = Math.max(0, Math.ceil((weather.startMs - fromMs) / HOUR_MS))
  const after = Math.max(0, Math.ceil((untilMs - weather.startMs) / HOUR_MS - weather.hours))
  if (before === 0 && after === 0) return weather
  const hours = before + weather.hours + after
  const widened = (column: Float64Array): Float64Array => {
    const wide = new Float64Array(hours * weather.members).fill(NaN)
    for (let member = 0; member < weather.members; member++)
      wide.set(column.subarray(member * weather.hours, (member + 1) * weather.hours), member * hours + before)
    return wide
  }
  return {
    startMs: weather.startMs - before * HOUR_MS,
    hours,
    members: weather.members,
    rainMm: widened(weather.rainMm),
    temperatureC: widened(weather.temperatureC),
    dewPointC: widened(weather.dewPointC),
    windMPerS: widened(weather.windMPerS),
    gustMPerS: widened(weather.gustMPerS),
    radiationWPerM2: widened(weather.radiationWPerM2),
  }
}

/** Whether any of the facts is about the weather. */
export const changesWeather = (facts: readonly DayFact[]): boolean =>
  facts.some(({ kind }) => kind === 'rain' || kind === 'dry')

/**
 * The hours with the rain that was told, and without the rain that does not come; in the order of the facts, later ones stand.
 * An hour that is touched counts whole. Where there was no forecast, all else stays unknown.
 */
export const weatherWithFacts = (
  weather: WeatherHours | null,
  facts: readonly DayFact[],
  originMs: number,
): WeatherHours | null => {
  let told = weather
  for (const fact of facts) {
    if (fact.kind !== 'rain' && fact.kind !== 'dry') continue
    const [fromMs, untilMs] = [parseInstant(fact.from), parseInstant(fact.until)]
    const wide = reaching(told ?? unknownHours(originMs, 1), fromMs, untilMs)
    const mm = fact.kind === 'dry' ? 0 : (fact.mmPerH ?? PLAIN_RAIN_MM)
    const from = (fromMs - wide.startMs) / HOUR_MS
    const until = (untilMs - wide.startMs) / HOUR_MS
    told = {
      ...wide,
      rainMm: wide.rainMm.map((was, row) => {
        const hour = row % wide.hours
        return hour + 1 > from && hour < until ? mm : was
      }),
    }
  }
  return told
}
