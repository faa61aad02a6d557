import type { Span } from '../../problem.ts'
import { SHED } from '../compile.ts'
import type { Facts, TaskFact } from '../facts.ts'
import type { Finding, RuleCheck } from '../finding.ts'
import { SLACK_MIN } from '../spans.ts'

/** Where somebody is, from when, and which task brought them there (none at the start of the shift). */
type Stand = { readonly place: number | null; readonly fromMin: number; readonly task: TaskFact | null }

const shiftOf = (shifts: readonly Span[], min: number): Span | undefined =>
  shifts.findLast(({ start }) => start <= min)

const shortOf = (facts: Facts, stand: Stand, task: TaskFact): number => {
  const { begins } = task.way
  if (stand.place === null || begins === null || stand.fromMin > task.startMin + SLACK_MIN) return 0
  const wayMin = facts.problem.personTravelMin[stand.place * facts.problem.places.length + begins] ?? 0
  return wayMin - (task.startMin - stand.fromMin)
}

const ofPerson = (facts: Facts, tasks: readonly TaskFact[], shifts: readonly Span[]): readonly Finding[] => {
  const found: Finding[] = []
  let shift: Span | undefined
  let stand: Stand = { place: null, fromMin: -Infinity, task: null }
  for (const task of tasks) {
    const current = shiftOf(shifts, task.startMin)
    if (current !== shift && current !== undefined) {
      stand = { place: SHED, fromMin: current.start, task: null }
    }
    shift = current
    const by = shortOf(facts, stand, task)
    if (by > SLACK_MIN) {
      const ids = [...(stand.task === null ? [] : [stand.task.id]), task.id]
      found.push({ rule: 'noTravel', green: task.greenName, atMin: task.startMin, by, tasks: ids })
    }
    if (task.finishMin >= stand.fromMin) stand = { place: task.way.ends, fromMin: task.finishMin, task }
  }
  return found
}

/**
 * Rule 8, `noTravel`: between two tasks of a person there is time for the way from where the first ends to where the second begins;
 * a shift starts at the shed. Counts minutes. Tasks that overlap are a matter of `personTwice`.
 */
export const noTravel: RuleCheck = (facts) =>
  facts.byPerson.flatMap((tasks, person) => ofPerson(facts, tasks, facts.compiled.shifts[person] ?? []))
