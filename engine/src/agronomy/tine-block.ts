import * as v from 'valibot'
import { notDefined } from '../catalogue/not-defined.ts'
import { item } from '../catalogue/item.ts'
import { count, figure, quantity } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { holeAreaMm2, volumeLPerM2 } from './holes.ts'
import { depthMm, holeDiameterMm, MM2_PER_M2 } from './pattern.ts'

/** `tining.mixedBlock`: several tine sizes in one block. */
export const tiningMixedBlock = item({
  name: 'tining.mixedBlock',
  title: 'Surface opened by a block of mixed tines',
  words:
    'Add up the hole areas of every tine in the block and divide by the ground that one stroke owns: the width of the block times the step forward.',
  formula: 'p = sum(k pi d^2 / 4) / (W L); N = 10^6 sum(k) / (W L); V = p h',
  evidence: 'handbook',
  sources: ['geometry', 'woodsCoreAeration2009'],
  notes: ['The width is the pitch from block to block over the machine, not the steel alone.'],
  inputs: v.strictObject({
    tines: v.pipe(
      v.array(
        v.strictObject({
          holeDiameterMm,
          count: count({ meaning: 'Tines of this size in the block', symbol: 'k', min: 1, max: 500 }),
        }),
      ),
      v.minLength(1),
      v.maxLength(50),
      v.description('Tine sizes in the block'),
    ),
    blockWidthMm: quantity({
      meaning: 'Width that one block owns',
      unit: 'mm',
      symbol: 'W',
      min: 10,
      max: 5000,
    }),
    stepMm: quantity({ meaning: 'Step forward between strokes', unit: 'mm', symbol: 'L', min: 5, max: 1000 }),
    depthMm,
  }),
  outputs: v.strictObject({
    areaShareOnePass: figure({ meaning: 'Share of the surface opened by one pass', unit: '1', symbol: 'p' }),
    holesPerM2: figure({ meaning: 'Holes per square metre', unit: '1/m2', symbol: 'N' }),
    volumeLPerM2: figure({ meaning: 'Volume of the holes', unit: 'L/m2', symbol: 'V' }),
  }),
  checks: [
    {
      id: 'block-one-size',
      class: 'published',
      source: 'courseReport2011',
      where: '0.5 in on 1.5 x 1.33 in is 9.8 % (row CR015): two such tines in a block 3 in wide',
      input: {
        tines: [{ holeDiameterMm: 12.7, count: 2 }],
        blockWidthMm: 76.2,
        stepMm: 33.782,
        depthMm: 70,
      },
      output: 'areaShareOnePass',
      factor: 100,
      expected: 9.8,
      tolerance: 0.1,
    },
    {
      id: 'block-mixed',
      class: 'derived',
      source: 'geometry',
      where:
        'by hand: 5 x 71.256 + 5 x 31.669 = 514.62 mm2 over 190 x 50 = 9500 mm2 (five 3/8 in and five 1/4 in)',
      input: {
        tines: [
          { holeDiameterMm: 9.525, count: 5 },
          { holeDiameterMm: 6.35, count: 5 },
        ],
        blockWidthMm: 190,
        stepMm: 50,
        depthMm: 50,
      },
      output: 'areaShareOnePass',
      factor: 100,
      expected: 5.417,
      tolerance: 0.001,
    },
    {
      id: 'block-mixed-volume',
      class: 'derived',
      source: 'geometry',
      where: 'by hand: 5.417 % of 50 mm is 2.7086 L/m2',
      input: {
        tines: [
          { holeDiameterMm: 9.525, count: 5 },
          { holeDiameterMm: 6.35, count: 5 },
        ],
        blockWidthMm: 190,
        stepMm: 50,
        depthMm: 50,
      },
      output: 'volumeLPerM2',
      expected: 2.7086,
      tolerance: 0.0005,
    },
  ],
  run: ({ tines, blockWidthMm, stepMm, depthMm }) => {
    const groundMm2 = blockWidthMm * stepMm
    const openMm2 = tines.reduce((sum, tine) => sum + tine.count * holeAreaMm2(tine.holeDiameterMm), 0)
    if (openMm2 > groundMm2)
      return notDefined(
        'tines',
        'mm',
        `the tines open ${Math.round(openMm2)} mm2 but one stroke owns only ${Math.round(groundMm2)} mm2; widen blockWidthMm or stepMm`,
      )
    const share = openMm2 / groundMm2
    return ok({
      areaShareOnePass: share,
      holesPerM2: (tines.reduce((sum, tine) => sum + tine.count, 0) * MM2_PER_M2) / groundMm2,
      volumeLPerM2: volumeLPerM2(share, depthMm),
    })
  },
})
