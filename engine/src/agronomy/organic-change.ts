import { bulkDensityOf, SAND_DENSITY_KG_PER_M3 } from './density.ts'

/** Constant of the sand-to-clippings ratio, mm of sand per L/m2 of clippings (Woods 2026, 'current best estimate'). */
export const CLIPPINGS_SAND_RATIO = 0.106

/** A window of the profile: its depth in mm and its organic matter in percent. */
export type Window = { readonly windowMm: number; readonly organicPercent: number }

/**
 * Organic matter (percent) of a window from the surface after sand (mm, at most the window) lies on it; the window keeps its depth,
 * so the bottom drops out. By mass: `OM' = (h - s) rho OM / ((h - s) rho + 1.56 s)`. Gives 6.7 -> 6.2 -> 5.8 % for 1 and 2 mm
 * in 20 mm as printed (Woods 2021).
 */
export const afterSandByMass = ({ windowMm, organicPercent }: Window, sandMm: number): number => {
  const soilGPerM2 = (windowMm - sandMm) * bulkDensityOf(organicPercent / 100)
  return (soilGPerM2 * organicPercent) / (soilGPerM2 + sandMm * SAND_DENSITY_KG_PER_M3)
}

/** The quick rule by volume, `OM' = OM (1 - s / h)` (Woods 2019): understates the fall at high organic matter. */
export const afterSandByVolume = ({ windowMm, organicPercent }: Window, sandMm: number): number =>
  organicPercent * (1 - sandMm / windowMm)

/** Sand (mm) that brings a window down to a percentage: `s = h rho (OM - OM') / (rho (OM - OM') + 1.56 OM')`, OM >= OM' > 0. */
export const sandToReachMm = ({ windowMm, organicPercent }: Window, toPercent: number): number => {
  const density = bulkDensityOf(organicPercent / 100)
  const fall = density * (organicPercent - toPercent)
  return fall === 0 ? 0 : (windowMm * fall) / (fall + SAND_DENSITY_KG_PER_M3 * toPercent)
}

/** Sand (mm) that holds organic matter where it is, against clippings (L/m2): `d = 0.106 V (100 - OM) / OM` (Woods 2026). */
export const sandToHoldMm = (clippingsLPerM2: number, organicPercent: number): number =>
  (CLIPPINGS_SAND_RATIO * clippingsLPerM2 * (100 - organicPercent)) / organicPercent
