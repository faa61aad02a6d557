import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { quantity } from '../catalogue/quantity.ts'
import { ok, type Result } from '../result.ts'
import { bulkDensityOf } from './density.ts'

/** One layer of a green's profile: depths below the surface in mm, organic matter in percent of dry mass. */
export type Layer = { readonly fromMm: number; readonly toMm: number; readonly organicPercent: number }

/** Dry mass and the organic matter in it, g/m2. */
export type Masses = { readonly dryMassGPerM2: number; readonly organicGPerM2: number }

export const organicPercent = quantity({
  meaning: 'Organic matter, percent of dry mass (loss on ignition)',
  unit: '%',
  symbol: 'OM',
  min: 0,
  max: 100,
})

export const layersSchema = v.pipe(
  v.array(
    v.strictObject({
      fromMm: quantity({ meaning: 'Top of the layer below the surface', unit: 'mm', min: 0, max: 1000 }),
      toMm: quantity({ meaning: 'Bottom of the layer below the surface', unit: 'mm', min: 0.1, max: 1000 }),
      organicPercent,
    }),
  ),
  v.minLength(1),
  v.maxLength(200),
  v.description('Layers of the profile from the top down, without gaps'),
)

/** The first reason why these layers are not one unbroken profile from the top down; depths in mm. */
export const brokenLayers = (layers: readonly Layer[]): Result<undefined, CalculationError> => {
  for (const [i, layer] of layers.entries()) {
    if (layer.toMm <= layer.fromMm)
      return notDefined(
        `layers[${i}].toMm`,
        'mm',
        `layer ${i + 1} ends at ${layer.toMm} mm but starts at ${layer.fromMm} mm; it must end deeper than it starts`,
      )
    const above = layers[i - 1]
    if (above !== undefined && above.toMm !== layer.fromMm)
      return notDefined(
        `layers[${i}].fromMm`,
        'mm',
        `layer ${i + 1} starts at ${layer.fromMm} mm but the one above ends at ${above.toMm} mm; layers must follow each other without gap or overlap`,
      )
  }
  return ok(undefined)
}

/**
 * Checks that layers start at the surface, follow each other and reach a working depth (mm).
 * Errors: `notDefined`, naming the layer or the depth field, e.g. 'depthMm is 90 mm but the layers end at 80 mm'.
 */
export const reachDepth = (
  layers: readonly Layer[],
  depthMm: number,
): Result<undefined, CalculationError> => {
  const broken = brokenLayers(layers)
  if (!broken.ok) return broken
  const top = layers[0]?.fromMm ?? 0
  if (top !== 0)
    return notDefined(
      'layers[0].fromMm',
      'mm',
      `the first layer starts at ${top} mm; it must start at 0 mm, the surface`,
    )
  const bottom = bottomMm(layers)
  if (depthMm > bottom)
    return notDefined(
      'depthMm',
      'mm',
      `depthMm is ${depthMm} mm but the layers end at ${bottom} mm; give layers to at least that depth`,
    )
  return ok(undefined)
}

/** Depth at which the last layer ends, mm. */
export const bottomMm = (layers: readonly Layer[]): number => layers.at(-1)?.toMm ?? 0

/** Masses of one thickness (mm) at an organic content (percent); 1 mm over 1 m2 of density rho kg/m3 is rho grams. */
export const massesOfThickness = (thicknessMm: number, organicPercent: number): Masses => {
  const dryMassGPerM2 = thicknessMm * bulkDensityOf(organicPercent / 100)
  return { dryMassGPerM2, organicGPerM2: (dryMassGPerM2 * organicPercent) / 100 }
}

/** Adds masses. */
export const addMasses = (a: Masses, b: Masses): Masses => ({
  dryMassGPerM2: a.dryMassGPerM2 + b.dryMassGPerM2,
  organicGPerM2: a.organicGPerM2 + b.organicGPerM2,
})

/** Masses times a factor, e.g. a share of the surface. */
export const scaleMasses = (m: Masses, factor: number): Masses => ({
  dryMassGPerM2: m.dryMassGPerM2 * factor,
  organicGPerM2: m.organicGPerM2 * factor,
})

export const NO_MASS: Masses = { dryMassGPerM2: 0, organicGPerM2: 0 }

/** Masses of the profile from its top to a depth (mm), g/m2 over the whole surface. */
export const massesTo = (layers: readonly Layer[], depthMm: number): Masses =>
  layers.reduce((sum, layer) => {
    const thicknessMm = Math.min(layer.toMm, depthMm) - layer.fromMm
    return thicknessMm > 0 ? addMasses(sum, massesOfThickness(thicknessMm, layer.organicPercent)) : sum
  }, NO_MASS)

/** Organic matter as a percentage of dry mass; 0 for no mass at all. */
export const percentOf = (m: Masses): number =>
  m.dryMassGPerM2 > 0 ? (100 * m.organicGPerM2) / m.dryMassGPerM2 : 0
