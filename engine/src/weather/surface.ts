import { hourEnergy, type HourEnergy, type Place } from './energy.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'
import { sunDay } from './daylight.ts'
import { DAY_MS } from '../time/calendar.ts'
import type { WeatherSettings } from './weather-settings.ts'

/** How wet, cold and soft the green is in each hour. Booleans as 0 and 1. */
export type SurfaceHours = {
  /** Rain still on the leaf at the end of the hour, mm. */
  readonly rainOnLeafMm: Float64Array
  /** Dew on the leaf at the end of the hour, mm. */
  readonly dewOnLeafMm: Float64Array
  /** Evening damp before a dewy night. */
  readonly eveningDew: Uint8Array
  readonly frost: Uint8Array
  /** Water still to drain from the ground, mm. */
  readonly toDrainMm: Float64Array
  readonly energy: HourEnergy
}

/** Minutes either side of sunset in which dew is looked for. */
const DEW_FROM_MIN = -60
const DEW_TO_MIN = 300

const hourAt = (weather: WeatherHours, ms: number): number => (ms - weather.startMs) / HOUR_MS

/**
 * Marks the hours that lie after (sunset less the lead) on the eve of a dewy night. An hour counts when its middle does. Sand begins to clog and
 * leaves to stick before any drop can be seen, hence a lead set by practice rather than by physics; whether the night is dewy is physics.
 */
const markEvenings = (
  weather: WeatherHours,
  place: Place,
  dewMm: Float64Array,
  settings: WeatherSettings,
): Uint8Array => {
  const evening = new Uint8Array(weather.hours)
  const firstDay = Math.floor(weather.startMs / DAY_MS) - 1
  const lastDay = Math.floor((weather.startMs + weather.hours * HOUR_MS) / DAY_MS) + 1
  for (let day = firstDay; day <= lastDay; day++) {
    const sunset = sunDay(day, place.latitudeDeg, place.longitudeDeg, place.longitudeDeg * 240_000).sunset
      .atMs
    if (sunset === null) continue
    const from = Math.max(0, Math.round(hourAt(weather, sunset + DEW_FROM_MIN * 60_000)))
    const to = Math.min(weather.hours, Math.round(hourAt(weather, sunset + DEW_TO_MIN * 60_000)))
    let dew = 0
    for (let h = from; h < to; h++) dew += dewMm[h] ?? 0
    if (dew < settings.dewyNightMm) continue
    const start = hourAt(weather, sunset - settings.eveningDewLeadMin * 60_000)
    for (let h = Math.max(0, Math.round(start)); h < Math.min(weather.hours, hourAt(weather, sunset)); h++)
      evening[h] = 1
  }
  return evening
}

/** Dew that falls in each hour, mm: what the wet-leaf equation gives below nought, and none where rain or the temperature is unknown. */
const dewFallOf = (wetLeafMm: Float64Array): Float64Array =>
  wetLeafMm.map((mm) => (Number.isNaN(mm) ? 0 : Math.max(0, -mm)))

/**
 * Follows water on the leaf, frost and water in the ground through the hours of one member. The leaf takes up rain and dew to what it holds and
 * dries at the rate of a wet leaf, rain first; without temperatures it dries at the season's reference evapotranspiration and takes no dew.
 * Frost begins when the surface is at `frostSurfaceC` and goes when it is over `thawedSurfaceC`. Hours without a rain figure count as dry.
 */
export const surfaceHours = (
  weather: WeatherHours,
  member: number,
  place: Place,
  settings: WeatherSettings,
): SurfaceHours => {
  const energy = hourEnergy(weather, member, place, settings)
  const dewFall = dewFallOf(energy.wetLeafMm)
  const made = () => new Float64Array(weather.hours)
  const [rainOnLeafMm, dewOnLeafMm, toDrainMm] = [made(), made(), made()]
  const frost = new Uint8Array(weather.hours)
  let [rainOn, dewOn, toDrain, frozen] = [0, 0, 0, false]
  for (let h = 0; h < weather.hours; h++) {
    const rain = weather.rainMm[member * weather.hours + h] ?? NaN
    const fallen = Number.isNaN(rain) ? 0 : rain
    const wetLeaf = energy.wetLeafMm[h] ?? NaN
    const dries =
      fallen >= settings.rainStopMmPerH
        ? 0
        : Math.max(0, Number.isNaN(wetLeaf) ? (energy.etMm[h] ?? 0) : wetLeaf)
    const wetted = Math.min(settings.leafHoldsMm, rainOn + fallen)
    rainOn = Math.max(0, wetted - dries)
    const left = Math.max(0, dries - wetted)
    dewOn = Math.max(0, Math.min(settings.dewHoldsMm, dewOn + (dewFall[h] ?? 0)) - left)
    toDrain = Math.max(0, toDrain + fallen - settings.groundDrainsMmPerH)
    const surface = energy.surfaceC[h] ?? NaN
    if (surface <= settings.frostSurfaceC) frozen = true
    else if (surface > settings.thawedSurfaceC || Number.isNaN(surface)) frozen = false
    rainOnLeafMm[h] = rainOn
    dewOnLeafMm[h] = dewOn
    toDrainMm[h] = toDrain
    frost[h] = frozen ? 1 : 0
  }
  return {
    rainOnLeafMm,
    dewOnLeafMm,
    eveningDew: markEvenings(weather, place, dewFall, settings),
    frost,
    toDrainMm,
    energy,
  }
}
