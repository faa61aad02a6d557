import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { SAND_BULKING_CHECKS } from './sand-checks.ts'

/** Dry mass in a wet mass, same unit: `dry = wet / (1 + w / 100)`, w = water as percent of the dry mass. */
export const dryMassOf = (wetMass: number, moisturePercentDryBasis: number): number =>
  wetMass / (1 + moisturePercentDryBasis / 100)

/** Wet mass of a dry mass, same unit: `wet = dry (1 + w / 100)`, w = water as percent of the dry mass. */
export const wetMassOf = (dryMass: number, moisturePercentDryBasis: number): number =>
  dryMass * (1 + moisturePercentDryBasis / 100)

export const moisturePercentDryBasis = quantity({
  meaning: 'Water in the sand, percent of its dry mass',
  unit: '%',
  symbol: 'w',
  min: 0,
  max: 50,
})

/** `sand.dryMass`: dry sand in a wet load. */
export const sandDryMass = item({
  name: 'sand.dryMass',
  title: 'Dry sand in a wet load',
  words:
    'Divide the wet mass by one plus the moisture (water as a percentage of dry sand). Order and account by dry mass.',
  formula: 'dry = wet / (1 + w / 100)',
  evidence: 'handbook',
  sources: ['bulkingNotes', 'geometry'],
  notes: [
    'Moisture is on the dry basis, as soil laboratories print it. A figure on the wet basis u is w = 100 u / (100 - u).',
  ],
  inputs: v.strictObject({
    wetMassT: quantity({ meaning: 'Mass of the load as it comes', unit: 't', min: 0, max: 100_000 }),
    moisturePercentDryBasis,
  }),
  outputs: v.strictObject({ dryMassT: figure({ meaning: 'Dry sand in it', unit: 't' }) }),
  checks: [
    {
      id: 'dry-load',
      class: 'derived',
      source: 'geometry',
      where: 'by hand: 21 t at 5 % water on the dry basis is 20 t of sand and 1 t of water',
      input: { wetMassT: 21, moisturePercentDryBasis: 5 },
      output: 'dryMassT',
      expected: 20,
      tolerance: 1e-9,
    },
  ],
  run: ({ wetMassT, moisturePercentDryBasis }) =>
    ok({ dryMassT: dryMassOf(wetMassT, moisturePercentDryBasis) }),
})

/** `sand.bulking`: how much damp sand is puffed up. */
export const sandBulking = item({
  name: 'sand.bulking',
  title: 'Bulking of damp sand',
  words:
    'Fill a jar with damp sand and note its height; flood it and note the height again. The loss against the flooded height is the bulking: dry and flooded sand take the same room.',
  formula: 'bulking = 100 (damp - flooded) / flooded',
  evidence: 'handbook',
  sources: ['bulkingNotes'],
  notes: [
    'Usually 20 to 40 % at 5 to 8 % moisture, more for fine sand: a hopper of damp sand then holds 17 to 29 % less sand.',
  ],
  inputs: v.strictObject({
    dampHeightMm: quantity({ meaning: 'Height of the damp sand', unit: 'mm', min: 1, max: 10_000 }),
    floodedHeightMm: quantity({
      meaning: 'Height of the same sand flooded',
      unit: 'mm',
      min: 1,
      max: 10_000,
    }),
  }),
  outputs: v.strictObject({
    bulkingPercent: figure({ meaning: 'More room than dry or flooded sand takes', unit: '%' }),
    lessSandInHopperPercent: figure({ meaning: 'Less sand in a hopper filled with it damp', unit: '%' }),
  }),
  checks: [
    ...SAND_BULKING_CHECKS,
    {
      id: 'bulking-hopper',
      class: 'derived',
      source: 'bulkingNotes',
      where: 'by hand: 25 % more room is 1 - 1/1.25 = 20 % less sand in the hopper',
      input: { dampHeightMm: 200, floodedHeightMm: 160 },
      output: 'lessSandInHopperPercent',
      expected: 20,
      tolerance: 1e-9,
    },
  ],
  run: ({ dampHeightMm, floodedHeightMm }) => {
    if (dampHeightMm < floodedHeightMm)
      return notDefined(
        'floodedHeightMm',
        'mm',
        `flooded sand stands ${floodedHeightMm} mm high but damp only ${dampHeightMm} mm; flooding cannot raise it`,
      )
    return ok({
      bulkingPercent: (100 * (dampHeightMm - floodedHeightMm)) / floodedHeightMm,
      lessSandInHopperPercent: 100 * (1 - floodedHeightMm / dampHeightMm),
    })
  },
})

/** Moisture and bulking of sand. */
export const SAND_MOISTURE_ITEMS = [sandDryMass, sandBulking]
