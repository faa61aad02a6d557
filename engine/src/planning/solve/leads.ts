import type { Growing } from './growing.ts'
import type { StepWanted } from './place-step.ts'

/** What a machine does before it can begin: set-up, ways, filling. */
export type Lead = {
  readonly kind: 'setUp' | 'move' | 'load'
  readonly minutes: number
  readonly from: number
  readonly to: number
}

/** The leads of one machine in order; the last ends where the step is. */
export type Leads = {
  readonly list: readonly Lead[]
  readonly minutes: number
  /** Minutes from the start of the filling to the start of the step; -1 where nothing is filled. */
  readonly afterLoadMin: number
  /** Place where the first begins. */
  readonly from: number
}

const SHED = 0

/** Works out what a machine must do before the wanted step, from where its last task of that day left it. */
export const leadsOf = (growing: Growing, index: number, wanted: StepWanted): Leads => {
  const { problem } = growing.ground
  const machine = problem.machines[index]
  const state = growing.machines[index]
  const fresh = state === undefined || state.day !== wanted.day
  const goal = problem.greens[wanted.green]?.place ?? SHED
  const list: Lead[] = []
  const from = fresh ? SHED : state.place
  let at = from
  let minutes = 0
  let afterLoadMin = -1
  const push = (lead: Lead): void => {
    list.push(lead)
    minutes += lead.minutes
    if (lead.kind === 'load') afterLoadMin = 0
    if (afterLoadMin >= 0) afterLoadMin += lead.minutes
    at = lead.to
  }
  const moveTo = (to: number): void => {
    if (to !== at)
      push({ kind: 'move', minutes: machine?.travelMin[at * problem.places.length + to] ?? 0, from: at, to })
  }
  if (fresh && machine !== undefined && machine.setUpMin > 0)
    push({ kind: 'setUp', minutes: machine.setUpMin, from: SHED, to: SHED })
  if (wanted.ground.step.load !== null) {
    moveTo(problem.stores.find((store) => store.kind === wanted.sandKind)?.place ?? SHED)
    push({ kind: 'load', minutes: machine?.loadMin ?? 0, from: at, to: at })
  }
  moveTo(goal)
  return { list, minutes, afterLoadMin, from }
}
