import type { Operation } from '../planning/operations.ts'
import { DAY_MS } from '../time/calendar.ts'
import { sunDay, type SunEvent } from './daylight.ts'
import type { Span } from './drying.ts'
import type { Place } from './energy.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'
import { surfaceHours, type SurfaceHours } from './surface.ts'
import { DEFAULT_WEATHER_SETTINGS, type WeatherSettings } from './weather-settings.ts'
import { bitOf, maskOf, STOPS, STOPS_OF, type Stop } from './workable-rules.ts'

/** What is asked: the hours of one member at one place. */
export type WorkableQuestion = {
  readonly weather: WeatherHours
  /** Member of an ensemble, from 0. Default 0. */
  readonly member?: number
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly altitudeM?: number
  readonly settings?: WeatherSettings
  readonly operations: readonly Operation[]
  /** What stops each operation; default the table of `workable-rules`. */
  readonly stopsOf?: Readonly<Record<Operation, readonly Stop[]>>
  /** Hours wanted; default those of the weather. Hours outside the forecast count as dry, and carry the caution `noForecast`. */
  readonly span?: Span
}

/** One operation's hours. */
export type OperationHours = {
  /** 1 where the hour can be worked. */
  readonly workable: Uint8Array
  /** Stops and cautions of the hour as a mask: read with `reasonsOf`. */
  readonly reasons: Uint16Array
}

/** The answer, hour by hour from `startMs`. */
export type WorkableHours = {
  readonly startMs: number
  readonly hours: number
  readonly byOperation: ReadonlyMap<Operation, OperationHours>
  /** Hours without a rain figure, in the forecast or past it, that were taken as dry. */
  readonly hoursAssumedDry: number
  /** The state of leaf and ground over the hours of the weather (not of the span). */
  readonly surface: SurfaceHours
}

/** Replaceable: the planner calls whatever has this shape. */
export type WorkableFunction = (question: WorkableQuestion) => WorkableHours

const ALL_STOPS = maskOf(STOPS)

const instant = (event: SunEvent, whenAlways: number): number =>
  event.atMs ?? (event.because === 'sunStaysUp' || event.because === 'twilightAllNight' ? whenAlways : NaN)

/** Light of each hour: `dark` when no minute of it lies between civil dawn and sunset, `partlyDark` when some do not. */
const lightMask = (span: Span, place: Place): Uint16Array => {
  const mask = new Uint16Array(span.hours).fill(bitOf('dark'))
  const endMs = span.startMs + span.hours * HOUR_MS
  for (let day = Math.floor(span.startMs / DAY_MS) - 1; day <= Math.floor(endMs / DAY_MS) + 1; day++) {
    const sun = sunDay(day, place.latitudeDeg, place.longitudeDeg, place.longitudeDeg * 240_000)
    const from = (instant(sun.civilDawn, sun.noonMs - DAY_MS / 2) - span.startMs) / HOUR_MS
    const to = (instant(sun.sunset, sun.noonMs + DAY_MS / 2) - span.startMs) / HOUR_MS
    for (let h = Math.max(0, Math.floor(from)); h < Math.min(span.hours, Math.ceil(to)); h++)
      mask[h] = h < from || h + 1 > to ? bitOf('partlyDark') : 0
  }
  return mask
}

/** Stops and cautions that the sky and the ground give, whatever the operation. */
const weatherMask = (
  weather: WeatherHours,
  member: number,
  surface: SurfaceHours,
  settings: WeatherSettings,
): Uint16Array => {
  const [rain, wet, dew, frost, wind, heat, soft, gusty, wilt, none] = [
    bitOf('rain'),
    bitOf('wetGround'),
    bitOf('dew'),
    bitOf('frost'),
    bitOf('wind'),
    bitOf('heat'),
    bitOf('softGround'),
    bitOf('gusty'),
    bitOf('wilt'),
    bitOf('noForecast'),
  ] as const
  return Uint16Array.from({ length: weather.hours }, (_, h) => {
    const k = member * weather.hours + h
    const [mm, meanWind, gust] = [
      weather.rainMm[k] ?? NaN,
      weather.windMPerS[k] ?? NaN,
      weather.gustMPerS[k] ?? NaN,
    ]
    const airC = weather.temperatureC[k] ?? NaN
    const before = (column: Float64Array): number => (h === 0 ? 0 : (column[h - 1] ?? 0))
    // The leaf must be dry for the whole hour: it counts as wet when it began the hour wet and has not dried by its middle.
    const wetNow = (column: Float64Array): boolean =>
      (before(column) + (column[h] ?? 0)) / 2 > settings.dryLeafMm
    let mask = 0
    if (mm >= settings.rainStopMmPerH) mask |= rain
    if (wetNow(surface.rainOnLeafMm)) mask |= wet
    if (surface.eveningDew[h] === 1 || wetNow(surface.dewOnLeafMm)) mask |= dew
    if (surface.frost[h] === 1) mask |= frost
    if (meanWind >= settings.spinnerWindStopMPerS || gust >= settings.spinnerGustStopMPerS) mask |= wind
    else if (meanWind >= settings.spinnerWindCautionMPerS) mask |= gusty
    if (airC >= settings.heatStopC) mask |= heat
    if (airC >= settings.heatCautionC || (surface.energy.etMm[h] ?? 0) >= settings.wiltMmPerH) mask |= wilt
    if ((surface.toDrainMm[h] ?? 0) >= settings.softGroundMm) mask |= soft
    return Number.isNaN(mm) ? mask | none : mask
  })
}

/** Cautions that an operation need not hear: wind only matters to what is thrown, wilting to what opens or dries a green. */
const cautionsOf = (stops: readonly Stop[]): number =>
  maskOf([
    'noForecast',
    ...(stops.includes('dark') ? (['partlyDark'] as const) : []),
    ...(stops.includes('wind') ? (['gusty'] as const) : []),
    ...(stops.includes('heat') ? (['wilt'] as const) : []),
  ])

/**
 * Which hours each operation can be worked, and why not. An hour with any light counts as light and carries `partlyDark`; the planner ends the day at
 * sunset to the minute. Leaf, frost and ground are followed from the first hour of the weather, so a forecast should begin the evening before.
 */
export const workableHours: WorkableFunction = (question) => {
  const { weather, member = 0, settings = DEFAULT_WEATHER_SETTINGS, stopsOf = STOPS_OF } = question
  const { latitudeDeg, longitudeDeg, altitudeM = 0, span = weather } = question
  const place = { latitudeDeg, longitudeDeg, altitudeM }
  const surface = surfaceHours(weather, member, place, settings)
  const sky = weatherMask(weather, member, surface, settings)
  const shift = Math.round((span.startMs - weather.startMs) / HOUR_MS)
  const none = bitOf('noForecast')
  const masks = lightMask(span, place).map((light, h) => light | (sky[h + shift] ?? none))
  const byOperation = new Map(
    question.operations.map((operation): [Operation, OperationHours] => {
      const stops = stopsOf[operation]
      const heard = maskOf(stops) | cautionsOf(stops)
      const reasons = masks.map((mask) => mask & heard)
      return [
        operation,
        { reasons, workable: Uint8Array.from(reasons, (mask) => ((mask & ALL_STOPS) === 0 ? 1 : 0)) },
      ]
    }),
  )
  const hoursAssumedDry = masks.reduce((n, mask) => n + ((mask & none) === 0 ? 0 : 1), 0)
  return { startMs: span.startMs, hours: span.hours, byOperation, hoursAssumedDry, surface }
}
