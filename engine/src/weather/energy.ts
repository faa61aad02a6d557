import { DAY_MS, dateOfDay, dayOfYear } from '../time/calendar.ts'
import { HOUR_MS, type WeatherHours } from './hours.ts'
import { penmanHourMm, wetLeafHourMm, windAt2M, type PenmanInput } from './penman.ts'
import {
  clearSky,
  extraterrestrialHourMJ,
  hourAngleRad,
  MJ_PER_WH,
  MM_PER_MJ,
  netLongwaveHourMJ,
  netShortwave,
  radiationFromRangeMJ,
} from './radiation.ts'
import { saturationVapourPressureKPa } from './vapour.ts'
import type { WeatherSettings } from './weather-settings.ts'

/** Where the greens lie. Latitude north, longitude east positive; height above sea in m, 0 where not known. */
export type Place = {
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly altitudeM?: number
}

/** What the weather of each hour does to water, worked out from the columns; fall-backs of FAO-56 where a column is missing. */
export type HourEnergy = {
  /** Radiation above the atmosphere, MJ/m2 in the hour. */
  readonly extraterrestrialMJ: Float64Array
  /** Reference evapotranspiration, mm, never below 0. Climate where there is no temperature. */
  readonly etMm: Float64Array
  /** Evaporation from a wet leaf, mm; below 0 dew falls. NaN where there is no temperature. */
  readonly wetLeafMm: Float64Array
  /** Temperature of the grass surface, C. NaN where there is no temperature. */
  readonly surfaceC: Float64Array
}

/** Wind that FAO-56 takes at 2 m where none is known (page 63), m/s. */
export const DEFAULT_WIND_2M = 2
/** Least wind at 2 m, since air moves by itself over a warm surface (FAO-56 page 63), m/s. */
export const LEAST_WIND_2M = 0.5
/** Resistance of air over grass is 208 / u2 s/m (FAO-56 box 4). */
const AIR_RESISTANCE = 208
/** Heat that a cubic metre of air takes up per degree, J/m3/K: density 1.2 kg/m3 times 1013 J/kg/K. */
const AIR_HEAT = 1216
/** Most that sun warms the surface over the air, C. Only used to tell when frost has gone, so a rough bound will do (common practice, no source). */
const WARMER_MOST_C = 5
/** Solar over clear-sky radiation where no daylight hour tells it: middling cloud (our assumption). */
const UNKNOWN_CLEARNESS = 0.6
/** An hour's clearness is believed when the sun is this high: radiation above the atmosphere, MJ/m2 in the hour (about 15 degrees). */
const CLEARNESS_FROM_MJ = 1.2
/** kRs of FAO-56 equation 50 for inland places. */
const INLAND_KRS = 0.16

type Day = { readonly minC: number; readonly rangeC: number }

/** Coldest temperature and range of each solar day, for the fall-backs. */
const daysOf = (temperatureC: Float64Array, firstDayPart: number): Day[] => {
  const days: { minC: number; maxC: number }[] = []
  for (const [h, t] of temperatureC.entries()) {
    const d = Math.floor((h + firstDayPart) / 24)
    const day = (days[d] ??= { minC: NaN, maxC: NaN })
    if (!Number.isNaN(t)) {
      day.minC = Number.isNaN(day.minC) ? t : Math.min(day.minC, t)
      day.maxC = Number.isNaN(day.maxC) ? t : Math.max(day.maxC, t)
    }
  }
  return days.map(({ minC, maxC }) => ({ minC, rangeC: maxC - minC }))
}

/** Radiation above the atmosphere for every hour, MJ/m2. */
export const extraterrestrialHours = (startMs: number, hours: number, place: Place): Float64Array => {
  let day = NaN
  let j = 1
  return Float64Array.from({ length: hours }, (_, h) => {
    const middle = startMs + (h + 0.5) * HOUR_MS
    const today = Math.floor(middle / DAY_MS)
    if (today !== day) {
      day = today
      j = dayOfYear(dateOfDay(today))
    }
    const angle = hourAngleRad(j, (middle - today * DAY_MS) / HOUR_MS, place.longitudeDeg)
    return extraterrestrialHourMJ(j, place.latitudeDeg, angle)
  })
}

