import type { Problem, ProblemStep, Span } from '@swardwright/engine'

type Green = Problem['greens'][number]

const SHED = 0

const leastWayTo = ({ travelMin }: Problem['machines'][number], places: number, to: number): number => {
  let least = Infinity
  for (let from = 0; from < places; from++)
    if (from !== to) least = Math.min(least, travelMin[from * places + to] ?? 0)
  return Number.isFinite(least) ? least : 0
}

const bayOf = (problem: Problem, green: Green): number =>
  problem.stores.find(({ kind }) => kind === green.sand.kind)?.place ?? SHED

/** Least minutes that a machine needs right before a step for its way and its filling, whatever it did before; 0 where it may be there already. */
export const leastLeadMin = (problem: Problem, green: Green, step: number, machine: number): number => {
  const one = problem.machines[machine]
  const wanted = green.steps[step]
  const places = problem.places.length
  if (one === undefined || wanted === undefined || places === 1) return 0
  if (wanted.load !== null && one.hopperT !== null) {
    const bay = bayOf(problem, green)
    return leastWayTo(one, places, bay) + one.loadMin + (one.travelMin[bay * places + green.place] ?? 0)
  }
  const wasThere = green.steps.slice(0, step).some(({ minutesByMachine }) => minutesByMachine.has(one.id))
  return wasThere ? 0 : leastWayTo(one, places, green.place)
}

/** Minutes that the only dresser is away between two loads of a green; 0 before any other step. */
export const refillMin = (problem: Problem, green: Green, step: number): number => {
  const wanted = green.steps[step]
  if (wanted?.load == null || green.steps[step - 1]?.load == null) return 0
  const able = problem.machines.filter(({ id }) => wanted.minutesByMachine.has(id))
  const [one] = able
  if (one === undefined || able.length > 1 || one.hopperT === null) return 0
  const places = problem.places.length
  const bay = bayOf(problem, green)
  const way = (from: number, to: number): number => one.travelMin[from * places + to] ?? 0
  return way(green.place, bay) + one.loadMin + way(bay, green.place)
}

/** Stretches of mornings in which a machine cannot be at a step yet: it spent the night in the shed, and somebody has to set it up. The way is the least there is. */
export const mornings = (problem: Problem, machine: number, step: ProblemStep): readonly Span[] => {
  const one = problem.machines[machine]
  if (one === undefined) return []
  const able = problem.people.filter(({ skills }) =>
    one.operations.some((operation) => skills.has(operation)),
  )
  return problem.days.map((day) => {
    const first = able
      .flatMap(({ shifts }) => shifts)
      .filter(({ start }) => start >= day.startMin && start < day.endMin)
      .reduce((least, { start }) => Math.min(least, start), day.endMin)
    const lead = one.setUpMin + (step.load === null || one.hopperT === null ? 0 : one.loadMin)
    return { start: day.startMin, end: Math.min(day.endMin, first + lead) }
  })
}
