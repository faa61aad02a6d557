import type { Problem, Span } from '../problem.ts'
import { subtractSpans } from '../spans.ts'
import type { Attempt } from './attempts.ts'

/** A stretch in which a green may be in work: dry, of one day's light, and with somebody there. */
export type WorkWindow = {
  /** Its place among all windows. */
  readonly index: number
  readonly day: number
  readonly startMin: number
  readonly endMin: number
  /** Until when a cleared green could stay in work if it may stand a dry night: the next rain, or the end of the horizon. */
  readonly dryUntilMin: number
}

/** Where and how a green is tried. */
export type Try = { readonly window: WorkWindow; readonly attempt: Attempt }

/** End of the last shift that reaches into a span, not past it; the start of the span where none does. */
const crewEnd = (problem: Problem, span: Span): number =>
  problem.people
    .flatMap((person) => person.shifts)
    .filter((shift) => shift.start < span.end && shift.end > span.start)
    .reduce((last, shift) => Math.max(last, Math.min(shift.end, span.end)), span.start)

/** Windows in order of time. */
export const windowsOf = (problem: Problem): readonly WorkWindow[] =>
  problem.days
    .flatMap((day, index) =>
      subtractSpans([{ start: day.startMin, end: day.darkMin }], problem.rain)
        .map((span) => ({
          day: index,
          startMin: span.start,
          endMin: crewEnd(problem, span),
          dryUntilMin: problem.rain.find(({ start }) => start >= span.start)?.start ?? problem.horizonMin,
        }))
        .filter(({ startMin, endMin }) => endMin > startMin),
    )
    .map((window, index) => ({ ...window, index }))
