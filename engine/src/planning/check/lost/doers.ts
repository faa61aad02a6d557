import type { Operation } from '../../operations.ts'
import type { ProblemStep, Span } from '../../problem.ts'
import { intersectSpans } from '../../spans.ts'
import type { Facts } from '../facts.ts'
import { merged } from '../spans.ts'

/** Spans in which at least so many people who are trained for an operation are on shift. */
const crewSpans = (facts: Facts, operation: Operation, crew: number): readonly Span[] => {
  const shifts = facts.problem.people.flatMap((person, index) =>
    person.skills.has(operation) ? (facts.compiled.shifts[index] ?? []) : [],
  )
  const moments = [...new Set(shifts.flatMap(({ start, end }) => [start, end]))].sort((a, b) => a - b)
  return moments.flatMap((start, index) => {
    const end = moments[index + 1]
    if (end === undefined) return []
    return shifts.filter((shift) => shift.start <= start && shift.end >= end).length >= crew
      ? [{ start, end }]
      : []
  })
}

/** Stands for no machine. */
const HANDS = -1

/** A machine that can do a step: its minutes, and the spans in which it, its crew and the hours allow the work. */
export type Doer = {
  readonly machine: number
  readonly minutes: number
  readonly crew: number
  readonly spans: readonly Span[]
}

const reckoned = (
  facts: Facts,
  step: ProblemStep,
  crewTimes: (operation: Operation, crew: number) => readonly Span[],
): readonly Doer[] => {
  const workable = facts.compiled.workable.get(step.operation) ?? []
  if (step.minutesByMachine.size === 0)
    return [
      { machine: HANDS, minutes: 0, crew: 1, spans: intersectSpans(workable, crewTimes(step.operation, 1)) },
    ]
  return facts.problem.machines.flatMap((machine, index): readonly Doer[] => {
    const minutes = step.minutesByMachine.get(machine.id)
    if (minutes === undefined) return []
    const open = intersectSpans(facts.compiled.available[index] ?? [], workable)
    return [
      {
        machine: index,
        minutes,
        crew: machine.crew,
        spans: intersectSpans(open, crewTimes(step.operation, machine.crew)),
      },
    ]
  })
}

/** Tells who can do a step at all; answers are kept. */
export const doersOf = (facts: Facts): ((step: ProblemStep) => readonly Doer[]) => {
  const times = new Map<string, readonly Span[]>()
  const known = new Map<ProblemStep, readonly Doer[]>()
  const crewTimes = (operation: Operation, crew: number): readonly Span[] => {
    const key = `${operation} ${crew}`
    const found = times.get(key) ?? merged(crewSpans(facts, operation, crew))
    times.set(key, found)
    return found
  }
  return (step) => {
    const found = known.get(step) ?? reckoned(facts, step, crewTimes)
    known.set(step, found)
    return found
  }
}
