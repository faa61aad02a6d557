import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { choice, figure } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { volumeLPerM2 } from './holes.ts'
import { bottomMm, layersSchema, massesTo, percentOf, reachDepth } from './layers.ts'
import { ORGANIC_AFTER_CORING_CHECKS } from './organic-checks.ts'
import { coreDiameterMm, depthMm, holeDiameterMm, spacing } from './pattern.ts'
import { LAYERS_TO_70_MM } from './published-profile.ts'
import { percentAfterSolidAndSand, percentsAfterCoring, REFILLS } from './refill.ts'
import { openingOf } from './spacing.ts'

const layersAfter = v.array(
  v.strictObject({
    fromMm: figure({ meaning: 'Top of the layer', unit: 'mm' }),
    toMm: figure({ meaning: 'Bottom of the layer', unit: 'mm' }),
    organicPercent: figure({ meaning: 'Organic matter of the layer afterwards', unit: '%' }),
  }),
)

/** `organic.afterCoring`: what coring, with or without sand, does to the percentage. */
export const organicAfterCoring = item({
  name: 'organic.afterCoring',
  title: 'Organic matter after coring',
  words:
    'Cores leave with their sand and their organic matter. Filled with sand, the holes dilute what stays. Left open, the percentage stays as it was. When they close in from the side, the surface sinks and the sample reaches deeper into cleaner material.',
  formula:
    "each layer: m' = (1 - p) t rho(OM) + p t 1560 (sand), (1 - p) t rho(OM) (none), or the same windows over the sunken column (collapse); OM' = 100 organic / m'",
  evidence: 'measured trial',
  sources: ['woodsReduction2021', 'woodsCommonPractice2021'],
  notes: [
    'It is the sand that dilutes: cores without sand leave 3.4 % at 3.4 %, with sand 3.2 %.',
    'The hole is taken as wide as the core; what the wall of the tine presses aside stays in the layer.',
    'Collapse: the lost height is made up from below with material like the lowest layer.',
  ],
  inputs: v.strictObject({
    layers: layersSchema,
    coreDiameterMm,
    ...spacing,
    depthMm,
    refill: choice('What becomes of the holes', REFILLS),
  }),
  outputs: v.strictObject({
    organicPercent: figure({ meaning: 'Organic matter of the whole afterwards', unit: '%', symbol: "OM'" }),
    organicPercentBefore: figure({ meaning: 'Organic matter of the whole before', unit: '%', symbol: 'OM' }),
    layers: layersAfter,
  }),
  checks: ORGANIC_AFTER_CORING_CHECKS,
  run: ({ layers, refill, depthMm, ...tine }) => {
    const opening = openingOf(tine, tine.coreDiameterMm, 'coreDiameterMm')
    if (!opening.ok) return opening
    const reach = reachDepth(layers, depthMm)
    if (!reach.ok) return reach
    const after = percentsAfterCoring(layers, { share: opening.value.share, depthMm }, refill)
    return ok({
      organicPercent: after.organicPercent,
      organicPercentBefore: percentOf(massesTo(layers, bottomMm(layers))),
      layers: [...after.layers],
    })
  },
})

/** `organic.afterSolidTines`: solid tines and sand. */
export const organicAfterSolidTines = item({
  name: 'organic.afterSolidTines',
  title: 'Organic matter after solid tines and sand',
  words:
    'Solid tines take nothing out. The sand that fills the holes makes the profile taller, so a sample of the same depth leaves out as much of the lowest layer.',
  formula: "s = p h; OM' = 100 organic(H - s) / (m(H - s) + 1560 s), H = depth of the profile",
  evidence: 'measured trial',
  sources: ['woodsReduction2021'],
  notes: ['Holes are taken as filled to the full; with a smaller fill the change is smaller.'],
  inputs: v.strictObject({ layers: layersSchema, holeDiameterMm, ...spacing, depthMm }),
  outputs: v.strictObject({
    organicPercent: figure({ meaning: 'Organic matter of the whole afterwards', unit: '%', symbol: "OM'" }),
    sandMm: figure({ meaning: 'Sand in the holes', unit: 'mm', symbol: 's' }),
  }),
  checks: [
    {
      id: 'solid-sand',
      class: 'published',
      source: 'woodsReduction2021',
      where: 'solid tines 12 mm at 50 x 50 mm, 70 mm deep, filled: 3.312 %',
      input: { layers: LAYERS_TO_70_MM, holeDiameterMm: 12, acrossMm: 50, alongMm: 50, depthMm: 70 },
      output: 'organicPercent',
      expected: 3.312,
      tolerance: 0.0006,
    },
  ],
  run: ({ layers, depthMm, ...tine }) => {
    const opening = openingOf(tine, tine.holeDiameterMm, 'holeDiameterMm')
    if (!opening.ok) return opening
    const reach = reachDepth(layers, depthMm)
    if (!reach.ok) return reach
    const sandMm = volumeLPerM2(opening.value.share, depthMm)
    if (sandMm >= bottomMm(layers))
      return notDefined(
        'depthMm',
        'mm',
        `the sand in the holes (${sandMm.toFixed(1)} mm) is as high as the profile`,
      )
    return ok({ organicPercent: percentAfterSolidAndSand(layers, sandMm), sandMm })
  },
})

/** What tines do to organic matter. */
export const ORGANIC_CORING_ITEMS = [organicAfterCoring, organicAfterSolidTines]
