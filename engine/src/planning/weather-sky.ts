import { ok } from '../result.ts'
import { dryingCurve, dryingNeedMm } from '../weather/drying.ts'
import { HOUR_MS, type WeatherHours } from '../weather/hours.ts'
import { weatherSettings } from '../weather/weather-settings.ts'
import { workableHours } from '../weather/workable.ts'
import { STOPS_OF } from '../weather/workable-rules.ts'
import type { DryNeed } from './green-work.ts'
import { OPERATIONS } from './operations.ts'
import type { Span } from './problem.ts'
import type { ReadSky, SkyWanted } from './sky.ts'
import { spansOfHours } from './spans.ts'

const MINUTES_PER_HOUR = 60

/** Weather of one hour in which nothing is known: every later hour then falls back on the climate. */
const nothingKnown = (startMs: number): WeatherHours => {
  const none = (): Float64Array => new Float64Array([NaN])
  return {
    startMs,
    hours: 1,
    members: 1,
    rainMm: none(),
    temperatureC: none(),
    dewPointC: none(),
    windMPerS: none(),
    gustMPerS: none(),
    radiationWPerM2: none(),
  }
}

/** Hours with rain at or over the club's stop, as minutes from the origin. An hour counts whole. */
const rainSpans = (weather: WeatherHours, wanted: SkyWanted, stopMmPerH: number): readonly Span[] => {
  const first = Math.round((weather.startMs - wanted.originMs) / HOUR_MS)
  const flags = Uint8Array.from({ length: Math.ceil(wanted.horizonMin / MINUTES_PER_HOUR) }, (_, hour) =>
    (weather.rainMm[hour - first] ?? 0) >= stopMmPerH ? 1 : 0,
  )
  return spansOfHours(flags)
}

/** The sky as the weather room reads it: one forecast (its first member), the club's thresholds, the course's place. */
export const weatherSky: ReadSky = (wanted) => {
  const { course, originMs, horizonMin } = wanted
  const settings = weatherSettings({
    ...course.settings.weather,
    rainStopMmPerH: course.settings.rainStopMmPerH,
  })
  if (!settings.ok) return settings
  const weather = wanted.weather ?? nothingKnown(originMs)
  const [longitudeDeg, latitudeDeg] = course.greens[0]?.at ?? [0, 0]
  const place = { latitudeDeg, longitudeDeg, altitudeM: course.altitudeM }
  const span = { startMs: originMs, hours: Math.ceil(horizonMin / MINUTES_PER_HOUR) }
  // Wind only matters to sand that is thrown.
  const throws = course.machines.some((machine) => machine.kind === 'dresser' && machine.spinner === true)
  const stopsOf = throws ? STOPS_OF : { ...STOPS_OF, dress: STOPS_OF.dress.filter((stop) => stop !== 'wind') }
  const answer = workableHours({
    weather,
    ...place,
    settings: settings.value,
    operations: OPERATIONS,
    stopsOf,
    span,
  })
  const endsMin = Math.round((weather.startMs - originMs) / 60_000) + weather.hours * MINUTES_PER_HOUR
  return ok({
    rain: rainSpans(weather, wanted, course.settings.rainStopMmPerH),
    workable: new Map(
      [...answer.byOperation].map(([operation, hours]) => [operation, spansOfHours(hours.workable)]),
    ),
    driedMm: dryingCurve(weather, place, { settings: settings.value, span }),
    forecastEndsMin: wanted.weather !== null && endsMin < horizonMin ? Math.max(0, endsMin) : null,
  })
}

/** Water that must leave the sand of a green before it is dragged in. */
export const weatherDryNeed: DryNeed = (sand, lyingMm) =>
  dryingNeedMm({
    sandMm: lyingMm,
    kind: sand.kind,
    moisturePercent: sand.moisturePercent,
    bulkDensityKgPerM3: sand.bulkDensityKgPerM3,
  })
