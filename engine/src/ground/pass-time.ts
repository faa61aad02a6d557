import { assert } from '../assert.ts'
import { polygonOf, type Shape } from './ellipse.ts'
import { insetRings } from './inset.ts'
import { ringLengthM, ringsOf } from './polygon.ts'
import { stripRuns, type StripTask } from './strips.ts'

/** What one pass of a machine over one green needs to be timed. */
export type PassTimeInput = {
  /** A checked outline, or an area with or without spans (worked on an ellipse, so approximate). */
  readonly shape: Shape
  /** Working width, m, above 0. */
  readonly widthM: number
  /** Overlap of neighbouring runs, m, from 0 to under the width. */
  readonly overlapM: number
  /** Working speed, m/s, above 0. */
  readonly speedMPerS: number
  /** Time of one lift, turn and set-down, s, 0 or more. */
  readonly turnS: number
  /** Laps round the edge before the straight runs, 0 or more. */
  readonly laps: number
}

/** One pass, timed: runs (laps count as runs), their length, the turns between them, net working time. */
export type PassTime = {
  readonly runs: number
  readonly runLengthM: number
  readonly turns: number
  readonly timeMin: number
}

const HEADING_STEP_DEG = 15
const SECONDS_PER_MINUTE = 60

const timed = (lengthsM: readonly number[], input: PassTimeInput): PassTime => {
  const runLengthM = lengthsM.reduce((sum, lengthM) => sum + lengthM, 0)
  const turns = Math.max(0, lengthsM.length - 1)
  const timeMin = (runLengthM / input.speedMPerS + turns * input.turnS) / SECONDS_PER_MINUTE
  return { runs: lengthsM.length, runLengthM, turns, timeMin }
}

/**
 * Net time of one pass: `(run length / speed + turns x turn time) / 60`, at the best of a few headings. Filling, emptying and the way
 * to the green are not in it. Throws when an input is out of its range (callers check what people type).
 */
export const passTime = (input: PassTimeInput): PassTime => {
  assert(
    input.widthM > 0 && input.overlapM >= 0 && input.overlapM < input.widthM,
    'overlap lies under the width',
  )
  assert(
    input.speedMPerS > 0 && input.turnS >= 0 && input.laps >= 0,
    'speed, turn time and laps are in range',
  )
  const rings = ringsOf(polygonOf(input.shape))
  const stepM = input.widthM - input.overlapM
  const lapLengthsM = Array.from({ length: input.laps }, (_, lap) =>
    insetRings(rings, lap * stepM + input.widthM / 2).map(ringLengthM),
  ).flat()
  const [outer, ...blocked] = rings
  const cover = input.laps > 0 ? insetRings(rings, input.laps * stepM) : outer === undefined ? [] : [outer]
  const task: StripTask = { cover, blocked, widthM: input.widthM, overlapM: input.overlapM }
  const options = Array.from({ length: 180 / HEADING_STEP_DEG }, (_, k) => {
    const runs = stripRuns(task, k * HEADING_STEP_DEG)
    return timed([...lapLengthsM, ...runs.map((run) => run.toU - run.fromU)], input)
  })
  return options.reduce((best, option) => (option.timeMin < best.timeMin ? option : best))
}
