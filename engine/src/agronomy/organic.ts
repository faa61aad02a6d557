import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { bulkDensityOf } from './density.ts'
import { bottomMm, brokenLayers, layersSchema, massesTo, organicPercent, percentOf } from './layers.ts'
import { ORGANIC_LOSS_ON_IGNITION_CHECKS, ORGANIC_PROFILE_TOTALS_CHECKS } from './organic-checks.ts'

/** `organic.bulkDensity`: how dense sand with organic matter in it is. */
export const organicBulkDensity = item({
  name: 'organic.bulkDensity',
  title: 'Bulk density by organic matter',
  words:
    'Organic matter is light (0.22 g/cm3) and sand heavy (1.56 g/cm3). Volumes add up, so the mix is as dense as one gram of it divided by the room of its two parts.',
  formula: 'rho = 1000 / (x / 0.22 + (1 - x) / 1.56), x = OM / 100',
  evidence: 'measured trial',
  sources: ['woodsReduction2021'],
  notes: [
    'The article prints the two densities only. Adding volumes gives back every mass in it; a straight mean of the densities does not (105,823 g for 90,429 g).',
  ],
  inputs: v.strictObject({ organicPercent }),
  outputs: v.strictObject({
    bulkDensityKgPerM3: figure({ meaning: 'Bulk density, dry', unit: 'kg/m3', symbol: 'rho' }),
  }),
  checks: [
    {
      id: 'density-sand',
      class: 'published',
      source: 'woodsReduction2021',
      where: 'sand without organic matter: 1.56 g/cm3',
      input: { organicPercent: 0 },
      output: 'bulkDensityKgPerM3',
      expected: 1560,
      tolerance: 1e-6,
    },
    {
      id: 'density-organic',
      class: 'published',
      source: 'woodsReduction2021',
      where: 'organic matter alone: 0.22 g/cm3',
      input: { organicPercent: 100 },
      output: 'bulkDensityKgPerM3',
      expected: 220,
      tolerance: 1e-6,
    },
    {
      id: 'density-5',
      class: 'derived',
      source: 'woodsReduction2021',
      where: 'by hand: 1 / (0.05 / 0.22 + 0.95 / 1.56) = 1 / (0.22727 + 0.60897) = 1.1958 g/cm3',
      input: { organicPercent: 5 },
      output: 'bulkDensityKgPerM3',
      expected: 1195.8,
      tolerance: 0.1,
    },
  ],
  run: (input) => ok({ bulkDensityKgPerM3: bulkDensityOf(input.organicPercent / 100) }),
})

/** `organic.profileTotals`: masses of a whole profile. */
export const organicProfileTotals = item({
  name: 'organic.profileTotals',
  title: 'Organic matter of the whole profile',
  words:
    'Each layer weighs its thickness times its own density. Add up the masses and the organic matter in them; the percentage of the whole is by mass, not the mean of the layers.',
  formula: 'm = sum(t rho(OM)); organic = sum(t rho(OM) OM / 100); OM = 100 organic / m',
  evidence: 'measured trial',
  sources: ['woodsReduction2021'],
  inputs: v.strictObject({ layers: layersSchema }),
  outputs: v.strictObject({
    dryMassGPerM2: figure({ meaning: 'Dry mass of the profile', unit: 'g/m2', symbol: 'm' }),
    organicGPerM2: figure({ meaning: 'Organic matter in it', unit: 'g/m2' }),
    organicPercent: figure({ meaning: 'Organic matter of the whole', unit: '%', symbol: 'OM' }),
  }),
  checks: ORGANIC_PROFILE_TOTALS_CHECKS,
  run: ({ layers }) => {
    const broken = brokenLayers(layers)
    if (!broken.ok) return broken
    const total = massesTo(layers, bottomMm(layers))
    return ok({ ...total, organicPercent: percentOf(total) })
  },
})

/** `organic.lossOnIgnition`: the laboratory's own arithmetic. */
export const organicLossOnIgnition = item({
  name: 'organic.lossOnIgnition',
  title: 'Organic matter by loss on ignition',
  words:
    'Dry the sample, weigh it, burn it, weigh it again. What is gone is organic matter, as a percentage of the dry mass.',
  formula: 'OM = 100 (dry - ash) / dry',
  evidence: 'handbook',
  sources: ['woodsCommonPractice2021', 'astmF1647', 'usgaOrganic62'],
  notes: [
    'Grinding and sieving loses up to half of the organic matter of the surface; leave the verdure in (USGA committee).',
    'Drying at 105 C; burning at 360 C (ASTM F1647), or 400 or 440 C elsewhere. Results of different temperature, depth or treatment of the verdure must not be compared.',
  ],
  inputs: v.strictObject({
    dryMassG: quantity({ meaning: 'Mass after drying', unit: 'g', min: 0.001, max: 100_000 }),
    ashMassG: quantity({ meaning: 'Mass after burning', unit: 'g', min: 0, max: 100_000 }),
  }),
  outputs: v.strictObject({
    organicPercent: figure({ meaning: 'Organic matter, percent of dry mass', unit: '%', symbol: 'OM' }),
  }),
  checks: ORGANIC_LOSS_ON_IGNITION_CHECKS,
  run: ({ dryMassG, ashMassG }) =>
    ashMassG > dryMassG
      ? notDefined(
          'ashMassG',
          'g',
          `the ash weighs ${ashMassG} g but the dry sample only ${dryMassG} g; burning cannot add mass`,
        )
      : ok({ organicPercent: (100 * (dryMassG - ashMassG)) / dryMassG }),
})

/** What a green's profile holds. */
export const ORGANIC_STATE_ITEMS = [organicBulkDensity, organicProfileTotals, organicLossOnIgnition]
