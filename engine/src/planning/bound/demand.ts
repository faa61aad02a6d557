import type { Operation } from '../operations.ts'
import type { BoundGreen, BoundGround, BoundStep } from './bound-ground.ts'
import { bayFor, isFilled } from './bound-ground.ts'

/** What one step takes of a resource, minutes: `workMin` on the green, for each of a crew, and before it `leadMin` for the way there and the filling. */
export type Demand = {
  /** Index into the greens of the ground, and of its step. */
  readonly green: number
  readonly step: number
  readonly workMin: number
  readonly leadMin: number
}

const SHED = 0

type Way = (from: number, to: number) => number

const wayOf = ({ problem, ways }: BoundGround, machine: number): Way => {
  const places = problem.places.length
  return (from, to) => ways[machine]?.[from * places + to] ?? 0
}

const fillMin = (ground: BoundGround, machine: number, { green }: BoundGreen): number => {
  const bay = bayFor(ground.problem, green)
  if (bay === null || ground.standing.filled.has(machine)) return 0
  const way = wayOf(ground, machine)
  const toBay = ground.standing.atBay || bay === SHED ? 0 : (ground.leastWayTo[machine]?.[bay] ?? 0)
  return toBay + (ground.problem.machines[machine]?.loadMin ?? 0) + way(bay, green.place)
}

const leadOn = (ground: BoundGround, green: BoundGreen, step: BoundStep, machine: number): number => {
  if (ground.standing.named.has(green.index)) return 0
  return !isFilled(ground.problem.machines[machine], step.step)
    ? (ground.leastWayTo[machine]?.[green.green.place] ?? 0)
    : fillMin(ground, machine, green)
}

/**
 * Least minutes that one of the machines spends on its way to a green, and on its filling, right before a step. A way is certain only before the first step
 * on the green that any of these machines can do, since for a later one it may have stayed; a filling is needed before every dressing.
 */
export const leastLeadMin = (
  ground: BoundGround,
  green: BoundGreen,
  step: number,
  machines: ReadonlySet<number>,
): number => {
  const one = green.steps[step]
  if (one === undefined || one.choices.length === 0) return 0
  const arrived = green.steps
    .slice(0, step)
    .some(({ choices }) => choices.some(({ machine }) => machines.has(machine)))
  return one.choices.reduce(
    (least, { machine }) =>
      Math.min(
        least,
        arrived && !isFilled(ground.problem.machines[machine], one.step)
          ? 0
          : leadOn(ground, green, one, machine),
      ),
    Infinity,
  )
}

/** What the steps still to do take of a set of machines: those that none but these can do. */
export const machineDemands = (ground: BoundGround, machines: ReadonlySet<number>): readonly Demand[] =>
  ground.greens.flatMap((green, index) =>
    green.steps.flatMap(({ choices, done }, step) => {
      if (done !== null || choices.length === 0 || !choices.every(({ machine }) => machines.has(machine)))
        return []
      const workMin = Math.min(...choices.map(({ minutes }) => minutes))
      return [{ green: index, step, workMin, leadMin: leastLeadMin(ground, green, step, machines) }]
    }),
  )

/** What the steps still to do take of a set of people: those steps, ways and fillings that none but these are trained for. */
export const peopleDemands = (ground: BoundGround, people: ReadonlySet<number>): readonly Demand[] => {
  const { problem } = ground
  const only = (operations: readonly Operation[]): boolean =>
    problem.people.every(
      (person, index) => people.has(index) || !operations.some((one) => person.skills.has(one)),
    )
  const driven = problem.machines.map((machine) => only(machine.operations))
  return ground.greens.flatMap((green, index) =>
    green.steps.flatMap(({ choices, done, step: one }, step) => {
      if (done !== null || choices.length === 0 || !only([one.operation])) return []
      const workMin = choices.reduce(
        (least, { machine, minutes }) => Math.min(least, minutes * (problem.machines[machine]?.crew ?? 1)),
        Infinity,
      )
      const machines = new Set(choices.map(({ machine }) => machine))
      const lead = choices.every(({ machine }) => driven[machine] === true)
        ? leastLeadMin(ground, green, step, machines)
        : 0
      return [{ green: index, step, workMin, leadMin: lead }]
    }),
  )
}
