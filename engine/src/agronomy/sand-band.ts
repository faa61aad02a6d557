/** Share of the hole volume that sand fills at first, learned later from tonnes really used (common practice 0.8 to 0.9). */
export const START_FILL_FACTOR = 0.85

/** What a square metre of green takes: volumes in L/m2 (= mm of sand), fill factor and loss without and in percent. */
export type SandPlaces = {
  /** Volume of the cores, by the inside diameter of the tine. */
  readonly coreVolumeLPerM2: number
  /** Volume of the holes, by the outside diameter of the tine. */
  readonly holeVolumeLPerM2: number
  readonly grooveVolumeLPerM2: number
  readonly surfaceMm: number
  readonly workedBackLPerM2: number
  readonly fillFactor: number
  readonly lossPercent: number
}

/** A band of sand, L/m2 or t; low <= likely <= high. */
export type SandBand = { readonly low: number; readonly likely: number; readonly high: number }

/**
 * Sand a square metre needs, L/m2: holes + grooves + surface layer - material worked back in, and the loss on top.
 * Holes: low = core volume, high = hole volume, likely = hole volume x fill factor. Never below nothing. Where the likely value
 * lies outside low and high (a core nearly as wide as its hole, a fill factor above 1), the band widens to hold it.
 * Common practice; the fill factor is the club's own.
 */
export const sandBandLPerM2 = (places: SandPlaces): SandBand => {
  const rest = places.grooveVolumeLPerM2 + places.surfaceMm - places.workedBackLPerM2
  const need = (holesLPerM2: number): number =>
    Math.max(0, holesLPerM2 + rest) * (1 + places.lossPercent / 100)
  const likely = need(places.holeVolumeLPerM2 * places.fillFactor)
  return {
    low: Math.min(likely, need(places.coreVolumeLPerM2)),
    likely,
    high: Math.max(likely, need(places.holeVolumeLPerM2)),
  }
}

/** A band times a factor that is not negative. */
export const scaleBand = (band: SandBand, factor: number): SandBand => ({
  low: band.low * factor,
  likely: band.likely * factor,
  high: band.high * factor,
})

/**
 * Full loads that carry a mass (t) in a hopper or lorry of a size (t): rounded up. A remainder below a gram is rounding of the
 * computer, not a load.
 */
export const loadsOf = (massT: number, hopperT: number): number =>
  massT <= 0 ? 0 : Math.max(1, Math.ceil((massT - 1e-6) / hopperT))
