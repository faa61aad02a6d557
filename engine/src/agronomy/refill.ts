import { SAND_DENSITY_KG_PER_M3 } from './density.ts'
import {
  addMasses,
  bottomMm,
  massesOfThickness,
  NO_MASS,
  percentOf,
  scaleMasses,
  type Layer,
  type Masses,
} from './layers.ts'

/** What happens to the holes: filled with sand, left open, or closed in from the side so that the surface sinks. */
export const REFILLS = ['sand', 'none', 'collapse'] as const

/** One of the ways that holes end. */
export type Refill = (typeof REFILLS)[number]

/** Share (0 to 1) of the surface that is cored, and the depth of the cores (mm). */
export type Cored = { readonly share: number; readonly depthMm: number }

/** A slice of soil that is alike from top to bottom, with the part of it that coring took, mm of solid soil left. */
type Slice = { readonly keptMm: number; readonly cutMm: number; readonly organicPercent: number }

/** Cuts each layer at the coring depth; the lower part keeps all its soil. */
const slicesOf = (layer: Layer, { share, depthMm }: Cored): readonly Slice[] => {
  const coredMm = Math.max(0, Math.min(layer.toMm, depthMm) - layer.fromMm)
  const wholeMm = layer.toMm - layer.fromMm - coredMm
  const { organicPercent } = layer
  return [
    { keptMm: coredMm * (1 - share), cutMm: coredMm * share, organicPercent },
    { keptMm: wholeMm, cutMm: 0, organicPercent },
  ]
}

const keptMasses = (slices: readonly Slice[]): Masses =>
  slices.reduce((sum, s) => addMasses(sum, massesOfThickness(s.keptMm, s.organicPercent)), NO_MASS)

const sandMasses = (slices: readonly Slice[]): Masses => ({
  dryMassGPerM2: slices.reduce((sum, s) => sum + s.cutMm * SAND_DENSITY_KG_PER_M3, 0),
  organicGPerM2: 0,
})

/** Masses of the sunken column between two depths (mm) of the new surface. */
const between = (column: readonly Slice[], fromMm: number, toMm: number): Masses => {
  let topMm = 0
  let sum = NO_MASS
  for (const slice of column) {
    const bottom = topMm + slice.keptMm
    const thicknessMm = Math.min(bottom, toMm) - Math.max(topMm, fromMm)
    if (thicknessMm > 0) sum = addMasses(sum, massesOfThickness(thicknessMm, slice.organicPercent))
    topMm = bottom
  }
  return sum
}

/**
 * Masses in each of the old layers' windows after coring, g/m2. Filled and open holes leave every layer where it is; collapsed holes
 * let the surface sink, so that the same windows reach deeper: material like the lowest layer is made up from below.
 */
export const layerMassesAfterCoring = (
  layers: readonly Layer[],
  cored: Cored,
  refill: Refill,
): readonly Masses[] => {
  const sliced = layers.map((layer) => slicesOf(layer, cored))
  if (refill === 'none') return sliced.map(keptMasses)
  if (refill === 'sand') return sliced.map((slices) => addMasses(keptMasses(slices), sandMasses(slices)))
  const below: Slice = {
    keptMm: bottomMm(layers),
    cutMm: 0,
    organicPercent: layers.at(-1)?.organicPercent ?? 0,
  }
  const column = [...sliced.flat(), below]
  return layers.map((layer) => between(column, layer.fromMm, layer.toMm))
}

/** Organic matter of each layer's window and of the whole after coring, percent. */
export const percentsAfterCoring = (
  layers: readonly Layer[],
  cored: Cored,
  refill: Refill,
): { readonly organicPercent: number; readonly layers: readonly Layer[] } => {
  const masses = layerMassesAfterCoring(layers, cored, refill)
  const total = masses.reduce(addMasses, NO_MASS)
  return {
    organicPercent: percentOf(total),
    layers: layers.map((layer, i) => {
      // A layer that is cored away to nothing has no mass left to take a percentage of; its own figure stands for it.
      const mass = masses[i] ?? NO_MASS
      return {
        ...layer,
        organicPercent: mass.dryMassGPerM2 > 0 ? percentOf(mass) : layer.organicPercent,
      }
    }),
  }
}

/**
 * Organic matter (percent) of a profile after solid tines whose holes are filled with `sandMm` of sand: the soil is pressed aside
 * and up, so the sampled window loses that much of its lowest layer. Gives the printed 3.312 % (Woods 2021).
 */
export const percentAfterSolidAndSand = (layers: readonly Layer[], sandMm: number): number => {
  const heightMm = bottomMm(layers) - sandMm
  const kept = layers.reduce((sum, layer) => {
    const thicknessMm = Math.min(layer.toMm, heightMm) - layer.fromMm
    return thicknessMm > 0 ? addMasses(sum, massesOfThickness(thicknessMm, layer.organicPercent)) : sum
  }, NO_MASS)
  return percentOf(
    addMasses(kept, scaleMasses({ dryMassGPerM2: SAND_DENSITY_KG_PER_M3, organicGPerM2: 0 }, sandMm)),
  )
}
