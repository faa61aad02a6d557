import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { choice, figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { organicPercent } from './layers.ts'
import { afterSandByMass, afterSandByVolume, sandToHoldMm, sandToReachMm } from './organic-change.ts'
import { ORGANIC_AFTER_SAND_CHECKS, ORGANIC_SAND_TO_HOLD_CHECKS } from './organic-checks.ts'

const windowMm = quantity({
  meaning: 'Depth of the window that is sampled, from the surface',
  unit: 'mm',
  symbol: 'h',
  min: 1,
  max: 500,
})

/** Organic matter that sand can be reckoned against: above nothing, so that a ratio to it exists. */
const presentPercent = (meaning: string, symbol: string) =>
  quantity({ meaning, unit: '%', symbol, min: 0.1, max: 99 })

/** `organic.afterSand`: what dressing does to the percentage. */
export const organicAfterSand = item({
  name: 'organic.afterSand',
  title: 'Organic matter after dressing',
  words:
    'Sand on top pushes the bottom of the sampled window out. What is left of the old material, and the sand, are weighed together. The quick rule by volume just takes off the share of the window that is now sand.',
  formula: "by mass OM' = (h - s) rho OM / ((h - s) rho + 1.56 s); by volume OM' = OM (1 - s / h)",
  evidence: 'measured trial',
  sources: ['woodsReduction2021', 'woodsDepth2019'],
  notes: [
    'The quick rule understates the fall at high organic matter: 8 % with 1 mm in 20 mm gives 7.6 % by volume and 7.42 % by mass. Use the mass.',
    'Growth between two tests adds organic matter back; this is the dressing alone.',
  ],
  inputs: v.strictObject({
    organicPercent,
    windowMm,
    sandMm: quantity({ meaning: 'Sand put on', unit: 'mm', symbol: 's', min: 0, max: 500 }),
    method: v.optional(choice('By mass, or the quick rule by volume', ['mass', 'volume']), 'mass'),
  }),
  outputs: v.strictObject({
    organicPercent: figure({ meaning: 'Organic matter of the window afterwards', unit: '%', symbol: "OM'" }),
  }),
  checks: ORGANIC_AFTER_SAND_CHECKS,
  run: ({ sandMm, method, ...window }) => {
    if (sandMm > window.windowMm)
      return notDefined(
        'sandMm',
        'mm',
        `${sandMm} mm of sand is more than the window of ${window.windowMm} mm; the window would hold sand alone`,
      )
    return ok({
      organicPercent: method === 'mass' ? afterSandByMass(window, sandMm) : afterSandByVolume(window, sandMm),
    })
  },
})

/** `organic.sandToReach`: sand for a target. */
export const organicSandToReach = item({
  name: 'organic.sandToReach',
  title: 'Sand to reach a target',
  words:
    'The dressing formula turned round: how much sand, all at once, brings the sampled window down to the target.',
  formula: "s = h rho (OM - OM') / (rho (OM - OM') + 1.56 OM')",
  evidence: 'measured trial',
  sources: ['woodsReduction2021'],
  notes: [
    'All at once and without new growth. Over a season the growth comes on top: add the sand that holds the green where it is.',
    'Guides differ: under 6 % in 0-20 mm and under 4 % in 20-40 mm (STRI authors); 4 % or less in thatch of sand greens (Ervin & Nichols); a mean of 7.3 % in 0-20 mm over many greens (Woods). The USGA: no widely accepted ranges.',
  ],
  inputs: v.strictObject({
    fromPercent: presentPercent('Organic matter now', 'OM'),
    toPercent: presentPercent('Organic matter wanted', "OM'"),
    windowMm,
  }),
  outputs: v.strictObject({ sandMm: figure({ meaning: 'Sand needed', unit: 'mm', symbol: 's' }) }),
  checks: (
    [
      [6.7, 6, 1.53, '20 x 1.1079 x 0.7 / (1.1079 x 0.7 + 1.56 x 6) = 15.510 / 10.1355'],
      [8, 6, 3.66, '20 x 1.0489 x 2 / (1.0489 x 2 + 1.56 x 6) = 41.956 / 11.4578'],
      [6, 5, 2.56, '20 x 1.1425 x 1 / (1.1425 + 1.56 x 5) = 22.850 / 8.9425'],
    ] as const
  ).map(([fromPercent, toPercent, expected, hand]) => ({
    id: `reach-${fromPercent}-${toPercent}`,
    class: 'derived' as const,
    source: 'woodsReduction2021' as const,
    where: `by hand from the printed densities: ${hand}`,
    input: { fromPercent, toPercent, windowMm: 20 },
    output: 'sandMm',
    expected,
    tolerance: 0.006,
  })),
  run: ({ fromPercent, toPercent, windowMm }) =>
    toPercent > fromPercent
      ? notDefined(
          'toPercent',
          '%',
          `sand lowers organic matter: toPercent (${toPercent} %) must not be above fromPercent (${fromPercent} %)`,
        )
      : ok({ sandMm: sandToReachMm({ windowMm, organicPercent: fromPercent }, toPercent) }),
})

/** `organic.sandToHold`: sand that keeps up with growth. */
export const organicSandToHold = item({
  name: 'organic.sandToHold',
  title: 'Sand that keeps up with growth',
  words:
    'The more a green grows, the more organic matter it makes. Clippings tell the growth; this much sand holds the percentage where it is.',
  formula: 'd = 0.106 V (100 - OM) / OM',
  evidence: 'measured trial',
  sources: ['woodsRatios2026'],
  notes: [
    "The constant 0.106 is the author's current best estimate. The older rule of 1 mm of sand to 1 L/m2 of clippings is right only at 9.58 % organic matter.",
  ],
  inputs: v.strictObject({
    clippingsLPerM2: quantity({
      meaning: 'Clippings taken off, all cuts together',
      unit: 'L/m2',
      symbol: 'V',
      min: 0,
      max: 1000,
    }),
    organicPercent: presentPercent('Organic matter to hold', 'OM'),
  }),
  outputs: v.strictObject({ sandMm: figure({ meaning: 'Sand needed', unit: 'mm', symbol: 'd' }) }),
  checks: [
    ...ORGANIC_SAND_TO_HOLD_CHECKS,
    {
      id: 'hold-6',
      class: 'derived',
      source: 'woodsRatios2026',
      where: 'by hand: 0.106 x 94 / 6 = 1.6607 mm',
      input: { clippingsLPerM2: 1, organicPercent: 6 },
      output: 'sandMm',
      expected: 1.6607,
      tolerance: 0.0001,
    },
  ],
  run: (input) => ok({ sandMm: sandToHoldMm(input.clippingsLPerM2, input.organicPercent) }),
})

/** What sand does to organic matter. */
export const ORGANIC_SAND_ITEMS = [organicAfterSand, organicSandToReach, organicSandToHold]
