import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { areaM2 } from './pattern.ts'
import { standingOf } from './reading-summary.ts'
import { checkedTarget, NO_TARGET, standingOutputs, targetRange } from './target-range.ts'

/** `clippings.volume`: growth by the box. */
export const clippingsVolume = item({
  name: 'clippings.volume',
  title: 'Clipping volume',
  words:
    "What came out of the boxes over the area cut, in the three units of the trade, against the club's own target.",
  formula: 'mL/m2 = 1000 L / S; L/100 m2 = 100 L / S',
  evidence: 'measured trial',
  sources: ['woodsBuckets2018', 'geometry'],
  notes: [
    'Read: median 12 mL/m2 a cut, middle half 6.7 to 22; vigorous 20 to 50; tournament under 10. Read the same greens at the same time of day.',
  ],
  inputs: v.strictObject({
    clippingsL: quantity({ meaning: 'Clippings of one cut', unit: 'L', min: 0, max: 100_000 }),
    areaM2,
    target: targetRange('mL/m2', 10_000),
  }),
  outputs: v.strictObject({
    millilitresPerM2: figure({ meaning: 'Clippings', unit: 'mL/m2' }),
    litresPerM2: figure({ meaning: 'Clippings', unit: 'L/m2' }),
    litresPer100M2: figure({ meaning: 'Clippings', unit: 'L/100 m2' }),
    ...standingOutputs,
  }),
  checks: [
    {
      id: 'month-1.5-a-day',
      class: 'published',
      source: 'woodsFlipping2017',
      where: 'CR096: 1.5 L/100 m2 a day for 30 days is 45 L/100 m2: 225 L from 500 m2',
      input: { clippingsL: 225, areaM2: 500 },
      output: 'litresPer100M2',
      expected: 45,
      tolerance: 1e-9,
    },
    {
      id: 'median-cut',
      class: 'derived',
      source: 'geometry',
      where: 'by hand: 6 L from 500 m2 is 12 mL/m2, the printed median',
      input: { clippingsL: 6, areaM2: 500 },
      output: 'millilitresPerM2',
      expected: 12,
      tolerance: 1e-9,
    },
  ],
  run: ({ clippingsL, areaM2, target }) => {
    const checked = checkedTarget(target, 'mL/m2')
    if (!checked.ok) return checked
    const litresPerM2 = clippingsL / areaM2
    return ok({
      millilitresPerM2: 1000 * litresPerM2,
      litresPerM2,
      litresPer100M2: 100 * litresPerM2,
      standing: target === undefined ? null : standingOf(1000 * litresPerM2, target),
      standingReason: target === undefined ? NO_TARGET : null,
    })
  },
})
