import { budgetOf, type Budget } from '../search/budget.ts'
import { randomOf, type Random } from '../search/random.ts'
import { crossoverOf } from './crossover.ts'
import type { ProjectFound, ProjectSearch } from './found.ts'
import { draftOf, generatorOf, GIVEN_UP, type Draft, type Generator } from './generator.ts'
import { lowerBoundOf } from './lower-bound.ts'
import type { Network } from './network.ts'
import { samplerOf } from './sample.ts'

/** A search under way. Drafts are changed in place and handed round, so that a step allocates nothing. */
type Evolution = {
  readonly network: Network
  readonly generator: Generator
  readonly budget: Budget
  readonly random: Random
  readonly floor: number
  readonly members: Draft[]
  best: Draft
}

const build = ({ generator, budget }: Evolution, draft: Draft, from: number, limit: number): void => {
  budget.spend(generator.build(draft, from, limit))
}

const solved = (evolution: Evolution): ProjectFound => {
  const { best, network, budget } = evolution
  const starts = new Int32Array(network.count)
  network.original.forEach((activity, place) => {
    const start = best.starts[place]!
    starts[activity] = best.backward ? best.makespan - start - network.durations[place]! : start
  })
  return { starts, makespan: best.makespan, schedules: budget.schedules(), infeasibleProven: false }
}

/** Searches a project without maximum lags. */
export const solvePlain = (network: Network, { schedules, seed, stop }: ProjectSearch): ProjectFound => {
  const { count } = network
  const evolution: Evolution = {
    network,
    generator: generatorOf(network),
    budget: budgetOf({ schedules, activities: count, ...(stop && { stop }) }),
    random: randomOf(seed),
    floor: lowerBoundOf(network),
    members: [],
    best: draftOf(count),
  }
  evolution.best.makespan = GIVEN_UP
  const { members, budget, floor, random, generator } = evolution
  const size = Math.max(8, Math.min(Math.floor(schedules / 12), Math.floor(Math.sqrt(schedules))))
  const sample = samplerOf(network)
  let spare = draftOf(count)
  let turned = draftOf(count)
  const note = (draft: Draft): void => {
    if (draft.makespan >= evolution.best.makespan) return
    evolution.best.order.set(draft.order)
    evolution.best.starts.set(draft.starts)
    evolution.best.backward = draft.backward
    evolution.best.makespan = draft.makespan
  }
  const passes = (limit: number): void => {
    for (let pass = 0; pass < 2; pass++) {
      generator.turn(spare, turned)
      build(evolution, turned, 0, pass === 1 ? limit : GIVEN_UP)
      ;[spare, turned] = [turned, spare]
      note(spare)
    }
  }
  while (
    (members.length < size && !budget.isOver() && evolution.best.makespan > floor) ||
    members.length === 0
  ) {
    sample(random, spare.order)
    spare.backward = false
    build(evolution, spare, 0, GIVEN_UP)
    note(spare)
    passes(GIVEN_UP)
    generator.sort(spare, spare)
    members.push(spare)
    spare = draftOf(count)
  }
  const cross = crossoverOf(count)
  const inner = draftOf(count)
  const outer = draftOf(count)
  const face = (draft: Draft, backward: boolean, into: Draft): void => {
    if (draft.backward === backward) into.order.set(draft.order)
    else generator.turn(draft, into)
  }
  while (members.length > 1 && !budget.isOver() && evolution.best.makespan > floor) {
    const a = random.below(members.length)
    const b = random.below(members.length)
    if (a === b) continue
    const backward = random.below(2) === 1
    face(members[a]!, backward, outer)
    face(members[b]!, backward, inner)
    const length = Math.floor(count / 4) + random.below(Math.floor(count / 2))
    const from = random.below(count - length)
    cross(outer.order, inner.order, { from, until: from + length }, spare.order)
    spare.backward = backward
    build(evolution, spare, 0, GIVEN_UP)
    note(spare)
    const worse = members[a]!.makespan > members[b]!.makespan ? a : b
    passes(members[worse]!.makespan)
    if (spare.makespan > members[worse]!.makespan) continue
    generator.sort(spare, spare)
    ;[spare, members[worse]] = [members[worse]!, spare]
  }
  return solved(evolution)
}
