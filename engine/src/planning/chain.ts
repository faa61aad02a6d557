import type { Effect } from './operations.ts'
import type { ProblemGreen } from './problem.ts'

/** Where in a green's steps its work state changes: indices of steps. Every planned green has a step that opens and one that finishes. */
export type ChainMarks = {
  /** Steps before this one may be done days ahead. */
  readonly open: number
  /** From the finish of this step the green is cleared. */
  readonly clear: number
  /** From the finish of this step the green is dressed; equal to `clear` where nothing is dressed. */
  readonly dress: number
  /** From the finish of this step the green is finished; later steps are aftercare. */
  readonly finish: number
}

const lastWith = (green: ProblemGreen, effect: Effect): number =>
  green.steps.findLastIndex((step) => step.effects.includes(effect))

/** The marks of a green's chain. A chain without a clearing step is not cleared until it is finished. */
export const chainMarks = (green: ProblemGreen): ChainMarks => {
  const open = green.steps.findIndex((step) => step.effects.includes('opens'))
  const finish = lastWith(green, 'finishes')
  const clear = lastWith(green, 'clears')
  const cleared = clear === -1 ? finish : clear
  const dress = lastWith(green, 'dresses')
  return { open, clear: cleared, dress: dress === -1 ? cleared : dress, finish }
}
