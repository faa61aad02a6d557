import type { Check } from '../catalogue/item.ts'

const byHand = (
  id: string,
  where: string,
  input: unknown,
  output: string,
  expected: number,
  tolerance = 1e-9,
): Check => ({
  id,
  class: 'derived',
  source: 'geometry',
  where,
  input,
  output,
  expected,
  tolerance,
})

const flat = { readings: [{ forwardM: 3.048, backM: 3.048 }], target: { low: 2.8, high: 3.2 } }
const slope = { readings: [{ forwardM: 4, backM: 2 }] }

/** Rows that `speed.summary` must give back. */
export const SPEED_CHECKS: readonly Check[] = [
  byHand('flat-10-ft', 'on the flat both rolls are the speed: 3.048 m is 10 ft', flat, 'meanFt', 10),
  {
    ...byHand(
      'slope',
      '2 x 4 x 2 / (4 + 2) = 2.6667 m; the plain mean would be 3',
      slope,
      'mean',
      2.6667,
      0.0001,
    ),
    class: 'memory',
    source: 'speedSlope1991',
  },
  byHand('speed-inside', '3.048 m lies inside 2.8 to 3.2', flat, 'insideShare', 1),
]

const drops = { readingsGravities: [80, 88, 96], target: { low: 85, high: 100 } }

/** Rows that `firmness.summary` must give back. */
export const FIRMNESS_CHECKS: readonly Check[] = [
  byHand('firmness-mean', '(80 + 88 + 96) / 3', drops, 'mean', 88),
  byHand('firmness-deviation', 'sqrt((64 + 0 + 64) / 2) = 8', drops, 'deviation', 8),
  byHand('firmness-inside', '88 and 96 of three', drops, 'insideShare', 0.6667, 0.0001),
]

const spots = { readingsPercent: [14, 16, 22, 28, 35], target: { low: 20, high: 30 }, depthMm: 60 }

/** Rows that `moisture.summary` must give back. */
export const MOISTURE_CHECKS: readonly Check[] = [
  byHand('moisture-mean', '(14 + 16 + 22 + 28 + 35) / 5', spots, 'mean', 23),
  byHand('moisture-dry', '14 and 16 of five', spots, 'dryShare', 0.4),
  byHand('moisture-water', '60 mm x (20 - 15) / 100 = 3 mm', spots, 'waterMm', 3),
]
