import { MACHINE, type Run } from './run.ts'
import { entryAt } from './timeline.ts'
import type { Lead } from './wanted.ts'

/** Minutes to drive a machine from place to place. */
export const travel = (run: Run, machine: number, from: number, to: number): number => {
  const { places, travelMin } = run.ground
  return travelMin[(machine * places + from) * places + to] ?? 0
}

/** The bay of a green's sand. */
export const bayOf = (run: Run, green: number): number => run.ground.bay[run.ground.sandKind[green] ?? 0] ?? 0

/** Whether what lies in the hopper is enough for a step: of the same kind, and no less than it takes. */
const isFilled = (run: Run, machine: number, step: number): boolean => {
  const { ground } = run
  const loaded = (run.scalars[run.at.loaded + machine] ?? 0) - 1
  if (loaded < 0) return false
  const kindOf = (one: number): number => ground.sandKind[ground.greenOfStep[one] ?? 0] ?? 0
  return kindOf(loaded) === kindOf(step) && (ground.amount[loaded] ?? 0) >= (ground.amount[step] ?? 0)
}

/**
 * Works out what a machine must do before a step in front of its task `gap` of that day, from where the task before left it; the first of the day begins with
 * the set-up at the shed. False when its hopper holds sand for something else.
 */
export const leadOf = (
  run: Run,
  machine: number,
  step: number,
  row: number,
  gap: number,
  lead: Lead,
): boolean => {
  const { ground, machines } = run
  const green = ground.greenOfStep[step] ?? 0
  const goal = ground.greenPlace[green] ?? 0
  let at = gap === 0 ? 0 : (machines.data[entryAt(machines, row, gap - 1) + MACHINE.place] ?? 0)
  lead.from = at
  lead.minutes = gap === 0 ? (ground.setUpMin[machine] ?? 0) : 0
  lead.afterLoad = -1
  lead.uses = false
  if (ground.needsLoad[step] === 1) {
    lead.uses = isFilled(run, machine, step)
    if (!lead.uses && (run.scalars[run.at.loaded + machine] ?? 0) !== 0) return false
  }
  if (ground.needsLoad[step] === 1 && !lead.uses) {
    const bay = bayOf(run, green)
    const loadMin = ground.loadMin[machine] ?? 0
    lead.minutes += travel(run, machine, at, bay) + loadMin
    lead.afterLoad = loadMin + travel(run, machine, bay, goal)
    at = bay
  }
  lead.minutes += travel(run, machine, at, goal)
  return true
}

/** Minutes of the lead of a step that is planned already if the machine came from `from` instead; its set-up is then done. */
export const leadFrom = (run: Run, machine: number, step: number, from: number): number => {
  const { ground } = run
  const green = ground.greenOfStep[step] ?? 0
  const goal = ground.greenPlace[green] ?? 0
  if (ground.needsLoad[step] !== 1) return travel(run, machine, from, goal)
  const bay = bayOf(run, green)
  return travel(run, machine, from, bay) + (ground.loadMin[machine] ?? 0) + travel(run, machine, bay, goal)
}
