import { budgetOf, type Budget } from '../search/budget.ts'
import { randomOf, type Random } from '../search/random.ts'
import { walk, type Walker } from '../search/walk.ts'
import { breedOf } from './breed.ts'
import type { ProjectFound, ProjectSearch } from './found.ts'
import { copyDraft, draftOf, generatorOf, GIVEN_UP, type Draft, type Generator } from './generator.ts'
import { lowerBoundOf } from './lower-bound.ts'
import type { Network } from './network.ts'
import { samplerOf } from './sample.ts'

/** Members of the population: at least so many, and more for larger budgets, which have time to mix them. */
const LEAST_MEMBERS = 8
const MOST_MEMBERS = 300
const membersFor = (schedules: number): number =>
  Math.min(MOST_MEMBERS, Math.max(LEAST_MEMBERS, Math.floor(Math.sqrt(schedules)) - 12))

/**
 * Children reshuffled, of a hundred: none while schedules are scarce for the size of the project, when mixing alone gets furthest; all once they
 * suffice for the population to grow alike. Schedules count against the square of the activities (measured, see `docs/decisions/0004-project-search.md`).
 */
const reshuffledFor = (schedules: number, count: number): number =>
  Math.min(100, Math.max(0, Math.floor((100 * schedules) / (count * count)) - 35))

/** A search under way. Drafts are changed in place and handed round, so that a step allocates nothing. */
type Evolution = {
  readonly network: Network
  readonly generator: Generator
  readonly budget: Budget
  readonly random: Random
  /** No schedule is shorter. */
  readonly floor: number
  readonly members: Draft[]
  readonly best: Draft
  /** The draft under work and one to turn it into. */
  child: Draft
  spare: Draft
}

/** Builds a draft and pays for what is placed. */
const build = ({ generator, budget }: Evolution, draft: Draft, from: number, limit: number): void => {
  budget.spend(generator.build(draft, from, limit))
}

/** Builds the child's finishes backward: a forward-backward pass in one direction (Li and Willis 1992; Valls, Ballestin and Quintanilla 2005). It never gets longer. */
const justify = (evolution: Evolution, limit: number): void => {
  const { child, spare, generator } = evolution
  generator.turn(child, spare)
  build(evolution, spare, 0, limit)
  evolution.child = spare
  evolution.spare = child
}

/** Random first members, each justified there and back. */
const settle = (evolution: Evolution, size: number): void => {
  const { members, best, budget, network, random, generator, floor } = evolution
  const sample = samplerOf(network)
  do {
    sample(random, evolution.child.order)
    evolution.child.backward = false
    build(evolution, evolution.child, 0, GIVEN_UP)
    justify(evolution, GIVEN_UP)
    justify(evolution, GIVEN_UP)
    const { child } = evolution
    if (child.makespan < best.makespan) copyDraft(child, best)
    generator.sort(child, child)
    members.push(child)
    evolution.child = draftOf(network.count)
  } while (members.length < size && best.makespan > floor && !budget.isOver())
}

/**
 * How far a draft is from being one time unit shorter: by how much its activities and their tails pass that end, summed. Among drafts of equal length, the one
 * that misses least is the likelier parent of a shorter one. Our own measure; only drafts of one direction compare.
 */
const shortfallOf = ({ forward, backward }: Network, draft: Draft): number => {
  const { tails } = draft.backward ? backward : forward
  const goal = draft.makespan - 1
  let sum = 0
  for (let activity = 0; activity < tails.length; activity++) {
    const late = draft.starts[activity]! + tails[activity]! - goal
    if (late > 0) sum += late
  }
  return sum
}

const areTwins = (a: Draft, b: Draft): boolean => {
  if (a.makespan !== b.makespan || a.backward !== b.backward) return false
  for (let activity = 0; activity < a.starts.length; activity++)
    if (a.starts[activity] !== b.starts[activity]) return false
  return true
}

/** Whether the child may take a member's place: no longer, no further from being shorter, and not in the population yet. */
const isWelcome = ({ network, members, child }: Evolution, rival: Draft): boolean => {
  if (child.makespan > rival.makespan) return false
  if (
    child.makespan === rival.makespan &&
    child.backward === rival.backward &&
    shortfallOf(network, child) > shortfallOf(network, rival)
  )
    return false
  return !members.some((member) => areTwins(member, child))
}

/** One step: two members, their child, and the worse of the two as its rival. */
const walkerOf = (
  evolution: Evolution,
  reshuffledPercent: number,
): Walker & { readonly accepts: () => boolean } => {
  const { network, members, random, generator, best } = evolution
  const breed = breedOf(network, generator, { random, reshuffledPercent })
  let rivalAt = 0
  return {
    propose: () => {
      const outerAt = random.below(members.length)
      const innerAt = (outerAt + 1 + random.below(members.length - 1)) % members.length
      const outer = members[outerAt]!
      const inner = members[innerAt]!
      rivalAt = inner.makespan > outer.makespan ? innerAt : outerAt
      const from = breed(outer, inner, evolution.child)
      build(evolution, evolution.child, from, GIVEN_UP)
      justify(evolution, members[rivalAt]!.makespan)
      return evolution.child.makespan
    },
    accepts: () => isWelcome(evolution, members[rivalAt]!),
    take: () => {
      const { child } = evolution
      generator.sort(child, child)
      evolution.child = members[rivalAt]!
      members[rivalAt] = child
    },
    keep: () => copyDraft(evolution.child, best),
  }
}

const foundBy = ({ best, network, budget }: Evolution): ProjectFound => {
  const starts = new Int32Array(network.count)
  network.original.forEach((activity, place) => {
    const start = best.starts[place]!
    starts[activity] = best.backward ? best.makespan - start - network.durations[place]! : start
  })
  return { starts, makespan: best.makespan, schedules: budget.schedules(), infeasibleProven: false }
}

/**
 * Searches a project without maximum lags: a population of activity orders, serial generation in either direction of time, two-point crossover with a
 * reshuffled stretch, justification of every child, and a place in the population only against the worse parent (a hybrid of Hartmann 1998, Debels and
 * Vanhoucke 2005 and Valls, Ballestin and Quintanilla 2008; see `docs/decisions/0004-project-search.md`).
 * Ends early when it meets a lower bound of its own.
 */
export const solvePlain = (network: Network, { schedules, seed, stop }: ProjectSearch): ProjectFound => {
  const { count } = network
  const evolution: Evolution = {
    network,
    generator: generatorOf(network),
    budget: budgetOf({ schedules, activities: count, ...(stop && { stop }) }),
    random: randomOf(seed),
    floor: lowerBoundOf(network),
    members: [],
    best: { ...draftOf(count), makespan: GIVEN_UP },
    child: draftOf(count),
    spare: draftOf(count),
  }
  settle(evolution, membersFor(schedules))
  if (evolution.members.length > 1) {
    const walker = walkerOf(evolution, reshuffledFor(schedules, count))
    const { budget, floor, best } = evolution
    walk(walker, { budget, accepts: walker.accepts, firstCost: best.makespan, floor })
  }
  return foundBy(evolution)
}
