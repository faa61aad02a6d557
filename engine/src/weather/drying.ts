import { extraterrestrialHours, hourEnergy, type HourEnergy, type Place } from './energy.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'
import { MM_PER_MJ } from './radiation.ts'
import { DEFAULT_WEATHER_SETTINGS, type WeatherSettings } from './weather-settings.ts'

/** Sand as it lies on a green after dressing. */
export type LyingSand = {
  /** Depth lying on the surface, mm; what fell into holes need not dry. */
  readonly sandMm: number
  readonly kind: 'damp' | 'kilnDried'
  /** Water by mass of dry sand, %. */
  readonly moisturePercent: number
  /** Dry bulk density, kg/m3. */
  readonly bulkDensityKgPerM3: number
}

/** Water that must leave the sand before it can be dragged in, mm: depth times density times moisture. None for kiln-dried sand. */
export const dryingNeedMm = (sand: LyingSand): number =>
  sand.kind === 'kilnDried'
    ? 0
    : (sand.sandMm * (sand.bulkDensityKgPerM3 / 1000) * sand.moisturePercent) / 100

/** Which hours a curve covers, whatever the forecast reaches. */
export type Span = { readonly startMs: number; readonly hours: number }

type DryingOptions = {
  readonly member?: number
  readonly settings?: WeatherSettings
  /** Hours wanted; default those of the weather. Hours outside the forecast dry as the climate has it. */
  readonly span?: Span
  /** From `hourEnergy`, when the caller has it already. */
  readonly energy?: HourEnergy
}

/**
 * Water gone for good from damp sand since the first hour, mm, at every hour boundary (length hours + 1). Never falls; flat in hours with rain and
 * without sun. An hour dries `sandDryingShare` of the reference evapotranspiration, less what falls in it: drizzle, under the club's rain stop, is
 * allowed on lying sand and wets it again. What an hour's drizzle brings over what the hour dries, at most `sandHoldsMm`, must dry before the curve goes on
 * (so it is the running maximum of net drying since sunrise): sand laid at any minute of the day has lost `need` once the curve has risen by `need`.
 * Where the forecast has no temperature, and outside it, evapotranspiration is `climateEtShare` of the radiation above the atmosphere: the average for the
 * season and the time of day.
 */
export const dryingCurve = (
  weather: WeatherHours,
  place: Place,
  options: DryingOptions = {},
): Float64Array => {
  const { member = 0, settings = DEFAULT_WEATHER_SETTINGS, span = weather } = options
  const energy = options.energy ?? hourEnergy(weather, member, place, settings)
  const sky = extraterrestrialHours(span.startMs, span.hours, place)
  const shift = Math.round((span.startMs - weather.startMs) / HOUR_MS)
  const curve = new Float64Array(span.hours + 1)
  let owedMm = 0
  for (let h = 0; h < span.hours; h++) {
    const k = h + shift
    const known = k >= 0 && k < weather.hours
    const climate = settings.climateEtShare * MM_PER_MJ * (sky[h] ?? 0)
    const et = known ? (energy.etMm[k] ?? climate) : climate
    const fallen = known ? (weather.rainMm[member * weather.hours + k] ?? NaN) : 0
    const light = (sky[h] ?? 0) > 0
    // The night's drizzle is on the leaf too, which must be dry before sand is laid or dragged.
    if (!light) owedMm = 0
    const isRain = fallen >= settings.rainStopMmPerH
    const netMm = light && !isRain ? settings.sandDryingShare * et - (Number.isNaN(fallen) ? 0 : fallen) : 0
    curve[h + 1] = (curve[h] ?? 0) + Math.max(0, netMm - owedMm)
    owedMm = Math.min(settings.sandHoldsMm, Math.max(0, owedMm - netMm))
  }
  return curve
}

/**
 * The first whole minute by which sand laid at `startMin` (minutes from the start of the curve) has lost `needMm`; null when it does not within
 * the curve. The figure for an hour is spread evenly over its minutes.
 */
export const driedAtMin = (curve: Float64Array, startMin: number, needMm: number): number | null => {
  if (needMm <= 0) return startMin
  const hours = curve.length - 1
  let left = needMm
  for (let h = Math.floor(startMin / 60); h < hours; h++) {
    const from = Math.max(startMin, h * 60)
    const share = ((h + 1) * 60 - from) / 60
    const dries = ((curve[h + 1] ?? 0) - (curve[h] ?? 0)) * share
    if (dries >= left) return Math.min((h + 1) * 60, from + Math.ceil((left / dries) * share * 60 - 1e-9))
    left -= dries
  }
  return null
}
