import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, figureOrNull, quantity, wordsOrNull } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'

const lengthMm = (meaning: string, symbol: string) =>
  quantity({ meaning, unit: 'mm', symbol, min: 1, max: 1000 })

const depth = (meaning: string) => v.optional(quantity({ meaning, unit: 'mm', min: 0, max: 1000 }))

/** `tines.wear`: what a set of tines has left. */
export const tinesWear = item({
  name: 'tines.wear',
  title: 'Wear of a set of tines',
  words:
    'What the tines have lost since they were new, over the greens done with them, is the wear of one green. What may still be lost, over that wear, are the greens left in the set. Measure the shortest row.',
  formula: 'wear = (L0 - L) / n; greens left = (L - Lmin) / wear; short = set depth - measured depth',
  evidence: 'common practice',
  sources: ['commonPractice', 'geometry'],
  notes: [
    'Read in a course report: nearly 50 mm lost in about 11 greens, the leading row worst; another club did some greens with worn tines for want of a third set.',
    'The inside of a hollow tine widens as it wears, so it takes a little more.',
  ],
  inputs: v.strictObject({
    newLengthMm: lengthMm('Length of a tine when new', 'L0'),
    presentLengthMm: lengthMm('Length of the shortest tine now', 'L'),
    wornOutLengthMm: lengthMm('Length at which the set is changed', 'Lmin'),
    greensDone: quantity({
      meaning: 'Greens done with the set',
      unit: '1',
      symbol: 'n',
      min: 0.1,
      max: 10_000,
    }),
    setDepthMm: depth('Depth the machine is set to'),
    measuredDepthMm: depth('Depth measured in the green'),
  }),
  outputs: v.strictObject({
    wornMm: figure({ meaning: 'Length lost', unit: 'mm' }),
    wearMmPerGreen: figure({ meaning: 'Wear of one green', unit: 'mm' }),
    greensLeft: figureOrNull({ meaning: 'Greens left in the set', unit: '1' }),
    greensLeftReason: wordsOrNull('Why there is no number of greens'),
    shortMm: figureOrNull({ meaning: 'Measured depth short of the setting', unit: 'mm' }),
    shortReason: wordsOrNull('Why there is no comparison of depths'),
  }),
  checks: [
    {
      id: 'eleven-greens',
      class: 'published',
      source: 'commonPractice',
      where: 'read in a course report: nearly 2 in (50 mm) in about 11 greens, so about 4.5 mm a green',
      input: { newLengthMm: 150, presentLengthMm: 100, wornOutLengthMm: 95, greensDone: 11 },
      output: 'wearMmPerGreen',
      expected: 4.5,
      tolerance: 0.1,
    },
    {
      id: 'greens-left',
      class: 'derived',
      source: 'geometry',
      where: 'by hand: 10 mm lost in 5 greens is 2 mm a green; 140 - 120 = 20 mm left, so 10 greens',
      input: { newLengthMm: 150, presentLengthMm: 140, wornOutLengthMm: 120, greensDone: 5 },
      output: 'greensLeft',
      expected: 10,
      tolerance: 1e-9,
    },
  ],
  run: ({ newLengthMm, presentLengthMm, wornOutLengthMm, greensDone, setDepthMm, measuredDepthMm }) => {
    if (presentLengthMm > newLengthMm)
      return notDefined(
        'presentLengthMm',
        'mm',
        `the tine is ${presentLengthMm} mm now but was ${newLengthMm} mm when new; it cannot grow`,
      )
    if (wornOutLengthMm > newLengthMm)
      return notDefined(
        'wornOutLengthMm',
        'mm',
        `a set worn out at ${wornOutLengthMm} mm is worn out when new (${newLengthMm} mm)`,
      )
    const wornMm = newLengthMm - presentLengthMm
    const wearMmPerGreen = wornMm / greensDone
    const compared = setDepthMm !== undefined && measuredDepthMm !== undefined
    return ok({
      wornMm,
      wearMmPerGreen,
      greensLeft: wornMm === 0 ? null : Math.max(0, presentLengthMm - wornOutLengthMm) / wearMmPerGreen,
      greensLeftReason: wornMm === 0 ? 'the tines have not lost any length yet' : null,
      shortMm: compared ? setDepthMm - measuredDepthMm : null,
      shortReason: compared ? null : 'give setDepthMm and measuredDepthMm to compare them',
    })
  },
})
