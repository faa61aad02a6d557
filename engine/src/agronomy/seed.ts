import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'

const part = (meaning: string) => v.optional(quantity({ meaning, unit: '%', min: 1, max: 100 }), 100)

/** `seed.rate`: seed by rate or by mass. */
export const seedRate = item({
  name: 'seed.rate',
  title: 'Seed for an area',
  words:
    'Rate times area is the seed to buy, or seed over area the rate it makes. Purity times germination of the bag is the part that can come up.',
  formula: 'kg = g/m2 x S / 1000; live = purity x germination',
  evidence: 'common practice',
  sources: ['commonPractice', 'geometry'],
  notes: [
    'Do not seed just before dressing and brushing. Keep the surface moist two to three weeks (common practice).',
  ],
  inputs: v.strictObject({
    areaM2: quantity({ meaning: 'Area to seed', unit: 'm2', symbol: 'S', min: 1, max: 1e6 }),
    seedKg: v.optional(quantity({ meaning: 'Seed in hand', unit: 'kg', min: 0, max: 100_000 })),
    rateGPerM2: v.optional(quantity({ meaning: 'Rate wanted', unit: 'g/m2', min: 0, max: 1000 })),
    purityPercent: part('Purity on the bag'),
    germinationPercent: part('Germination on the bag'),
  }),
  outputs: v.strictObject({
    seedKg: figure({ meaning: 'Seed', unit: 'kg' }),
    rateGPerM2: figure({ meaning: 'Rate', unit: 'g/m2' }),
    liveSeedKg: figure({ meaning: 'Seed that can come up', unit: 'kg' }),
    liveRateGPerM2: figure({ meaning: 'Rate of seed that can come up', unit: 'g/m2' }),
  }),
  checks: [
    {
      id: 'whole-course-bent',
      class: 'derived',
      source: 'commonPractice',
      where: 'read: 60 kg of bent on 18 greens; 0.81 ha of greens make it 7.4 g/m2',
      input: { seedKg: 60, areaM2: 8100 },
      output: 'rateGPerM2',
      expected: 7.4,
      tolerance: 0.05,
    },
    {
      id: 'live-seed',
      class: 'derived',
      source: 'geometry',
      where: 'by hand: 500 m2 x 8 g/m2 = 4 kg; x 0.98 x 0.9 = 3.528 kg',
      input: { rateGPerM2: 8, areaM2: 500, purityPercent: 98, germinationPercent: 90 },
      output: 'liveSeedKg',
      expected: 3.528,
      tolerance: 1e-9,
    },
  ],
  run: ({ areaM2, seedKg, rateGPerM2, purityPercent, germinationPercent }) => {
    if ((seedKg === undefined) === (rateGPerM2 === undefined))
      return notDefined(
        'rateGPerM2',
        'g/m2',
        'give either rateGPerM2, to learn the seed, or seedKg, to learn the rate',
      )
    const kg = seedKg ?? ((rateGPerM2 ?? 0) * areaM2) / 1000
    const rate = rateGPerM2 ?? (1000 * kg) / areaM2
    const liveShare = (purityPercent * germinationPercent) / 10_000
    return ok({ seedKg: kg, rateGPerM2: rate, liveSeedKg: kg * liveShare, liveRateGPerM2: rate * liveShare })
  },
})
