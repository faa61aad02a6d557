import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { LIMITS } from './limits.ts'

/** Nitrogen in one litre of clippings from 100 m2, g/m2: 45 L/100 m2 use about 1 g N/m2 on bent (Woods 2017). */
export const NITROGEN_G_PER_M2_PER_L_PER_100_M2 = 1 / 45

/** `growth.nitrogenUse`: nitrogen by growth potential. */
export const growthNitrogenUse = item({
  name: 'growth.nitrogenUse',
  title: 'Nitrogen that the grass can use',
  words: 'Growth potential times the most nitrogen that the grass uses in a month when everything suits it.',
  formula: 'N = GP x Nmax; bent 3, bermuda 4 g/m2 a month',
  evidence: 'handbook',
  sources: ['woodsAnnualN2015'],
  notes: [
    'Upper bound in print 5 g/m2 a month. An estimate of use, not a rule to feed by: clippings and colour of the green decide.',
  ],
  inputs: v.strictObject({
    potential: quantity({
      meaning: 'Growth potential of the month',
      unit: '1',
      symbol: 'GP',
      min: 0,
      max: 1,
    }),
    monthlyMaxGPerM2: v.optional(
      quantity({ meaning: 'Most nitrogen used in a month', unit: 'g/m2', symbol: 'Nmax', min: 0, max: 20 }),
      LIMITS.bentMonthlyNitrogen.value,
    ),
  }),
  outputs: v.strictObject({
    nitrogenGPerM2: figure({ meaning: 'Nitrogen used in the month', unit: 'g/m2', symbol: 'N' }),
  }),
  checks: [
    {
      id: 'nitrogen-bent-full',
      class: 'published',
      source: 'woodsAnnualN2015',
      where: 'bent at full growth: 3 g/m2 a month (CR094)',
      input: { potential: 1 },
      output: 'nitrogenGPerM2',
      expected: 3,
      tolerance: 1e-9,
    },
    {
      id: 'nitrogen-bent-15c',
      class: 'derived',
      source: 'woodsAnnualN2015',
      where: 'by hand: 0.6615 (15 C) x 3 = 1.9845 g/m2',
      input: { potential: 0.6615, monthlyMaxGPerM2: 3 },
      output: 'nitrogenGPerM2',
      expected: 1.9845,
      tolerance: 1e-9,
    },
  ],
  run: ({ potential, monthlyMaxGPerM2 }) => ok({ nitrogenGPerM2: potential * monthlyMaxGPerM2 }),
})

/** `growth.fromClippings`: nitrogen by the box. */
export const growthFromClippings = item({
  name: 'growth.fromClippings',
  title: 'Nitrogen gone with the clippings',
  words:
    'Clippings carry nitrogen in proportion to their volume: 45 litres from 100 m2 hold about one gram a square metre.',
  formula: 'N = V / 45',
  evidence: 'measured trial',
  sources: ['woodsFlipping2017'],
  notes: [
    'From one printed figure, bent: 45 L/100 m2 use "just over" 1 g N/m2, so the answer is a few percent low. Volumes vary by how wet and fluffed up the clippings are.',
  ],
  inputs: v.strictObject({
    clippingsLPer100M2: quantity({
      meaning: 'Clippings',
      unit: 'L/100 m2',
      symbol: 'V',
      min: 0,
      max: 10_000,
    }),
  }),
  outputs: v.strictObject({ nitrogenGPerM2: figure({ meaning: 'Nitrogen', unit: 'g/m2', symbol: 'N' }) }),
  checks: [
    {
      id: 'CR095',
      class: 'published',
      source: 'woodsFlipping2017',
      where: '45 L/100 m2 of clippings in a month: just over 1 g N/m2, bent',
      input: { clippingsLPer100M2: 45 },
      output: 'nitrogenGPerM2',
      expected: 1,
      tolerance: 0.2,
    },
  ],
  run: ({ clippingsLPer100M2 }) =>
    ok({ nitrogenGPerM2: clippingsLPer100M2 * NITROGEN_G_PER_M2_PER_L_PER_100_M2 }),
})

/** Nitrogen by growth. */
export const GROWTH_NITROGEN_ITEMS = [growthNitrogenUse, growthFromClippings]
