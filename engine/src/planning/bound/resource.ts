import type { Operation } from '../operations.ts'
import type { Span } from '../problem.ts'
import { mergeSpans, subtractSpans } from '../spans.ts'
import { readyMin, type BoundGround } from './bound-ground.ts'
import type { ResourceName } from './bound-by.ts'
import { peopleCapacity, plainCapacity, type Capacity } from './capacity.ts'
import { machineDemands, peopleDemands, type Demand } from './demand.ts'

/** Machines or people with all that only they can do. */
export type Resource = {
  readonly name: ResourceName
  readonly demands: readonly Demand[]
  readonly capacity: Capacity
  /** True: the way to a green may be made hours before the step, by one of the people; false: right before it, as the machine does nothing in between. */
  readonly looseLeads: boolean
}

const keyOf = (members: ReadonlySet<number>): string => [...members].toSorted((a, b) => a - b).join(' ')

const overlap = (a: ReadonlySet<number>, b: ReadonlySet<number>): boolean => [...a].some((one) => b.has(one))

/** The sets, each once, and the union of every two that overlap (those that do not say no more together than apart), in a fixed order. */
const withUnions = (sets: readonly ReadonlySet<number>[]): readonly ReadonlySet<number>[] => {
  const known = new Map<string, ReadonlySet<number>>()
  const add = (members: ReadonlySet<number>): void => {
    if (members.size > 0 && !known.has(keyOf(members))) known.set(keyOf(members), members)
  }
  for (const members of sets) add(members)
  const distinct = [...known.values()]
  for (const [i, one] of distinct.entries())
    for (const other of distinct.slice(i + 1)) if (overlap(one, other)) add(new Set([...one, ...other]))
  return [...known.values()]
}

const withoutLeads = (demands: readonly Demand[]): readonly Demand[] =>
  demands.map((demand) => ({ ...demand, leadMin: 0 }))

/** When a machine can be on its way to, or at, one of these steps: attended, set up, no sooner than the soonest of them lets it. */
const usableSpans = (ground: BoundGround, machine: number, demands: readonly Demand[]): readonly Span[] => {
  const mornings = ground.problem.days.map((day, index): Span => {
    const soonest = demands.reduce((least, { green, step, leadMin }) => {
      const one = ground.greens[green]
      const at = one?.steps[step]
      return one === undefined || at === undefined || !at.choices.some((choice) => choice.machine === machine)
        ? least
        : Math.min(least, readyMin(ground, machine, index, { green: one.green, step: at.step }) - leadMin)
    }, day.endMin)
    return { start: day.startMin, end: Math.max(day.startMin, soonest) }
  })
  return subtractSpans(ground.attended[machine] ?? [], mergeSpans(mornings))
}

const machineResources = (ground: BoundGround, members: ReadonlySet<number>): readonly Resource[] => {
  const demands = machineDemands(ground, members)
  if (demands.length === 0) return []
  const machines = [...members].toSorted((a, b) => a - b)
  const name: ResourceName = {
    kind: 'machines',
    machines: machines.flatMap((machine) => ground.problem.machines[machine]?.id ?? []),
  }
  const working = machines.map((machine) =>
    mergeSpans(
      demands.flatMap(({ green, step }) =>
        (ground.greens[green]?.steps[step]?.choices ?? []).flatMap((choice) =>
          choice.machine === machine ? choice.spans : [],
        ),
      ),
    ),
  )
  const usable = machines.map((machine) => usableSpans(ground, machine, demands))
  const shared = { name, looseLeads: false }
  return [
    { ...shared, demands, capacity: plainCapacity(usable) },
    { ...shared, demands: withoutLeads(demands), capacity: plainCapacity(working) },
  ]
}

const peopleResources = (ground: BoundGround, members: ReadonlySet<number>): readonly Resource[] => {
  const demands = peopleDemands(ground, members)
  if (demands.length === 0) return []
  const people = ground.problem.people.filter((_, index) => members.has(index))
  const name: ResourceName = { kind: 'people', people: people.map(({ id }) => id) }
  const capacity = peopleCapacity(people)
  const shared = { name, capacity }
  return [
    { ...shared, demands, looseLeads: true },
    { ...shared, demands: withoutLeads(demands), looseLeads: false },
  ]
}

/** Every machine set and every set of people that may be the bottleneck: those who alone can do some operation, and unions of two. */
export const resourcesOf = (ground: BoundGround): readonly Resource[] => {
  const { problem } = ground
  const steps = ground.greens.flatMap((green) => green.steps)
  const machineSets = withUnions(steps.map(({ choices }) => new Set(choices.map(({ machine }) => machine))))
  const operations: readonly Operation[] = [...new Set(steps.map(({ step }) => step.operation))]
  const peopleSets = withUnions([
    ...operations.map(
      (operation) =>
        new Set(problem.people.flatMap((person, index) => (person.skills.has(operation) ? [index] : []))),
    ),
    new Set(problem.people.map((_, index) => index)),
  ])
  return [
    ...machineSets.flatMap((members) => machineResources(ground, members)),
    ...peopleSets.flatMap((members) => peopleResources(ground, members)),
  ]
}
