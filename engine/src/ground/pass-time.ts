import { assert } from '../assert.ts'
import { bestHeading } from './best-heading.ts'
import { polygonOf, type Shape } from './ellipse.ts'
import type { PassSettings } from './pass-settings.ts'

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

/**
 * Net time of one pass at its best heading: `(run length / speed + turns x turn time) / 60`, plus ways between pieces of a green that do
 * not adjoin. Filling, emptying and the way to the green are not in it. Throws when an input is out of its range (callers check what
 * people type).
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
  const { shape, ...machine } = input
  const settings: PassSettings = { ...machine, turnRadiusM: 0, turnStyle: 'lift', order: 'backAndForth' }
  const best = bestHeading(polygonOf(shape), settings)
  const pass = best.ok ? best.value.passes[0] : undefined
  assert(pass !== undefined, 'without bans there is always a heading')
  return { runs: pass.runs.length, runLengthM: pass.runLengthM, turns: pass.turns, timeMin: pass.timeMin }
}
