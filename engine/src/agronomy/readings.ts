import * as v from 'valibot'
import { item } from '../catalogue/item.ts'
import { figure, figureOrNull, quantity, wordsOrNull } from '../catalogue/quantity.ts'
import { ok } from '../result.ts'
import { FIRMNESS_CHECKS, MOISTURE_CHECKS, SPEED_CHECKS } from './readings-checks.ts'
import { shareStanding, standingOf, summaryOf, type TargetRange } from './reading-summary.ts'
import { checkedTarget, NO_TARGET, summaryOutputs, targetRange } from './target-range.ts'

/** Metres in a foot (exact). */
export const M_PER_FT = 0.3048

/** Green speed freed from slope, any unit: `2 a b / (a + b)` of the roll one way and the roll back (Brede 1991, from memory). */
export const speedWithoutSlope = (forward: number, back: number): number =>
  (2 * forward * back) / (forward + back)

/** Water (mm) that lifts soil of a depth (mm) from one volumetric moisture to another (percent): `w = z (to - from) / 100`. */
export const waterToLiftMm = (depthMm: number, fromPercent: number, toPercent: number): number =>
  (depthMm * Math.max(0, toPercent - fromPercent)) / 100

const summarised = (readings: readonly number[], target: TargetRange | undefined, unit: string) => {
  const checked = checkedTarget(target, unit)
  if (!checked.ok) return checked
  const summary = summaryOf(readings)
  return ok({
    ...summary,
    insideShare: target === undefined ? null : shareStanding(readings, target, 'inside'),
    unit,
    standing: target === undefined ? null : standingOf(summary.mean, target),
    standingReason: target === undefined ? NO_TARGET : null,
  })
}

const list = <S extends v.GenericSchema>(schema: S, meaning: string) =>
  v.pipe(v.array(schema), v.minLength(1), v.maxLength(1000), v.description(meaning))

const rollM = (meaning: string) => quantity({ meaning, unit: 'm', min: 0.1, max: 10 })

/** `speed.summary`: green speed of a round of readings. */
export const speedSummary = item({
  name: 'speed.summary',
  title: 'Green speed',
  words:
    "At each spot the ball is rolled one way and back; the two rolls together free the speed from the slope. Then the mean, the extremes and the spread, against the club's own target.",
  formula: 'spot = 2 a b / (a + b); mean, extremes, standard deviation of the spots; 1 ft = 0.3048 m',
  evidence: 'handbook',
  sources: ['speedSlope1991', 'atcTenNumbers'],
  notes: [
    'The slope formula is from memory. On the flat it is the plain mean of both rolls.',
    'Place and technique matter: same spots, same way. Read on bent, 328 readings: mostly 7.5 to 10.5 ft. No target fits every club: the club sets its own.',
  ],
  inputs: v.strictObject({
    readings: list(
      v.strictObject({ forwardM: rollM('Mean roll one way'), backM: rollM('Mean roll back') }),
      'Spots',
    ),
    target: targetRange('m', 10),
  }),
  outputs: v.strictObject({
    ...summaryOutputs('m'),
    meanFt: figure({ meaning: 'Mean of the readings', unit: 'ft' }),
  }),
  checks: SPEED_CHECKS,
  run: ({ readings, target }) => {
    const summary = summarised(
      readings.map((r) => speedWithoutSlope(r.forwardM, r.backM)),
      target,
      'm',
    )
    return summary.ok ? ok({ ...summary.value, meanFt: summary.value.mean / M_PER_FT }) : summary
  },
})

/** `firmness.summary`: firmness of a round of readings. */
export const firmnessSummary = item({
  name: 'firmness.summary',
  title: 'Firmness',
  words: "Mean, extremes and spread of the drops of the hammer, against the club's own target.",
  formula: 'mean, extremes, standard deviation',
  evidence: 'common practice',
  sources: ['striSpurs', 'atcTenNumbers', 'commonPractice'],
  notes: [
    'Read: 88 gravities on UK greens whose organic matter is in target, 80 above it; 100 to 120 at one UK course; 87 as the divide of firm and soft on paspalum. Hammer and drop were not stated, so compare only readings of your own hammer.',
    'Firmness is unsteady for weeks after coring.',
  ],
  inputs: v.strictObject({
    readingsGravities: list(
      quantity({ meaning: 'Reading of one drop', unit: 'gravities', min: 0, max: 1000 }),
      'Drops of the hammer',
    ),
    target: targetRange('gravities', 1000),
  }),
  outputs: v.strictObject(summaryOutputs('gravities')),
  checks: FIRMNESS_CHECKS,
  run: ({ readingsGravities, target }) => summarised(readingsGravities, target, 'gravities'),
})

/** Dry and wet parts of a round and the water that the dry spots want. */
const spotsAgainst = (
  readings: readonly number[],
  target: TargetRange | undefined,
  depthMm: number | undefined,
) => {
  if (target === undefined) return { dryShare: null, wetShare: null, waterMm: null, waterReason: NO_TARGET }
  const dry = readings.filter((r) => r < target.low)
  const dryMean = dry.length === 0 ? target.low : summaryOf(dry).mean
  return {
    dryShare: shareStanding(readings, target, 'below'),
    wetShare: shareStanding(readings, target, 'above'),
    waterMm: depthMm === undefined ? null : waterToLiftMm(depthMm, dryMean, target.low),
    waterReason: depthMm === undefined ? 'depthMm, the depth of the reading, is not given' : null,
  }
}

/** `moisture.summary`: soil moisture of a round of readings. */
export const moistureSummary = item({
  name: 'moisture.summary',
  title: 'Soil moisture',
  words:
    'Mean, extremes and spread of the probe, the shares of spots too dry and too wet, and the water that the dry spots want on average to come up to the target.',
  formula: 'water = z (target low - mean of the dry spots) / 100',
  evidence: 'common practice',
  sources: ['commonPractice', 'geometry'],
  notes: [
    'Moisture is by volume, so 1 % of 100 mm of soil is 1 mm of water. Above 45 % in the top 60 mm is normally field capacity (one course report).',
    'No readable source for a target of 15 to 30 % was found: the club sets its own.',
  ],
  inputs: v.strictObject({
    readingsPercent: list(
      quantity({ meaning: 'Volumetric moisture of one spot', unit: '%', min: 0, max: 100 }),
      'Spots',
    ),
    target: targetRange('%', 100),
    depthMm: v.optional(
      quantity({ meaning: 'Depth that the probe reads', unit: 'mm', symbol: 'z', min: 10, max: 500 }),
    ),
  }),
  outputs: v.strictObject({
    ...summaryOutputs('%'),
    dryShare: figureOrNull({ meaning: 'Share of spots below the target', unit: '1' }),
    wetShare: figureOrNull({ meaning: 'Share of spots above the target', unit: '1' }),
    waterMm: figureOrNull({ meaning: 'Water that the dry spots want', unit: 'mm' }),
    waterReason: wordsOrNull('Why there is no amount of water'),
  }),
  checks: MOISTURE_CHECKS,
  run: ({ readingsPercent, target, depthMm }) => {
    const summary = summarised(readingsPercent, target, '%')
    return summary.ok ? ok({ ...summary.value, ...spotsAgainst(readingsPercent, target, depthMm) }) : summary
  },
})

/** Rounds of readings against the club's own targets. */
export const READING_ITEMS = [speedSummary, firmnessSummary, moistureSummary]
