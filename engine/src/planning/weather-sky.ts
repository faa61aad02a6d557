import { ok } from '../result.ts'
import { dryingCurve, dryingNeedMm } from '../weather/drying.ts'
import { HOUR_MS, type WeatherHours } from '../weather/hours.ts'
import { weatherOfCourse } from '../weather/course-weather.ts'
import { unknownHours } from '../weather/hand-typed.ts'
import { workableHours } from '../weather/workable.ts'
import type { DryNeed } from './green-work.ts'
import { OPERATIONS } from './operations.ts'
import type { Span } from './problem.ts'
import type { ReadSky, SkyWanted } from './sky.ts'
import { spansOfHours } from './spans.ts'

const MINUTES_PER_HOUR = 60

/** Hours with rain at or over the club's stop, as minutes from the origin. An hour counts whole. */
const rainSpans = (weather: WeatherHours, wanted: SkyWanted, stopMmPerH: number): readonly Span[] => {
  const first = Math.round((weather.startMs - wanted.originMs) / HOUR_MS)
  const flags = Uint8Array.from({ length: Math.ceil(wanted.horizonMin / MINUTES_PER_HOUR) }, (_, hour) =>
    (weather.rainMm[hour - first] ?? 0) >= stopMmPerH ? 1 : 0,
  )
  return spansOfHours(flags)
}

/** The sky as the weather room reads it: one forecast (its first member; `memberOf` gives any other), the club's thresholds, the course's place. */
export const weatherSky: ReadSky = (wanted) => {
  const { course, originMs, horizonMin } = wanted
  const judged = weatherOfCourse(course)
  if (!judged.ok) return judged
  const weather = wanted.weather ?? unknownHours(originMs, 1)
  const span = { startMs: originMs, hours: Math.ceil(horizonMin / MINUTES_PER_HOUR) }
  const answer = workableHours({ weather, ...judged.value, operations: OPERATIONS, span })
  const endsMin = Math.round((weather.startMs - originMs) / 60_000) + weather.hours * MINUTES_PER_HOUR
  return ok({
    rain: rainSpans(weather, wanted, course.settings.rainStopMmPerH),
    workable: new Map(
      [...answer.byOperation].map(([operation, hours]) => [operation, spansOfHours(hours.workable)]),
    ),
    driedMm: dryingCurve(weather, judged.value, { settings: judged.value.settings, span }),
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
