import { chainMarks, type ChainMarks } from '../chain.ts'
import { OPERATIONS, type Operation } from '../operations.ts'
import type { Problem, ProblemGreen, ProblemStep, Span } from '../problem.ts'
import { intersectSpans, subtractSpans } from '../spans.ts'

/** A stretch in which a green may be in work: dry, and of one day's light. */
export type WorkWindow = {
  readonly day: number
  readonly span: Span
  /** Nobody works in the window after this: the end of the last shift that reaches into it, or of the window. */
  readonly crewEnd: number
  readonly workable: WorkableSpans
}

/** When each operation may be worked inside some stretch. */
export type WorkableSpans = ReadonlyMap<Operation, readonly Span[]>

/** A step with what the search asks of it again and again. */
export type GroundStep = {
  readonly step: ProblemStep
  /** Machines (indices) that can do it, with their minutes. */
  readonly choices: readonly { readonly machine: number; readonly minutes: number }[]
  /** People (indices) trained for it. */
  readonly skilled: readonly number[]
}

/** A green with its chain's marks. */
export type GroundGreen = {
  readonly steps: readonly GroundStep[]
  readonly marks: ChainMarks
  /** Least minutes from first tine to finish, if every machine and person stood waiting and sand dried at once. */
  readonly leastMin: number
}

/** What can be worked out once for a problem and serves every schedule. */
export type Ground = {
  readonly problem: Problem
  readonly windows: readonly WorkWindow[]
  /** Workable spans of whole days, for steps that no window binds. */
  readonly days: readonly WorkableSpans[]
  readonly greens: readonly GroundGreen[]
}

const workableIn = (problem: Problem, span: Span): WorkableSpans =>
  new Map(
    OPERATIONS.map((operation) => [operation, intersectSpans(problem.workable.get(operation) ?? [], [span])]),
  )

/** End of the last shift that reaches into a span, not past it; the start of the span where none does. */
const crewEnd = (problem: Problem, span: Span): number =>
  problem.people
    .flatMap((person) => person.shifts)
    .filter((shift) => shift.start < span.end && shift.end > span.start)
    .reduce((last, shift) => Math.max(last, Math.min(shift.end, span.end)), span.start)

const leastMin = (green: ProblemGreen, marks: ChainMarks): number =>
  green.steps
    .slice(marks.open, marks.finish + 1)
    .reduce(
      (sum, step, i) => sum + Math.min(...step.minutesByMachine.values()) + (i === 0 ? 0 : step.lagMin),
      0,
    )

/** Prepares a problem for the search. */
export const groundOf = (problem: Problem): Ground => {
  const skilled = new Map(
    OPERATIONS.map((operation) => [
      operation,
      problem.people.flatMap((person, index) => (person.skills.has(operation) ? [index] : [])),
    ]),
  )
  const choices = (step: ProblemStep): GroundStep['choices'] =>
    problem.machines.flatMap((machine, index) => {
      const minutes = step.minutesByMachine.get(machine.id)
      return minutes === undefined ? [] : [{ machine: index, minutes }]
    })
  return {
    problem,
    windows: problem.days.flatMap((day, index) =>
      subtractSpans([{ start: day.startMin, end: day.darkMin }], problem.rain).map((span) => ({
        day: index,
        span,
        crewEnd: crewEnd(problem, span),
        workable: workableIn(problem, span),
      })),
    ),
    days: problem.days.map((day) => workableIn(problem, { start: day.startMin, end: day.endMin })),
    greens: problem.greens.map((green) => {
      const marks = chainMarks(green)
      const steps = green.steps.map((step) => ({
        step,
        choices: choices(step),
        skilled: skilled.get(step.operation) ?? [],
      }))
      return { steps, marks, leastMin: leastMin(green, marks) }
    }),
  }
}
