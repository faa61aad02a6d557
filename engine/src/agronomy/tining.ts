import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure } from '../catalogue/quantity.ts'
import { fail, ok } from '../result.ts'
import { holeDiameterMm, MM2_PER_M2, passes, spacing } from './pattern.ts'
import { holesPerM2Of } from './spacing.ts'

/** Area of one round hole, mm2. `A = pi d^2 / 4` */
export const holeAreaMm2 = (diameterMm: number): number => (Math.PI * diameterMm * diameterMm) / 4

/** Share touched by several passes whose holes fall at random to each other: `1 - (1 - p)^n` (Woods 2009 sums; geometry joins). */
export const unionShare = (shares: readonly number[]): number =>
  1 - shares.reduce((left, share) => left * (1 - share), 1)

/** `tining.areaShare`: how much of the surface the holes take. */
export const tiningAreaShare = item({
  name: 'tining.areaShare',
  title: 'Surface opened by tines',
  words:
    'The area of one hole times the holes in a square metre. Programmes add up the passes; holes of a second pass partly fall into those of the first, so the surface really touched is a little less. Both are shown.',
  formula: 'p = N pi d^2 / (4 x 10^6), N = 10^6 / (a b); summed n p; union 1 - (1 - p)^n',
  evidence: 'handbook',
  sources: ['woodsCoreAeration2009'],
  inputs: v.object({ holeDiameterMm, ...spacing, passes }),
  outputs: v.object({
    areaShareOnePass: figure({ meaning: 'Share of the surface opened by one pass', unit: '1', symbol: 'p' }),
    areaShareSummed: figure({ meaning: 'Shares of all passes added up', unit: '1' }),
    areaShareUnion: figure({ meaning: 'Share of the surface touched at least once', unit: '1' }),
    holesPerM2: figure({ meaning: 'Holes per square metre in one pass', unit: '1/m2', symbol: 'N' }),
  }),
  checks: [
    {
      id: 'CR001',
      class: 'published',
      source: 'woodsCoreAeration2009',
      where: 'table of surface affected: 10 mm on 50 x 50 mm',
      input: { holeDiameterMm: 10, acrossMm: 50, alongMm: 50 },
      output: 'areaShareOnePass',
      factor: 100,
      expected: 3.1,
      tolerance: 0.05,
    },
  ],
  run: (input) => {
    const holes = holesPerM2Of(input)
    if (!holes.ok) return holes
    const share = (holes.value * holeAreaMm2(input.holeDiameterMm)) / MM2_PER_M2
    if (share > 1)
      return fail({
        type: 'notDefined',
        field: 'holeDiameterMm',
        unit: 'mm',
        reason: `holes of ${input.holeDiameterMm} mm at ${Math.round(holes.value)} a square metre overlap each other`,
      })
    return ok({
      areaShareOnePass: share,
      areaShareSummed: share * input.passes,
      areaShareUnion: unionShare(Array.from({ length: input.passes }, () => share)),
      holesPerM2: holes.value,
    })
  },
})

/** All calculations of this file. */
export const TINING_ITEMS = [tiningAreaShare]
