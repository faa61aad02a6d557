import type { ProblemStep, Span } from '../../problem.ts'
import { NEVER } from '../../spans.ts'
import { SHED } from '../compile.ts'
import { dayOfStart } from '../days.ts'
import type { Facts } from '../facts.ts'

/** Where and from when a machine can be had: after what it has begun by now. */
export type Ready = { readonly fromMin: number; readonly place: number; readonly fresh: boolean }

/** The state of a machine after all that was begun before now. */
export const readyAfter = (facts: Facts, machine: number, nowMin: number): Ready => {
  const begun = (facts.byMachine[machine] ?? []).filter(({ startMin }) => startMin < nowMin)
  const last = begun.at(-1)
  const today = dayOfStart(facts.problem.days, nowMin)
  if (last === undefined || dayOfStart(facts.problem.days, last.startMin) !== today)
    return { fromMin: nowMin, place: SHED, fresh: true }
  const busyUntil = begun.reduce((most, task) => Math.max(most, task.finishMin), nowMin)
  return { fromMin: busyUntil, place: last.way.ends ?? SHED, fresh: false }
}

/** The state of any machine on the days after today: it spends the night in the shed. */
export const readyLater = ({ problem }: Facts, nowMin: number): Ready => ({
  fromMin: problem.days[dayOfStart(problem.days, nowMin)]?.endMin ?? NEVER,
  place: SHED,
  fresh: true,
})

/** Where the sand of a green is filled. */
export const bayOf = ({ problem }: Facts, green: number): number | undefined =>
  problem.stores.find(({ kind }) => kind === problem.greens[green]?.sand.kind)?.place

/** Minutes that a machine takes from place to place. */
export const wayOf =
  ({ problem }: Facts, machine: number) =>
  (from: number, to: number): number =>
    problem.machines[machine]?.travelMin[from * problem.places.length + to] ?? 0

/** Whether a dresser goes from now on with sand that it has not spread yet. */
const isLoaded = (facts: Facts, machine: number, nowMin: number): boolean =>
  (facts.byMachine[machine] ?? [])
    .filter(({ kind, startMin }) => startMin < nowMin && (kind === 'load' || kind === 'dress'))
    .at(-1)?.kind === 'load'

/** Whether a step takes sand that must be fetched. */
export const takesSand = (step: ProblemStep): boolean => step.load !== null && step.sandT > 0

/** First minute by which a machine has had so many minutes of being there from a minute on; NEVER where it never has. */
export const thereFor = (available: readonly Span[], from: number, minutes: number): number => {
  let left = minutes
  for (const span of available) {
    const start = Math.max(span.start, from)
    if (span.end <= start) continue
    if (span.end - start >= left) return start + left
    left -= span.end - start
  }
  return NEVER
}

/** How a machine comes to a green: from when, from where, how long it is set up, and how long filling where it has no sand, and the ways, take after that. */
type Bringing = {
  readonly fromMin: number
  readonly from: number
  readonly setUpMin: number
  readonly comingMin: number
}

/** How a machine would come from where it is ready to a step of a green, with nothing else to do on the way; all nothing for hand work. */
export const bringing = (
  { facts, nowMin }: { readonly facts: Facts; readonly nowMin: number },
  machine: number,
  to: { readonly green: number; readonly step: ProblemStep },
  ready: Ready,
): Bringing => {
  const { problem } = facts
  if (machine < 0) return { fromMin: nowMin, from: SHED, setUpMin: 0, comingMin: 0 }
  const own = problem.machines[machine]
  const goal = problem.greens[to.green]?.place ?? SHED
  const way = wayOf(facts, machine)
  const bay = bayOf(facts, to.green)
  const filling = takesSand(to.step) && bay !== undefined && !isLoaded(facts, machine, nowMin)
  return {
    fromMin: ready.fromMin,
    from: ready.place,
    setUpMin: ready.fresh ? (own?.setUpMin ?? 0) : 0,
    comingMin: filling
      ? way(ready.place, bay) + (own?.loadMin ?? 0) + way(bay, goal)
      : way(ready.place, goal),
  }
}

/** Minutes for the trip to the bay and back between two loads on one green, where only one machine can spread them; 0 where another could be there already. */
export const refillMin = (
  facts: Facts,
  green: number,
  step: ProblemStep,
  before: ProblemStep | undefined,
): number => {
  if (before?.operation !== 'dress' || !takesSand(step) || step.minutesByMachine.size !== 1) return 0
  const machine = facts.problem.machines.findIndex(({ id }) => step.minutesByMachine.has(id))
  const bay = bayOf(facts, green)
  const goal = facts.problem.greens[green]?.place ?? SHED
  const way = wayOf(facts, machine)
  return bay === undefined
    ? 0
    : way(goal, bay) + (facts.problem.machines[machine]?.loadMin ?? 0) + way(bay, goal)
}
