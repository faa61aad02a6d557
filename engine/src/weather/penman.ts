import { MM_PER_MJ } from './radiation.ts'
import { saturationVapourPressureKPa, vapourPressureSlopeKPaPerC } from './vapour.ts'

/** Pressure of the air at a height above sea (m), kPa. FAO-56 equation 7. */
export const pressureKPa = (altitudeM: number): number => 101.3 * ((293 - 0.0065 * altitudeM) / 293) ** 5.26

/** Psychrometric constant at a height above sea (m), kPa/C. FAO-56 equation 8. */
export const psychrometricKPaPerC = (altitudeM: number): number => 0.665e-3 * pressureKPa(altitudeM)

/** Wind at 2 m from wind measured at `heightM` over short grass, m/s. FAO-56 equation 47; above 0.1 m. */
export const windAt2M = (windMPerS: number, heightM: number): number =>
  heightM === 2 ? windMPerS : (windMPerS * 4.87) / Math.log(67.8 * heightM - 5.42)

/** What both forms of the Penman-Monteith equation need. Radiation and heat in MJ/m2 of the period. */
export type PenmanInput = {
  readonly meanC: number
  readonly saturationKPa: number
  readonly vapourPressureKPa: number
  readonly wind2MPerS: number
  readonly netRadiationMJ: number
  readonly soilHeatMJ: number
  readonly altitudeM: number
}

/** Equation 6 with the period's constant (900 a day, 37 an hour) and the weight of wind on the surface's resistance (0.34 for the reference crop, 0 for a wet leaf). */
const penman = (p: PenmanInput, constant: number, resistance: number): number => {
  const slope = vapourPressureSlopeKPaPerC(p.meanC)
  const gamma = psychrometricKPaPerC(p.altitudeM)
  const radiation = MM_PER_MJ * slope * (p.netRadiationMJ - p.soilHeatMJ)
  const air = ((gamma * constant) / (p.meanC + 273)) * p.wind2MPerS * (p.saturationKPa - p.vapourPressureKPa)
  return (radiation + air) / (slope + gamma * (1 + resistance * p.wind2MPerS))
}

/** Reference evapotranspiration of a day, mm, before it is held at 0. FAO-56 equation 6. */
export const penmanDayMm = (p: PenmanInput): number => penman(p, 900, 0.34)

/** Reference evapotranspiration of an hour, mm, before it is held at 0. FAO-56 equation 53. */
export const penmanHourMm = (p: PenmanInput): number => penman(p, 37, 0.34)

/** Evaporation from a wet leaf in an hour, mm; below 0 it is dew falling. FAO-56 equation 53 with no resistance of the surface (Penman's wet surface). */
export const wetLeafHourMm = (p: PenmanInput): number => penman(p, 37, 0)

/** Mean of the saturation pressures at the day's extremes, kPa. FAO-56 equation 12. */
export const meanSaturationKPa = (minC: number, maxC: number): number =>
  (saturationVapourPressureKPa(minC) + saturationVapourPressureKPa(maxC)) / 2

/** Reference evapotranspiration from temperature alone, mm/day, never below 0. FAO-56 equation 52 (Hargreaves). */
export const hargreavesMm = (minC: number, maxC: number, meanC: number, extraterrestrialMJ: number): number =>
  Math.max(0, 0.0023 * (meanC + 17.8) * Math.sqrt(Math.max(0, maxC - minC)) * MM_PER_MJ * extraterrestrialMJ)
