import { bulkDensityOf, ORGANIC_DENSITY_KG_PER_M3, SAND_DENSITY_KG_PER_M3 } from './density.ts'
import type { Layer } from './layers.ts'

/**
 * One layer of a green as dry masses over one square metre, g/m2: dressing sand, organic matter, and the mineral soil or rootzone sand that
 * the green was built of. Its thickness follows from the masses, so layers move down by themselves when sand comes on top.
 */
export type ProfileLayer = {
  readonly sandGPerM2: number
  readonly organicGPerM2: number
  readonly mineralGPerM2: number
}

/** A green's profile from the surface down. Apart from laboratory results: this is what a model reckons with. */
export type ProfileState = readonly ProfileLayer[]

/** A depth band, mm. */
export type DepthBand = { readonly fromMm: number; readonly toMm: number }

/** Thickness of a layer, mm: volumes of its parts add (1560 kg/m3 for sand and mineral, 220 for organic matter). */
export const thicknessMm = (layer: ProfileLayer): number =>
  (layer.sandGPerM2 + layer.mineralGPerM2) / SAND_DENSITY_KG_PER_M3 +
  layer.organicGPerM2 / ORGANIC_DENSITY_KG_PER_M3

/** Thickness of the whole profile, mm. */
export const profileThicknessMm = (profile: ProfileState): number =>
  profile.reduce((sum, layer) => sum + thicknessMm(layer), 0)

/** A layer of another thickness with the same make-up: its masses times a factor. */
export const scaleLayer = (layer: ProfileLayer, factor: number): ProfileLayer => ({
  sandGPerM2: layer.sandGPerM2 * factor,
  organicGPerM2: layer.organicGPerM2 * factor,
  mineralGPerM2: layer.mineralGPerM2 * factor,
})

/** Both layers together, as one. */
export const mergeLayers = (a: ProfileLayer, b: ProfileLayer): ProfileLayer => ({
  sandGPerM2: a.sandGPerM2 + b.sandGPerM2,
  organicGPerM2: a.organicGPerM2 + b.organicGPerM2,
  mineralGPerM2: a.mineralGPerM2 + b.mineralGPerM2,
})

export const EMPTY_LAYER: ProfileLayer = { sandGPerM2: 0, organicGPerM2: 0, mineralGPerM2: 0 }

/** Organic matter of a layer, percent of its dry mass; 0 for an empty one. */
export const organicPercentOf = (layer: ProfileLayer): number => {
  const mass = layer.sandGPerM2 + layer.mineralGPerM2 + layer.organicGPerM2
  return mass > 0 ? (100 * layer.organicGPerM2) / mass : 0
}

/**
 * The state that a laboratory result implies. Mineral matter is taken as dressing sand down to `sandToMm` and as the green's own rootzone
 * or soil below; a laboratory cannot tell them apart.
 */
export const profileOf = (layers: readonly Layer[], sandToMm: number): ProfileState =>
  layers.map((layer) => {
    const massGPerM2 = (layer.toMm - layer.fromMm) * bulkDensityOf(layer.organicPercent / 100)
    const organicGPerM2 = (massGPerM2 * layer.organicPercent) / 100
    const restGPerM2 = massGPerM2 - organicGPerM2
    const sandShare = Math.min(1, Math.max(0, (sandToMm - layer.fromMm) / (layer.toMm - layer.fromMm)))
    return { sandGPerM2: restGPerM2 * sandShare, organicGPerM2, mineralGPerM2: restGPerM2 * (1 - sandShare) }
  })

/** Sand (g/m2) laid on the surface as a layer of its own. */
export const dressed = (profile: ProfileState, sandGPerM2: number): ProfileState =>
  sandGPerM2 > 0 ? [{ ...EMPTY_LAYER, sandGPerM2 }, ...profile] : profile

/** The part of a profile that lies in a depth band (mm from the surface), as one layer. */
export const bandOf = (profile: ProfileState, { fromMm, toMm }: DepthBand): ProfileLayer => {
  let topMm = 0
  let sum = EMPTY_LAYER
  for (const layer of profile) {
    const thickMm = thicknessMm(layer)
    const insideMm = Math.min(topMm + thickMm, toMm) - Math.max(topMm, fromMm)
    if (insideMm > 0) sum = mergeLayers(sum, scaleLayer(layer, insideMm / thickMm))
    topMm += thickMm
  }
  return sum
}

/** What a laboratory would find in its bands: the profile sampled as 0-20, 20-40, 40-60 mm or any other bands. */
export const sampledAs = (profile: ProfileState, bands: readonly DepthBand[]): readonly Layer[] =>
  bands.map((band) => ({ ...band, organicPercent: organicPercentOf(bandOf(profile, band)) }))
