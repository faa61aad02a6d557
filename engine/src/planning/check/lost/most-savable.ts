import type { Operation } from '../../operations.ts'
import type { Span } from '../../problem.ts'
import type { Facts } from '../facts.ts'
import { sharedMin, SLACK_T } from '../spans.ts'
import { fitTogether, type Budget } from './fit-together.ts'
import { minutesIn, type LeftStep, type LostGround } from './left-of-green.ts'

/** Most greens for which every choice is looked at; above, only whether all can be saved. */
const MOST_SUBSETS_OF = 8

/** Most choices looked at for one question; where they are used up it is left open, and the greens count as savable. */
const MOST_NODES = 2000

/** Minutes of work that a pool can give inside a span. */
type Pool = {
  readonly demand: (step: LeftStep) => number
  /** How long before its start a step holds a machine that comes from other work. */
  readonly lead: (step: LeftStep) => number
  /** How often machines of the pool may be brought to a step inside a span at times that its capacity does not count: each once before every stretch in which the work may be done. */
  readonly brought: (span: Span) => number
  readonly capacity: (span: Span) => number
}

/** Minutes of the breaks that a person is sure to take inside a span: those whose whole window, not begun by now, lies on a shift in it. */
const breakMin = ({ problem, compiled }: Facts, person: number, span: Span): number =>
  (problem.people[person]?.breaks ?? []).reduce((sum, { window, minutes }) => {
    const inside =
      window.start >= Math.max(span.start, problem.committed?.nowMin ?? 0) &&
      window.end <= span.end &&
      (compiled.shifts[person] ?? []).some((shift) => shift.start <= window.start && shift.end >= window.end)
    return inside ? sum + minutes : sum
  }, 0)

/** The machines of an operation, and the people trained for it, as pools. */
const poolsOf = (facts: Facts, operations: ReadonlySet<Operation>): readonly Pool[] => {
  const { problem, compiled } = facts
  const workable = (operation: Operation): readonly Span[] => compiled.workable.get(operation) ?? []
  const machines = [...operations].map((operation): Pool => {
    const own = problem.machines.flatMap((machine, index) =>
      machine.operations.includes(operation) ? [compiled.available[index] ?? []] : [],
    )
    return {
      demand: (step) => (step.operation === operation ? step.minutes + step.leadMin : 0),
      lead: (step) => step.leadMin,
      brought: (span) =>
        own.length * workable(operation).filter((hours) => sharedMin(hours, span) > 0).length,
      capacity: (span) =>
        own.reduce(
          (sum, available) =>
            sum +
            workable(operation).reduce((more, hours) => {
              const inside = { start: Math.max(hours.start, span.start), end: Math.min(hours.end, span.end) }
              return inside.end > inside.start ? more + minutesIn(available, inside) : more
            }, 0),
          0,
        ),
    }
  })
  const people = (skills: ReadonlySet<Operation>): Pool => ({
    demand: (step) => (skills.has(step.operation) ? step.minutes * step.crew : 0),
    lead: () => 0,
    brought: () => 0,
    capacity: (span) =>
      problem.people.reduce(
        (sum, person, index) =>
          [...skills].some((skill) => person.skills.has(skill))
            ? sum + minutesIn(compiled.shifts[index] ?? [], span) - breakMin(facts, index, span)
            : sum,
        0,
      ),
  })
  return [
    ...machines,
    ...[...operations].map((operation) => people(new Set([operation]))),
    people(operations),
  ].map(remembering)
}

/** The same pool, which reckons each stretch once. */
const remembering = (pool: Pool): Pool => {
  const known = new Map<number, Map<number, number>>()
  return {
    ...pool,
    capacity: (span) => {
      const from = known.get(span.start) ?? new Map<number, number>()
      known.set(span.start, from)
      const found = from.get(span.end) ?? pool.capacity(span)
      from.set(span.end, found)
      return found
    },
  }
}

/** Whether some stretch asks more of a pool than it has: then not all of these greens can be finished in time. */
const isShort = (pool: Pool, steps: readonly LeftStep[]): boolean => {
  const own = steps.filter((step) => pool.demand(step) > 0)
  const begins = (step: LeftStep): number => step.earliestStart - pool.lead(step)
  const starts = [...new Set(own.map(begins))]
  const ends = [...new Set(own.map(({ latestEnd }) => latestEnd))]
  return starts.some((start) =>
    ends.some((end) => {
      if (end <= start) return false
      const inside = own.filter((step) => begins(step) >= start && step.latestEnd <= end)
      const asked = inside.reduce((sum, step) => sum + pool.demand(step), 0)
      const lead = inside.reduce((most, step) => Math.max(most, pool.lead(step)), 0)
      const span = { start, end }
      return asked - pool.brought(span) * lead > pool.capacity(span)
    }),
  )
}

/** Whether the sand that greens of a kind need comes too late for them together: a load is fetched before its dress begins. */
const isSandShort = ({ facts, sand }: LostGround, steps: readonly LeftStep[]): boolean =>
  (['damp', 'kilnDried'] as const).some((kind) => {
    const own = steps
      .filter(({ green, step }) => step.sandT > 0 && facts.problem.greens[green]?.sand.kind === kind)
      .map(({ latestEnd, minutes, step }) => ({ loadBy: latestEnd - minutes, massT: step.sandT }))
    return own.some(({ loadBy }) => {
      const needT = own.reduce((sum, one) => (one.loadBy <= loadBy ? sum + one.massT : sum), 0)
      return needT > sand.byMin(kind, loadBy) + SLACK_T
    })
  })

const canAll = (
  ground: LostGround,
  pools: readonly Pool[],
  chosen: readonly (readonly LeftStep[])[],
  budget: Budget,
): boolean => {
  const steps = chosen.flat()
  if (steps.some((step) => step.earliestStart + step.minutes > step.latestEnd)) return false
  if (isSandShort(ground, steps)) return false
  return pools.every((pool) => !isShort(pool, steps)) && fitTogether(ground, steps, budget)
}

/**
 * Most greens that can be finished in time together, at the very best: an upper bound by energetic reasoning (demand against capacity in every stretch between an
 * earliest start and a latest end, for the machines of each operation, the people trained for it, and all people; Baptiste, Le Pape and Nuijten 2001, from memory).
 * Then they are put side by side, one at a time on each machine and with the people there are. What is left out only makes it easier, so no plan whatever can finish more.
 */
export const mostSavable = (ground: LostGround, greens: readonly (readonly LeftStep[])[]): number => {
  const { facts } = ground
  const operations = new Set(greens.flatMap((steps) => steps.map(({ operation }) => operation)))
  const pools = poolsOf(facts, operations)
  const budget = { nodes: MOST_NODES }
  if (greens.length > MOST_SUBSETS_OF)
    return canAll(ground, pools, greens, budget) ? greens.length : greens.length - 1
  const choices = Array.from({ length: 1 << greens.length }, (_, subset) =>
    greens.filter((_steps, index) => (subset & (1 << index)) !== 0),
  ).sort((a, b) => b.length - a.length)
  const most = choices.find((chosen) => canAll(ground, pools, chosen, budget))?.length ?? 0
  return most
}

/** Whether anybody can ever do a step. */
export const canBeDone = ({ facts, doers }: LostGround, green: number, step: number): boolean => {
  const own = facts.problem.greens[green]?.steps[step]
  return (
    own !== undefined &&
    doers(own).some(({ spans, minutes }) => spans.some((span) => span.end - span.start >= minutes))
  )
}
