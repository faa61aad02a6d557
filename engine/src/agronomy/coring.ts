import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { volumeLPerM2 } from './holes.ts'
import { layersSchema, massesTo, reachDepth, scaleMasses, type Layer, type Masses } from './layers.ts'
import { areaM2, coreDiameterMm, depthMm, passes, spacing } from './pattern.ts'
import { LAYERS_TO_80_MM } from './published-profile.ts'
import { CORING_REMOVAL_CHECKS } from './removal-checks.ts'
import { openingOf } from './spacing.ts'

/** Dry mass and organic matter that leave with a share (0 to 1) of the profile down to a depth (mm), g/m2 of green. */
export const removedMasses = (layers: readonly Layer[], depthMm: number, share: number): Masses =>
  scaleMasses(massesTo(layers, depthMm), share)

/** `coring.removal`: what hollow tines take out of the green. */
export const coringRemoval = item({
  name: 'coring.removal',
  title: 'What the cores take out',
  words:
    'The share of surface inside the tines times the depth is the volume of the cores. Each layer of the profile gives its mass by its own density, and its organic matter by its own percentage.',
  formula:
    'V = n p h, p = N pi dc^2 / (4 x 10^6); m = n p sum(t rho(OM)); OM out = n p sum(t rho(OM) OM / 100)',
  evidence: 'handbook',
  sources: ['woodsReduction2021', 'woodsCommonPractice2021'],
  notes: [
    'Use the inside diameter of the tine: the rest of the hole is pressed aside and stays.',
    'Organic matter taken out is not a lower percentage: cores leave with their sand, so the percentage of what stays is the same (Woods 2021). The sand that fills the holes lowers it.',
    'Several passes add up.',
  ],
  inputs: v.strictObject({
    coreDiameterMm,
    ...spacing,
    depthMm,
    layers: layersSchema,
    passes,
    areaM2: v.optional(areaM2),
  }),
  outputs: v.strictObject({
    volumeLPerM2: figure({ meaning: 'Volume of the cores', unit: 'L/m2', symbol: 'V' }),
    dryMassGPerM2: figure({ meaning: 'Dry mass of the cores', unit: 'g/m2', symbol: 'm' }),
    organicGPerM2: figure({ meaning: 'Organic matter in the cores', unit: 'g/m2' }),
    massPerGreenT: v.optional(figure({ meaning: 'Dry mass of the cores of the green', unit: 't' })),
  }),
  checks: [
    ...CORING_REMOVAL_CHECKS,
    {
      id: 'core-organic',
      class: 'published',
      source: 'woodsReduction2021',
      where: 'organic matter in these cores: 139 g',
      input: { coreDiameterMm: 12, acrossMm: 50, alongMm: 50, depthMm: 70, layers: LAYERS_TO_80_MM },
      output: 'organicGPerM2',
      expected: 139,
      tolerance: 0.5,
    },
    {
      id: 'core-green',
      class: 'derived',
      source: 'woodsReduction2021',
      where: '4092 g/m2 on 500 m2 is 2.046 t',
      input: {
        coreDiameterMm: 12,
        acrossMm: 50,
        alongMm: 50,
        depthMm: 70,
        layers: LAYERS_TO_80_MM,
        areaM2: 500,
      },
      output: 'massPerGreenT',
      expected: 2.046,
      tolerance: 0.001,
    },
  ],
  run: (input) => {
    const opening = openingOf(input, input.coreDiameterMm, 'coreDiameterMm')
    if (!opening.ok) return opening
    const reach = reachDepth(input.layers, input.depthMm)
    if (!reach.ok) return reach
    const share = opening.value.share * input.passes
    const removed = removedMasses(input.layers, input.depthMm, share)
    const perGreen =
      input.areaM2 === undefined ? {} : { massPerGreenT: (removed.dryMassGPerM2 * input.areaM2) / 1e6 }
    return ok({ volumeLPerM2: volumeLPerM2(share, input.depthMm), ...removed, ...perGreen })
  },
})
