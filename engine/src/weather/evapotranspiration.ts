import {
  clearSky,
  dayLengthHours,
  extraterrestrialDayMJ,
  netLongwaveDayMJ,
  netShortwave,
  radiationFromRangeMJ,
  radiationFromSunshineMJ,
} from './radiation.ts'
import { DEFAULT_WIND_2M, LEAST_WIND_2M } from './energy.ts'
import { meanSaturationKPa, penmanDayMm, windAt2M } from './penman.ts'
import { saturationVapourPressureKPa } from './vapour.ts'

/** Air moisture, by whichever measure there is. FAO-56 chapter 3 ranks them in this order. */
export type Moisture =
  | { readonly vapourPressureKPa: number }
  | { readonly dewPointC: number }
  | { readonly minHumidityPercent: number; readonly maxHumidityPercent: number }
  | { readonly maxHumidityPercent: number }
  | { readonly meanHumidityPercent: number }

/** Sun of a day, by whichever measure there is. */
export type Sun = { readonly radiationMJPerM2: number } | { readonly sunshineHours: number }

/** A day's weather for the reference crop. */
export type EtDay = {
  /** Day of the year, 1 to 366. */
  readonly dayOfYear: number
  readonly latitudeDeg: number
  readonly altitudeM: number
  readonly minC: number
  readonly maxC: number
  /** Default: half way between the extremes, as FAO-56 defines the daily mean. */
  readonly meanC?: number | undefined
  readonly moisture?: Moisture | undefined
  readonly windMPerS?: number | undefined
  /** Height of the wind gauge, m. Default 2. */
  readonly windHeightM?: number | undefined
  readonly sun?: Sun | undefined
  /** Heat into the ground, MJ/m2/day. Default 0 (FAO-56 equation 42). */
  readonly soilHeatMJPerM2?: number | undefined
  /** kRs of equation 50: 0.16 inland, 0.19 by the coast. */
  readonly radiationCoefficient?: number | undefined
}

/** Fall-backs that FAO-56 allows when a measurement is missing, and the two bounds it sets. */
export const ET_ASSUMPTIONS = [
  'dewPointIsMinimum',
  'humidityFromMaximumAlone',
  'humidityHeldAtSaturation',
  'windTwoMetresPerSecond',
  'windHeldAtHalfMetrePerSecond',
  'radiationFromTemperatureRange',
  'clearnessUnknown',
] as const

/** One fall-back. */
export type EtAssumption = (typeof ET_ASSUMPTIONS)[number]

/** Reference evapotranspiration of a day and the steps to it. */
export type EtAnswer = {
  readonly etMm: number
  readonly extraterrestrialMJPerM2: number
  readonly solarMJPerM2: number
  readonly netRadiationMJPerM2: number
  readonly vapourPressureKPa: number
  readonly wind2MPerS: number
  readonly assumed: readonly EtAssumption[]
}

/** Solar over clear-sky radiation in a polar night, which has neither (our assumption). */
const POLAR_CLEARNESS = 0.7

/** Vapour pressure of the air, kPa. FAO-56 equations 14, 17, 18, 19 and, for want of any, 48. */
export const vapourPressureOf = (minC: number, maxC: number, moisture: Moisture | undefined): number => {
  const [low, high] = [saturationVapourPressureKPa(minC), saturationVapourPressureKPa(maxC)]
  if (moisture === undefined) return low
  if ('vapourPressureKPa' in moisture) return moisture.vapourPressureKPa
  if ('dewPointC' in moisture) return saturationVapourPressureKPa(moisture.dewPointC)
  if ('minHumidityPercent' in moisture)
    return (low * moisture.maxHumidityPercent + high * moisture.minHumidityPercent) / 200
  if ('maxHumidityPercent' in moisture) return (low * moisture.maxHumidityPercent) / 100
  return (((low + high) / 2) * moisture.meanHumidityPercent) / 100
}

const solarOf = (day: EtDay, extraterrestrialMJ: number): number => {
  const { sun } = day
  if (sun === undefined)
    return Math.min(
      clearSky(extraterrestrialMJ, day.altitudeM),
      radiationFromRangeMJ(day.maxC - day.minC, extraterrestrialMJ, day.radiationCoefficient ?? 0.16),
    )
  return 'radiationMJPerM2' in sun
    ? sun.radiationMJPerM2
    : radiationFromSunshineMJ(
        sun.sunshineHours,
        dayLengthHours(day.dayOfYear, day.latitudeDeg),
        extraterrestrialMJ,
      )
}

const windOf = (day: EtDay): number =>
  day.windMPerS === undefined
    ? DEFAULT_WIND_2M
    : Math.max(LEAST_WIND_2M, windAt2M(day.windMPerS, day.windHeightM ?? 2))

const assumedOf = (day: EtDay, heldAtSaturation: boolean, clearnessKnown: boolean): EtAssumption[] => {
  const { moisture, windMPerS } = day
  const list: (EtAssumption | false)[] = [
    moisture === undefined && 'dewPointIsMinimum',
    moisture !== undefined &&
      'maxHumidityPercent' in moisture &&
      !('minHumidityPercent' in moisture) &&
      'humidityFromMaximumAlone',
    heldAtSaturation && 'humidityHeldAtSaturation',
    windMPerS === undefined && 'windTwoMetresPerSecond',
    windMPerS !== undefined &&
      windAt2M(windMPerS, day.windHeightM ?? 2) < LEAST_WIND_2M &&
      'windHeldAtHalfMetrePerSecond',
    day.sun === undefined && 'radiationFromTemperatureRange',
    !clearnessKnown && 'clearnessUnknown',
  ]
  return list.filter((one) => one !== false)
}

/**
 * Reference evapotranspiration of a day, mm: FAO-56 Penman-Monteith (equation 6) with the paper's fall-backs for what is missing. Never below 0.
 * The inputs are taken as checked: `weather.referenceEvapotranspiration` says what it accepts.
 */
export const referenceEvapotranspiration = (day: EtDay): EtAnswer => {
  const extraterrestrialMJ = extraterrestrialDayMJ(day.dayOfYear, day.latitudeDeg)
  const clearMJ = clearSky(extraterrestrialMJ, day.altitudeM)
  const solarMJ = solarOf(day, extraterrestrialMJ)
  const saturationKPa = meanSaturationKPa(day.minC, day.maxC)
  const given = vapourPressureOf(day.minC, day.maxC, day.moisture)
  const vapourPressureKPa = Math.min(given, saturationKPa)
  const clearness = clearMJ > 0 ? solarMJ / clearMJ : POLAR_CLEARNESS
  const netMJ = netShortwave(solarMJ) - netLongwaveDayMJ(day.minC, day.maxC, vapourPressureKPa, clearness)
  const wind2MPerS = windOf(day)
  const etMm = penmanDayMm({
    meanC: day.meanC ?? (day.minC + day.maxC) / 2,
    saturationKPa,
    vapourPressureKPa,
    wind2MPerS,
    netRadiationMJ: netMJ,
    soilHeatMJ: day.soilHeatMJPerM2 ?? 0,
    altitudeM: day.altitudeM,
  })
  return {
    etMm: Math.max(0, etMm),
    extraterrestrialMJPerM2: extraterrestrialMJ,
    solarMJPerM2: solarMJ,
    netRadiationMJPerM2: netMJ,
    vapourPressureKPa,
    wind2MPerS,
    assumed: assumedOf(day, given > saturationKPa, clearMJ > 0),
  }
}
