/** How fast the ground loses what it cannot hold. */
export const DRAINAGE_CLASSES = ['well', 'moderate', 'poor'] as const

/** A drainage class of soil. */
export type DrainageClass = (typeof DRAINAGE_CLASSES)[number]

/** Parameters of one class, mm. Below 0 the soil holds more than field capacity. */
type Drainage = {
  /** Wettest state. */
  readonly wettestMm: number
  /** Deficit up to which grass drinks all it can. */
  readonly criticalMm: number
  /** Deficit at which it gets nothing. */
  readonly driestMm: number
  /** Drainage of a saturated soil in a day. */
  readonly drainsMmPerDay: number
}

/**
 * Hybrid soil-moisture-deficit model for grassland (Schulte and others 2005, Irish J. Agric. Food Res. 44:95-110). The paper gives the form; these
 * figures reproduce the service's published columns to their rounding (16,774 days, one station), which checks the working, not the soil.
 */
export const DRAINAGE: Readonly<Record<DrainageClass, Drainage>> = {
  well: { wettestMm: 0, criticalMm: 0, driestMm: 110, drainsMmPerDay: 0 },
  moderate: { wettestMm: -10, criticalMm: 0, driestMm: 110, drainsMmPerDay: 10 },
  poor: { wettestMm: -10, criticalMm: 10, driestMm: 110, drainsMmPerDay: 0.5 },
}

/** Water the grass really draws in a day, mm, from the deficit that morning and the day's potential (mm). */
export const actualEvapotranspirationMm = (
  deficitMm: number,
  potentialMm: number,
  drainage: DrainageClass,
): number => {
  const { criticalMm, driestMm } = DRAINAGE[drainage]
  return deficitMm <= criticalMm
    ? potentialMm
    : (potentialMm * (driestMm - deficitMm)) / (driestMm - criticalMm)
}

/**
 * Soil-moisture deficit of a soil green tomorrow, mm: 0 at field capacity, above it dry, below it water still to drain.
 * `deficitMm` from -10 to 110; rain and potential evapotranspiration of the day at least 0.
 */
export const nextDeficitMm = (
  deficitMm: number,
  day: { readonly rainMm: number; readonly potentialMm: number },
  drainage: DrainageClass,
): number => {
  const { wettestMm, drainsMmPerDay } = DRAINAGE[drainage]
  const drained = deficitMm < 0 && wettestMm < 0 ? drainsMmPerDay * (deficitMm / wettestMm) : 0
  const drawn = actualEvapotranspirationMm(deficitMm, day.potentialMm, drainage)
  return Math.max(wettestMm, deficitMm - day.rainMm + drawn + drained)
}

/** Deficits at the end of each day, mm, from a deficit before the first. A day without rain or potential (NaN) makes the rest NaN: gaps are not filled. */
export const deficitSeriesMm = (
  rainMm: Float64Array,
  potentialMm: Float64Array,
  drainage: DrainageClass,
  startMm: number,
): Float64Array => {
  let deficit = startMm
  return rainMm.map((rain, i) => {
    deficit = nextDeficitMm(deficit, { rainMm: rain, potentialMm: potentialMm[i] ?? NaN }, drainage)
    return deficit
  })
}
