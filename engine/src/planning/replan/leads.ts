import type { Problem, ProblemStep } from '../problem.ts'
import { bayOf, type Field } from './field.ts'

/** Tonnes that rounding may hide: a gram. */
const SLACK_T = 1e-6

/** What a machine does before a step: getting ready, ways, filling. Each ends where the next begins. */
export type Lead = { readonly kind: 'setUp' | 'move' | 'load'; readonly minutes: number; readonly to: number }

/** The leads of a machine on a day, in order; `from` is where it begins. */
export type Leads = {
  readonly list: readonly Lead[]
  readonly minutes: number
  readonly from: number
  /** Minutes from the start of the filling to the start of the step; -1 where nothing is filled. */
  readonly afterLoadMin: number
}

const SHED = 0

const wayMin = (problem: Problem, machine: number, from: number, to: number): number =>
  problem.machines[machine]?.travelMin[from * problem.places.length + to] ?? 0

/** Whether what lies in the hopper is right and enough for the step. */
const isFilled = (field: Field, machine: number, kind: 'damp' | 'kilnDried', massT: number): boolean => {
  const hopper = field.hopper[machine]
  return hopper !== null && hopper !== undefined && hopper.kind === kind && hopper.massT >= massT - SLACK_T
}

/** Works out the leads of a machine to a step of a green from where its last task of that day left it; null where the hopper has no room for the load. */
export const leadsTo = (
  field: Field,
  machine: number,
  day: number,
  green: number,
  step: ProblemStep,
): Leads | null => {
  const { problem } = field
  const own = problem.machines[machine]
  const row = machine * problem.days.length + day
  const fresh = field.fresh[row] === 1
  const from = fresh ? SHED : (field.place[row] ?? SHED)
  const list: Lead[] = []
  let at = from
  const moveTo = (to: number): void => {
    if (to !== at) list.push({ kind: 'move', minutes: wayMin(problem, machine, at, to), to })
    at = to
  }
  if (fresh && own !== undefined && own.setUpMin > 0)
    list.push({ kind: 'setUp', minutes: own.setUpMin, to: SHED })
  const sand = problem.greens[green]?.sand.kind ?? 'damp'
  let afterLoadMin = -1
  if (step.load !== null && step.sandT > 0 && !isFilled(field, machine, sand, step.sandT)) {
    const total = (field.hopper[machine]?.massT ?? 0) + step.sandT
    if (own?.hopperT !== null && own?.hopperT !== undefined && total > own.hopperT + SLACK_T) return null
    moveTo(bayOf(problem, sand))
    list.push({ kind: 'load', minutes: own?.loadMin ?? 0, to: at })
    afterLoadMin = own?.loadMin ?? 0
  }
  const beforeGoal = list.length
  moveTo(problem.greens[green]?.place ?? SHED)
  if (afterLoadMin >= 0 && list.length > beforeGoal) afterLoadMin += list.at(-1)?.minutes ?? 0
  return { list, minutes: list.reduce((sum, lead) => sum + lead.minutes, 0), from, afterLoadMin }
}
