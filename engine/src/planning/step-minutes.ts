import type { Machine } from '../course/course.ts'
import type { Shape } from '../ground/ellipse.ts'
import { passTime, type PassTime, type PassTimeInput } from '../ground/pass-time.ts'
import type { ChainStep } from './prescription.ts'

/** How a pass is timed; the ground's own by default. */
export type PassTimer = (input: PassTimeInput) => Pick<PassTime, 'timeMin'>

const MM_PER_M = 1000
const SECONDS_PER_MINUTE = 60

/** Working speed, m/s. A tine head sets it by its strokes: `v = strokes/min x spacing along / 60`; other machines have their own. */
export const workingSpeedMPerS = (machine: Machine, step: ChainStep): number =>
  machine.strokesPerMin !== undefined && step.tines !== undefined
    ? (machine.strokesPerMin * step.tines.alongMm) / MM_PER_M / SECONDS_PER_MINUTE
    : machine.speedMPerS

/**
 * Whole minutes of one covering of a green by a machine, rounded up; a dresser's covering is shared by its loads, and what is lost on a green
 * (lining up, emptying) is lost with each load.
 */
export const stepMinutes = (
  shape: Shape,
  machine: Machine,
  step: ChainStep,
  loads: number,
  timer: PassTimer = passTime,
): number => {
  const pass = timer({
    shape,
    widthM: machine.widthM,
    overlapM: machine.overlapM,
    speedMPerS: workingSpeedMPerS(machine, step),
    turnS: machine.turnS,
    laps: 0,
  })
  return Math.max(1, Math.ceil(pass.timeMin / Math.max(1, loads) + machine.perGreenMin))
}