/** Solar over clear-sky radiation by hour; nights keep the evening's, as FAO-56 advises for hourly work. */
const clearnessOf = (
  solarMJ: Float64Array,
  clearMJ: Float64Array,
  extraterrestrialMJ: Float64Array,
): Float64Array => {
  const seen = (h: number): boolean =>
    (extraterrestrialMJ[h] ?? 0) >= CLEARNESS_FROM_MJ && !Number.isNaN(solarMJ[h] ?? NaN)
  const ratio = (h: number): number => Math.min(1, (solarMJ[h] ?? 0) / (clearMJ[h] ?? 1))
  const first = solarMJ.findIndex((_, h) => seen(h))
  let last = first < 0 ? UNKNOWN_CLEARNESS : ratio(first)
  return solarMJ.map((_, h) => (last = seen(h) ? ratio(h) : last))
}

/** Net radiation less what goes into the ground, MJ/m2 in the hour. FAO-56 equations 40, 45 and 46. */
const heatMJ = (solarMJ: number, longwaveMJ: number): number => {
  const net = netShortwave(solarMJ) - longwaveMJ
  return net * (net > 0 ? 0.9 : 0.5)
}

/** Works out evaporation, dew and surface temperature for every hour of one member. */
export const hourEnergy = (
  weather: WeatherHours,
  member: number,
  place: Place,
  settings: WeatherSettings,
): HourEnergy => {
  const { hours, startMs } = weather
  const column = (all: Float64Array) => all.subarray(member * hours, (member + 1) * hours)
  const [temperature, dew, wind] = [weather.temperatureC, weather.dewPointC, weather.windMPerS].map(
    column,
  ) as [Float64Array, Float64Array, Float64Array]
  const altitudeM = place.altitudeM ?? 0
  const extraterrestrialMJ = extraterrestrialHours(startMs, hours, place)
  const clearMJ = extraterrestrialMJ.map((ra) => clearSky(ra, altitudeM))
  const solarHourOfDay = (((startMs / HOUR_MS + place.longitudeDeg / 15) % 24) + 24) % 24
  const days = daysOf(temperature, solarHourOfDay)
  const dayOf = (h: number): Day => days[Math.floor((h + solarHourOfDay) / 24)] ?? { minC: NaN, rangeC: NaN }
  const solarMJ = column(weather.radiationWPerM2).map((watts, h) =>
    Number.isNaN(watts)
      ? Math.min(
          clearMJ[h] ?? 0,
          radiationFromRangeMJ(dayOf(h).rangeC, extraterrestrialMJ[h] ?? 0, INLAND_KRS),
        )
      : watts * MJ_PER_WH,
  )
  const clearness = clearnessOf(solarMJ, clearMJ, extraterrestrialMJ)

  const etMm = new Float64Array(hours)
  const wetLeafMm = new Float64Array(hours)
  const surfaceC = new Float64Array(hours)
  for (let h = 0; h < hours; h++) {
    const meanC = temperature[h] ?? NaN
    const dewC = Math.min(meanC, Number.isNaN(dew[h] ?? NaN) ? dayOf(h).minC : (dew[h] ?? NaN))
    const vapour = saturationVapourPressureKPa(dewC)
    const measured = windAt2M(wind[h] ?? NaN, 10)
    const wind2 = Number.isNaN(measured) ? DEFAULT_WIND_2M : Math.max(LEAST_WIND_2M, measured)
    const heat = heatMJ(solarMJ[h] ?? 0, netLongwaveHourMJ(meanC, vapour, clearness[h] ?? UNKNOWN_CLEARNESS))
    const input: PenmanInput = {
      meanC,
      saturationKPa: saturationVapourPressureKPa(meanC),
      vapourPressureKPa: vapour,
      wind2MPerS: wind2,
      netRadiationMJ: heat,
      soilHeatMJ: 0,
      altitudeM,
    }
    const climate = settings.climateEtShare * MM_PER_MJ * (extraterrestrialMJ[h] ?? 0)
    etMm[h] = Number.isNaN(meanC) ? climate : Math.max(0, penmanHourMm(input))
    wetLeafMm[h] = wetLeafHourMm(input)
    const warmer = ((heat / MJ_PER_WH) * AIR_RESISTANCE) / wind2 / AIR_HEAT
    surfaceC[h] = meanC + Math.max(-settings.surfaceColderMostC, Math.min(WARMER_MOST_C, warmer))
  }
  return { extraterrestrialMJ, etMm, wetLeafMm, surfaceC }
}
