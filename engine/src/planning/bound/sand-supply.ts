import type { Problem } from '../problem.ts'
import { NEVER } from '../spans.ts'
import { bayFor, isFilled, type BoundGreen, type BoundGround, type BoundStep } from './bound-ground.ts'
import { plainCapacity } from './capacity.ts'

type Kind = Problem['greens'][number]['sand']['kind']

const KINDS = ['damp', 'kilnDried'] as const

/** Grams that the checker forgives. */
const SLACK_T = 1e-6

/** One filling: what it takes, and the least minutes of a dresser from its start to the end of the dressing that it is for. */
type Load = {
  readonly massT: number
  readonly isDone: boolean
  readonly minutes: number
  readonly machines: readonly number[]
}

const loadOf = ({ problem, ways }: BoundGround, { green }: BoundGreen, one: BoundStep): Load | null => {
  const { choices, step, done } = one
  // A dresser without a hopper takes nothing from the bay that is counted.
  if (step.sandT <= 0 || !choices.every(({ machine }) => isFilled(problem.machines[machine], step)))
    return null
  const bay = bayFor(problem, green)
  const minutes = choices.map((choice) => {
    const way = bay === null ? 0 : (ways[choice.machine]?.[bay * problem.places.length + green.place] ?? 0)
    return (problem.machines[choice.machine]?.loadMin ?? 0) + way + choice.minutes
  })
  const machines = choices.map(({ machine }) => machine)
  return { massT: step.sandT, isDone: done !== null, minutes: Math.min(...minutes), machines }
}

const loadsOf = (ground: BoundGround, green: BoundGreen): readonly Load[] =>
  green.steps.flatMap((one) => loadOf(ground, green, one) ?? [])

const massOf = (loads: readonly Load[]): number => loads.reduce((sum, { massT }) => sum + massT, 0)

/** Sand of a kind that has come before a minute, or by the end of the horizon. */
const suppliedBefore = ({ stores }: Problem, kind: Kind, minute: number): number =>
  stores
    .filter((store) => store.kind === kind)
    .reduce(
      (sum, { stockT, deliveries }) =>
        deliveries.reduce((more, { atMin, massT }) => more + (atMin < minute ? massT : 0), sum + stockT),
      0,
    )

/** How many of the least values a sum can hold. */
const mostIn = (values: readonly number[], total: number): number => {
  let left = total + SLACK_T
  return values.toSorted((a, b) => a - b).filter((value) => (left -= value) >= 0).length
}

/** Least minutes of the chain after the last dressing of a green. */
const afterDressingMin = ({ steps }: BoundGreen): number =>
  steps
    .slice(steps.findLastIndex(({ step }) => step.operation === 'dress') + 1)
    .reduce(
      (sum, { choices }) =>
        sum + (choices.length === 0 ? 0 : Math.min(...choices.map(({ minutes }) => minutes))),
      0,
    )

/** First minute by which dressers have had so many minutes since a moment. */
const workedBy = (
  ground: BoundGround,
  machines: readonly number[],
  from: number,
  minutes: number,
): number => {
  const { between } = plainCapacity(machines.map((machine) => ground.attended[machine] ?? []))
  let [low, high] = [from, ground.problem.horizonMin]
  if (between(from, high) < minutes) return NEVER
  while (low < high) {
    const middle = (low + high) >> 1
    if (between(from, middle) >= minutes) high = middle
    else low = middle + 1
  }
  return high
}

/** The soonest end of all as far as one delivery goes: what the sand before it cannot fill is filled and dressed after it. */
const afterDelivery = (
  ground: BoundGround,
  kind: Kind,
  greens: readonly BoundGreen[],
  atMin: number,
): number => {
  const loads = greens.flatMap((green) => loadsOf(ground, green))
  const waiting = loads.filter(({ isDone }) => !isDone)
  const stockT = suppliedBefore(ground.problem, kind, atMin) - massOf(loads.filter(({ isDone }) => isDone))
  const before = mostIn(
    waiting.map(({ massT }) => massT),
    Math.max(0, stockT),
  )
  const after = waiting
    .map(({ minutes }) => minutes)
    .toSorted((a, b) => a - b)
    .slice(0, waiting.length - before)
  if (after.length === 0) return 0
  const machines = [...new Set(waiting.flatMap((load) => load.machines))]
  const minutes = after.reduce((sum, one) => sum + one, 0)
  return workedBy(ground, machines, atMin, minutes) + Math.min(...greens.map(afterDressingMin))
}

/** When the greens can have been dressed with sand that has yet to come, and what must still be done then: the soonest end of all, with the kind. */
export const sandBound = (ground: BoundGround): { readonly kind: Kind; readonly finishMin: number } => {
  const { problem } = ground
  const bounds = KINDS.map((kind) => {
    const greens = ground.greens.filter(
      (green) => green.green.sand.kind === kind && loadsOf(ground, green).length > 0,
    )
    const needT = massOf(greens.flatMap((green) => loadsOf(ground, green)))
    if (needT > suppliedBefore(problem, kind, problem.horizonMin) + SLACK_T) return { kind, finishMin: NEVER }
    const moments = problem.stores
      .filter((store) => store.kind === kind)
      .flatMap(({ deliveries }) => deliveries.map(({ atMin }) => atMin))
    const ends = moments.map((atMin) => afterDelivery(ground, kind, greens, atMin))
    return { kind, finishMin: Math.min(NEVER, Math.max(0, ...ends)) }
  })
  return bounds.reduce((worst, one) => (one.finishMin > worst.finishMin ? one : worst))
}

/** Most greens that the sand of the whole horizon can dress. */
export const mostBySand = (ground: BoundGround): number =>
  KINDS.reduce((count, kind) => {
    const takes = ground.greens
      .filter(({ green }) => green.sand.kind === kind)
      .map((green) => massOf(loadsOf(ground, green)))
    return count + mostIn(takes, suppliedBefore(ground.problem, kind, ground.problem.horizonMin))
  }, 0)
