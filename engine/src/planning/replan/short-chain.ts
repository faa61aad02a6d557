import type { Operation } from '../operations.ts'
import type { ProblemGreen, ProblemStep } from '../problem.ts'
import type { ChainMarks } from '../chain.ts'

/** What is done with a green before the rain. Closed. */
export const BAIL_MODES = ['finishAll', 'finishShort', 'clearOnly', 'leave'] as const

/** What is done with a green before the rain: the whole chain; the chain without what may be skipped; only what clears it; nothing more. */
export type BailMode = (typeof BAIL_MODES)[number]

/**
 * Coverings that may be skipped before rain, from which pass on. Common practice, no source: a green cut or dragged once instead of twice, scarified less, and not rolled, is still a
 * finished green; one caught with cores or sand lying is not.
 */
export const SKIPPABLE_FROM_PASS: Readonly<Partial<Record<Operation, number>>> = {
  scarify: 1,
  cut: 1,
  dragIn: 2,
  roll: 1,
  feed: 1,
  seed: 1,
  water: 1,
}

const maySkip = (step: ProblemStep): boolean => {
  const from = SKIPPABLE_FROM_PASS[step.operation]
  return from !== undefined && step.pass >= from && !step.effects.includes('opens')
}

/** A green with the steps that a mode leaves it, and the steps that it skips. The first `done` steps always stay. */
export type Shortened = { readonly green: ProblemGreen; readonly skipped: readonly ProblemStep[] }

/** Cuts a chain to a mode. What a skipped step would have done to the work state, the last step before it does. */
export const shortened = (
  green: ProblemGreen,
  marks: ChainMarks,
  done: number,
  mode: BailMode,
): Shortened => {
  const last = mode === 'clearOnly' ? marks.clear : mode === 'leave' ? done - 1 : marks.finish
  const kept: ProblemStep[] = []
  const skipped: ProblemStep[] = []
  for (const [index, step] of green.steps.entries()) {
    const isBehind = index > Math.max(last, done - 1)
    if (index >= done && (isBehind || (mode !== 'finishAll' && maySkip(step)))) {
      if (index <= marks.finish) skipped.push(step)
      const before = kept.at(-1)
      if (before !== undefined && !isBehind)
        kept[kept.length - 1] = { ...before, effects: [...new Set([...before.effects, ...step.effects])] }
      continue
    }
    kept.push(step)
  }
  return { green: { ...green, steps: kept }, skipped }
}
