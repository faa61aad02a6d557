import type { ChainMarks } from '../chain.ts'
import { dryFrom } from '../dried.ts'
import type { Problem, ProblemGreen, ProblemStep, Span } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { WorkWindow } from './windows.ts'

/** Latest start of a stretch of `minutes` that is over by `end` and lies in one of the spans; -1 where there is none. */
const lastFit = (spans: readonly Span[], end: number, minutes: number): number => {
  for (let i = spans.length - 1; i >= 0; i--) {
    const span = spans[i]
    if (span === undefined) continue
    const start = Math.min(span.end, end) - minutes
    if (start >= span.start) return start
  }
  return -1
}

/** Latest minute from which sand dries by `by`; -1 where it never does. Sand laid later is never dry sooner, so the halves can be searched. */
const lastLaid = (driedMm: Float64Array, by: number, needMm: number): number => {
  let low = -1
  let high = by
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (dryFrom(driedMm, middle, needMm) <= by) low = middle
    else high = middle - 1
  }
  return low
}

const leastOf = (step: ProblemStep): number => Math.min(...step.minutesByMachine.values())

/** By when each step of a green must be over so that all steps up to the finish can still be done in a window; -1 where they can't. Steps before and after are not bound. */
const deadlinesOf = (
  problem: Problem,
  green: ProblemGreen,
  marks: ChainMarks,
  window: WorkWindow,
): readonly number[] => {
  const latest = green.steps.map(() => NEVER)
  let end = window.endMin
  let dryBy: { readonly start: number; readonly needMm: number } | null = null
  for (let i = marks.finish; i >= 0; i--) {
    const step = green.steps[i]
    if (step === undefined) continue
    if (dryBy !== null && step.operation === 'dress') {
      end = Math.min(end, lastLaid(problem.driedMm, dryBy.start, dryBy.needMm))
      dryBy = null
    }
    latest[i] = end
    const start = lastFit(problem.workable.get(step.operation) ?? [], end, leastOf(step))
    if (step.dryNeedMm > 0) dryBy = { start, needMm: step.dryNeedMm }
    const isImpossible = start < window.startMin || (step.nextDay && i > marks.open)
    end = isImpossible && i >= marks.open ? -1 : start - step.lagMin
  }
  return latest
}

/** Deadlines of all steps in each window: row `window * steps`, for greens that are finished in the window in which they are opened. */
export const deadlinesByWindow = (
  problem: Problem,
  marks: readonly ChainMarks[],
  windows: readonly WorkWindow[],
): Int32Array =>
  Int32Array.from(
    windows.flatMap((window) =>
      problem.greens.flatMap((green, index) => {
        const own = marks[index]
        return own === undefined ? [] : deadlinesOf(problem, green, own, window)
      }),
    ),
  )
