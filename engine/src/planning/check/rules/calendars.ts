import type { Rule } from '../../rules.ts'
import type { Span } from '../../problem.ts'
import { spanOf, type TaskFact } from '../facts.ts'
import { findingOf, type Finding, type RuleCheck } from '../finding.ts'
import { outside } from '../spans.ts'
import { isOperation } from '../steps.ts'

/** A task's minutes outside a calendar, told at the first of them. */
const outsideOf = (rule: Rule, task: TaskFact, calendar: readonly Span[]): readonly Finding[] => {
  const { atMin, min } = outside(spanOf(task), calendar)
  return min > 0 ? [{ ...findingOf(rule, task, min), atMin }] : []
}

/** Rule 2, `machineOut`: a machine works only while it is available. Counts minutes. */
export const machineOut: RuleCheck = ({ byMachine, compiled }) =>
  byMachine.flatMap((tasks, machine) =>
    tasks.flatMap((task) => outsideOf('machineOut', task, compiled.available[machine] ?? [])),
  )

/** Rule 11, `outsideShift`: people's tasks lie inside their shifts. Counts minutes, for each person apart. */
export const outsideShift: RuleCheck = ({ byPerson, compiled }) =>
  byPerson.flatMap((tasks, person) =>
    tasks.flatMap((task) => outsideOf('outsideShift', task, compiled.shifts[person] ?? [])),
  )

/** Rule 18, `notWorkable`: an operation lies wholly in hours in which it may be worked. Counts minutes. */
export const notWorkable: RuleCheck = ({ timed, compiled }) =>
  timed.flatMap((task) => {
    const { kind } = task
    if (!isOperation(task) || kind === 'move' || kind === 'load' || kind === 'setUp') return []
    return outsideOf('notWorkable', task, compiled.workable.get(kind) ?? [])
  })
