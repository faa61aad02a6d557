import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { unionOfPasses, volumeLPerM2 } from './holes.ts'
import { depthMm, holeDiameterMm, passes, spacing } from './pattern.ts'
import { openingOf } from './spacing.ts'
import { TINING_AREA_SHARE_CHECKS, TINING_HOLE_VOLUME_CHECKS } from './tining-checks.ts'

/** `tining.areaShare`: how much of the surface the holes take. */
export const tiningAreaShare = item({
  name: 'tining.areaShare',
  title: 'Surface opened by tines',
  words:
    'The area of one hole times the holes in a square metre. Programmes add up the passes; holes of a second pass partly fall into those of the first, so the surface really touched is a little less. Both are shown.',
  formula: 'p = N pi d^2 / (4 x 10^6), N = 10^6 / (a b); summed n p; union 1 - (1 - p)^n',
  evidence: 'handbook',
  sources: ['woodsCoreAeration2009', 'tineForum2013', 'geometry'],
  notes: [
    'Use the outside of a tine for the surface it disturbs and the inside of a hollow tine for what it takes out: the same 5/8 in tine at 1.5 in gives 13.6 % or 7.7 %.',
    'Square, rectangular and staggered patterns give the same share, since each hole owns across x along.',
    'Published programmes add the passes (Ervin & Nichols 2010); the union is plain geometry for passes at random to each other. Hold the added number against the 15 to 20 % guide.',
  ],
  inputs: v.strictObject({ holeDiameterMm, ...spacing, passes }),
  outputs: v.strictObject({
    areaShareOnePass: figure({ meaning: 'Share of the surface opened by one pass', unit: '1', symbol: 'p' }),
    areaShareSummed: figure({ meaning: 'Shares of all passes added up', unit: '1' }),
    areaShareUnion: figure({ meaning: 'Share of the surface touched at least once', unit: '1' }),
    holesPerM2: figure({ meaning: 'Holes per square metre in one pass', unit: '1/m2', symbol: 'N' }),
  }),
  checks: TINING_AREA_SHARE_CHECKS,
  run: (input) => {
    const opening = openingOf(input, input.holeDiameterMm, 'holeDiameterMm')
    if (!opening.ok) return opening
    const { share, holesPerM2 } = opening.value
    return ok({
      areaShareOnePass: share,
      areaShareSummed: share * input.passes,
      areaShareUnion: unionOfPasses(share, input.passes),
      holesPerM2,
    })
  },
})

/** `tining.holeVolume`: room in the holes, the same as mm of sand to fill them. */
export const tiningHoleVolume = item({
  name: 'tining.holeVolume',
  title: 'Room in the holes',
  words:
    'Share of surface opened times the depth. One litre on a square metre is one millimetre, so the answer is also the depth of sand that would fill the holes.',
  formula: 'V = n p h; p = N pi d^2 / (4 x 10^6)',
  evidence: 'handbook',
  sources: ['woodsReduction2021', 'woodsCommonPractice2021'],
  notes: [
    'Several passes add up: a hole that falls into an older one digs no new room, so the sum is the most.',
    'Real holes are shallower and narrower than the setting; measure the depth. One course got about 30 % more sand in after solid than after hollow tines.',
  ],
  inputs: v.strictObject({ holeDiameterMm, ...spacing, depthMm, passes }),
  outputs: v.strictObject({
    volumeLPerM2: figure({ meaning: 'Volume of the holes', unit: 'L/m2', symbol: 'V' }),
  }),
  checks: TINING_HOLE_VOLUME_CHECKS,
  run: (input) => {
    const opening = openingOf(input, input.holeDiameterMm, 'holeDiameterMm')
    if (!opening.ok) return opening
    return ok({ volumeLPerM2: volumeLPerM2(opening.value.share, input.depthMm) * input.passes })
  },
})

/** The single-tine calculations. */
export const TINING_ITEMS = [tiningAreaShare, tiningHoleVolume]
