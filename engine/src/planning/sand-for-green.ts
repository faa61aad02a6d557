import { grooveWork } from '../agronomy/grooves.ts'
import { holeShare, volumeLPerM2 } from '../agronomy/holes.ts'
import { loadsOf, sandBandLPerM2, scaleBand, type SandBand } from '../agronomy/sand-band.ts'
import { wetMassOf } from '../agronomy/sand-moisture.ts'
import type { CalculationError } from '../catalogue/errors.ts'
import { ok, type Result } from '../result.ts'
import type { BladeSetting, PrescriptionGroup, TineSetting } from './prescription.ts'

/** What the prescription opens in a square metre, and what it takes out. */
export type Opened = {
  /** Volume of the cores (inside of the tines), L/m2. */
  readonly coreVolumeLPerM2: number
  /** Volume of the holes (outside of the tines), L/m2. */
  readonly holeVolumeLPerM2: number
  /** Volume of the grooves, L/m2. */
  readonly grooveVolumeLPerM2: number
  /** Shares of all passes added up. */
  readonly areaShareSummed: number
  /** Share of the surface touched at least once. */
  readonly areaShareUnion: number
}

/** Sand for one green: the band in dry tonnes, mm of sand lying before it is dragged in, and dresser loads. */
export type SandForGreen = { readonly bandT: SandBand; readonly likelyMm: number; readonly loads: number }

const MM2_PER_M2 = 1_000_000
const DRY_T_PER_L_AT_ONE_KG_PER_M3 = 1e-6

const holesPerM2 = (tines: TineSetting): number => MM2_PER_M2 / (tines.acrossMm * tines.alongMm)

/** Scarifying steps with the same blades are passes of one work; two or more cross each other. */
const scarifyWorks = (
  group: PrescriptionGroup,
): readonly { readonly blades: BladeSetting; readonly passes: number }[] => {
  const works: { blades: BladeSetting; passes: number }[] = []
  for (const step of group.chain) {
    const { blades } = step
    if (blades === undefined) continue
    const same = works.find((work) => JSON.stringify(work.blades) === JSON.stringify(blades))
    if (same === undefined) works.push({ blades, passes: step.passes })
    else same.passes += step.passes
  }
  return works
}

/** What a group's prescription opens. Errors: the settings do not go together (a groove wider than its spacing). */
export const openedBy = (group: PrescriptionGroup): Result<Opened, CalculationError> => {
  let coreVolume = 0
  let holeVolume = 0
  let grooveVolume = 0
  let summed = 0
  let untouched = 1
  for (const { tines, passes } of group.chain) {
    if (tines === undefined) continue
    const holes = holesPerM2(tines)
    const share = holeShare(holes, tines.holeDiameterMm)
    coreVolume += passes * volumeLPerM2(holeShare(holes, tines.coreDiameterMm), tines.depthMm)
    holeVolume += passes * volumeLPerM2(share, tines.depthMm)
    summed += passes * share
    untouched *= (1 - share) ** passes
  }
  for (const { blades, passes } of scarifyWorks(group)) {
    const work = grooveWork({ ...blades, passes, crossed: passes > 1 })
    if (!work.ok) return work
    grooveVolume += work.value.volumeLPerM2
    summed += work.value.areaShareSummed
    untouched *= 1 - work.value.areaShareUnion
  }
  return ok({
    coreVolumeLPerM2: coreVolume,
    holeVolumeLPerM2: holeVolume,
    grooveVolumeLPerM2: grooveVolume,
    areaShareSummed: summed,
    areaShareUnion: 1 - untouched,
  })
}

/** Sand for a green of this area under a group's prescription; `hopperT` is what the dresser carries of it as it comes. */
export const sandForGreen = (
  group: PrescriptionGroup,
  areaM2: number,
  hopperT: number,
): Result<SandForGreen, CalculationError> => {
  const opened = openedBy(group)
  if (!opened.ok) return opened
  const { sand } = group
  const band = sandBandLPerM2({
    ...opened.value,
    surfaceMm: sand.surfaceMm,
    workedBackLPerM2: group.cores === 'breakUp' ? group.workedBackShare * opened.value.coreVolumeLPerM2 : 0,
    fillFactor: sand.fillFactor,
    lossPercent: sand.lossPercent,
  })
  const bandT = scaleBand(band, sand.bulkDensityKgPerM3 * areaM2 * DRY_T_PER_L_AT_ONE_KG_PER_M3)
  const dresses = group.chain.some((step) => step.operation === 'dress')
  if (!dresses) return ok({ bandT: { low: 0, likely: 0, high: 0 }, likelyMm: 0, loads: 0 })
  return ok({
    bandT,
    likelyMm: band.likely / (1 + sand.lossPercent / 100),
    loads: loadsOf(wetMassOf(bandT.likely, sand.moisturePercent), hopperT),
  })
}
