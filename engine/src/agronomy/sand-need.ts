import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { item } from '../catalogue/item.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, figureOrNull, quantity, wordsOrNull } from '../catalogue/quantity.ts'
import { ok, type Result } from '../result.ts'
import { groovesSchema, grooveWork } from './grooves.ts'
import { holeShare, volumeLPerM2 } from './holes.ts'
import { areaM2, depthMm, holeDiameterMm, passes, spacing } from './pattern.ts'
import { loadsOf, sandBandLPerM2, scaleBand, START_FILL_FACTOR } from './sand-band.ts'
import { moisturePercentDryBasis, wetMassOf } from './sand-moisture.ts'
import { SAND_NEED_CHECKS } from './sand-need-checks.ts'
import { bulkDensityKgPerM3 } from './sand-rates.ts'
import { openingOf } from './spacing.ts'

const hole = v.strictObject({
  holeDiameterMm,
  coreDiameterMm: quantity({
    meaning: 'Diameter of the core: the inside of a hollow tine, 0 for a solid one',
    unit: 'mm',
    symbol: 'dc',
    min: 0,
    max: 100,
  }),
  ...spacing,
  depthMm,
  passes,
})

const inputs = v.strictObject({
  areaM2,
  hole: v.pipe(hole, v.description('The holes: both diameters, pattern, depth')),
  grooves: v.optional(v.pipe(groovesSchema, v.description('Grooves of the scarifier'))),
  surfaceMm: quantity({
    meaning: 'Layer of sand that stays on the surface',
    unit: 'mm',
    symbol: 'z',
    min: 0,
    max: 100,
  }),
  workedBackLPerM2: v.optional(
    quantity({ meaning: 'Material worked back in', unit: 'L/m2', symbol: 'b', min: 0, max: 1000 }),
    0,
  ),
  fillFactor: v.optional(
    quantity({ meaning: 'Share of the hole volume that sand fills', unit: '1', symbol: 'f', min: 0, max: 2 }),
    START_FILL_FACTOR,
  ),
  lossPercent: v.optional(
    quantity({
      meaning: 'Sand lost in the yard and on the way, on top of the need',
      unit: '%',
      symbol: 'q',
      min: 0,
      max: 100,
    }),
    0,
  ),
  bulkDensityKgPerM3,
  moisturePercentDryBasis: v.optional(moisturePercentDryBasis, 0),
  hopperT: v.optional(
    quantity({
      meaning: 'What the hopper carries of this sand, as wet as it comes',
      unit: 't',
      min: 0.01,
      max: 100,
    }),
  ),
})

type Hole = v.InferOutput<typeof hole>

/** Volumes of the cores and of the holes, L/m2. */
const holeVolumes = (
  tine: Hole,
): Result<{ readonly coreVolumeLPerM2: number; readonly holeVolumeLPerM2: number }, CalculationError> => {
  if (tine.coreDiameterMm > tine.holeDiameterMm)
    return notDefined(
      'hole.coreDiameterMm',
      'mm',
      `the core (inside of the tine) is ${tine.coreDiameterMm} mm but the hole (outside) only ${tine.holeDiameterMm} mm; the core is at most as wide as the hole`,
    )
  const opening = openingOf(tine, tine.holeDiameterMm, 'holeDiameterMm', 'hole.')
  if (!opening.ok) return opening
  const { holesPerM2, share } = opening.value
  return ok({
    coreVolumeLPerM2: volumeLPerM2(holeShare(holesPerM2, tine.coreDiameterMm), tine.depthMm) * tine.passes,
    holeVolumeLPerM2: volumeLPerM2(share, tine.depthMm) * tine.passes,
  })
}

/** `sand.need`: tonnes of sand for one green, as a band. */
export const sandNeed = item({
  name: 'sand.need',
  title: 'Sand for a green',
  words:
    "Fill the holes and grooves, add the layer that stays on the surface, take off what is worked back in. Low fills only the room of the cores (inside of the tine), high fills the whole hole (outside), likely fills the club's own part of the hole, 0.85 until tonnes really used say otherwise. Then the area, the loss on the way, and the water in the sand.",
  formula:
    'V = holes + grooves + z - b; holes low = core volume, likely = f x hole volume, high = hole volume; dry t = max(0, V) rho S (1 + q / 100) / 10^6; wet t = dry t (1 + w / 100); loads = wet t / hopper, rounded up',
  evidence: 'common practice',
  sources: ['commonPractice', 'woodsReduction2021', 'geometry'],
  notes: [
    'Inside and outside diameter are both asked for: the hole is wider than the core that leaves it.',
    'Real programmes use more than the holes take: surface film and waste come on top. One course got about 30 % more sand in after solid than after hollow tines.',
    'Where the likely value lies outside low and high (core nearly as wide as its hole, fill factor above 1), the band widens to hold it.',
    'Low, likely and high are dry tonnes; order by dry mass, since damp sand takes 20 to 40 % more room.',
  ],
  inputs,
  outputs: v.strictObject({
    lowT: figure({ meaning: 'Dry sand, low', unit: 't' }),
    likelyT: figure({ meaning: 'Dry sand, likely', unit: 't' }),
    highT: figure({ meaning: 'Dry sand, high', unit: 't' }),
    wetLikelyT: figure({ meaning: 'Likely mass as it comes, with its water', unit: 't' }),
    loads: figureOrNull({ meaning: 'Hopper loads for the likely mass', unit: '1' }),
    loadsReason: wordsOrNull('Why there is no number of loads'),
    likelyLPerM2: figure({ meaning: 'Likely sand on a square metre, loss left out', unit: 'L/m2' }),
  }),
  checks: SAND_NEED_CHECKS,
  run: (input) => {
    const holes = holeVolumes(input.hole)
    if (!holes.ok) return holes
    const grooves = input.grooves === undefined ? undefined : grooveWork(input.grooves, 'grooves.')
    if (grooves?.ok === false) return grooves
    const band = sandBandLPerM2({
      ...holes.value,
      grooveVolumeLPerM2: grooves?.value.volumeLPerM2 ?? 0,
      surfaceMm: input.surfaceMm,
      workedBackLPerM2: input.workedBackLPerM2,
      fillFactor: input.fillFactor,
      lossPercent: input.lossPercent,
    })
    const dryT = scaleBand(band, (input.bulkDensityKgPerM3 * input.areaM2) / 1e6)
    const wetLikelyT = wetMassOf(dryT.likely, input.moisturePercentDryBasis)
    return ok({
      lowT: dryT.low,
      likelyT: dryT.likely,
      highT: dryT.high,
      wetLikelyT,
      loads: input.hopperT === undefined ? null : loadsOf(wetLikelyT, input.hopperT),
      loadsReason: input.hopperT === undefined ? 'hopperT, what the hopper carries, is not given' : null,
      likelyLPerM2: band.likely / (1 + input.lossPercent / 100),
    })
  },
})
