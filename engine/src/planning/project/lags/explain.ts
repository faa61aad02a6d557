import type { Arcs } from './arcs.ts'
import { REASON, type Bounds } from './bounds.ts'
import { NOGOOD_HEAD, type Nogoods } from './nogoods.ts'
import type { Profile } from './profile.ts'

/** The parts of the search that can give reasons. */
export type Reasons = {
  readonly bounds: Bounds
  readonly arcs: Arcs
  readonly profile: Profile
  readonly nogoods: Nogoods
}

/** The nogood under construction: by side, the least bound that it needs. */
export type Needs = {
  /** NOT_NEEDED where the side plays no part. */
  readonly least: Int32Array
  /** Adds a fact; facts true at the root are left out. */
  readonly need: (side: number, least: number) => void
  /** Work space for the choice of activities in an overload. */
  readonly chosen: number[]
}

/** Below every bound. */
export const NOT_NEEDED = -2_000_000_000

/** Whether an activity surely runs at a time, by its present bounds. */
const surelyRuns = (value: Int32Array, activity: number, takes: number, time: number): boolean =>
  value[2 * activity + 1]! >= -time && value[2 * activity]! >= time - takes + 1

/** How little an activity's part in the overload would add to the nogood: 0 = nothing. */
const newFacts = (
  { root }: Bounds,
  least: Int32Array,
  activity: number,
  takes: number,
  time: number,
): number => {
  const low = time - takes + 1
  const isLowFree = root[2 * activity]! >= low || least[2 * activity]! >= low
  const isHighFree = root[2 * activity + 1]! >= -time || least[2 * activity + 1]! >= -time
  return (isLowFree ? 0 : 1) + (isHighFree ? 0 : 1)
}

/**
 * Needs enough of the activities that surely run in a cell (leaving `spared` out) to use more than `room`. Those that add the fewest facts come
 * first, then those with the largest demand; what turns out to be more than enough is left out again.
 */
const needOverload = (reasons: Reasons, needs: Needs, cell: number, spared: number, room: number): void => {
  const { bounds, profile } = reasons
  const { durations, demands, capacities } = profile.project
  const resources = capacities.length
  const resource = cell % resources
  const time = (cell - resource) / resources
  const demandOf = (activity: number): number => demands[activity * resources + resource]!
  const { chosen } = needs
  chosen.length = 0
  let excess = -room
  for (let activity = 0; activity < durations.length; activity++) {
    if (activity === spared || demandOf(activity) === 0) continue
    if (!surelyRuns(bounds.value, activity, durations[activity]!, time)) continue
    chosen.push(activity)
    excess += demandOf(activity)
  }
  const cost = (activity: number): number =>
    newFacts(bounds, needs.least, activity, durations[activity]!, time)
  chosen.sort((a, b) => cost(b) - cost(a) || demandOf(a) - demandOf(b) || a - b)
  for (const activity of chosen) {
    if (excess - demandOf(activity) > 0) {
      excess -= demandOf(activity)
      continue
    }
    needs.need(2 * activity, time - durations[activity]! + 1)
    needs.need(2 * activity + 1, -time)
  }
}

/** An arc that would have left no value: the two bounds that together are one too many, by one of them alone where the root gives the other. */
const explainBlocked = ({ bounds, arcs }: Reasons, needs: Needs, arc: number): void => {
  const { value, root } = bounds
  const source = arcs.source[arc]!
  const target = arcs.target[arc]! ^ 1
  const sum = 1 - arcs.lag[arc]!
  if (value[source]! >= sum - root[target]!) needs.need(source, sum - root[target]!)
  else if (value[target]! >= sum - root[source]!) needs.need(target, sum - root[source]!)
  else {
    needs.need(source, value[source]!)
    needs.need(target, sum - value[source]!)
  }
}

/**
 * Needs the facts from which (side, least) followed for the given reason. The bounds must be those just before it followed.
 */
export const explain = (
  reasons: Reasons,
  needs: Needs,
  side: number,
  least: number,
  kind: number,
  at: number,
): void => {
  const { arcs, nogoods, profile } = reasons
  if (kind === REASON.arc) {
    needs.need(arcs.source[at]!, least - arcs.lag[at]!)
    if (arcs.condition[at]! >= 0) needs.need(arcs.condition[at]!, arcs.from[at]!)
  } else if (kind === REASON.blocked) explainBlocked(reasons, needs, at)
  else if (kind === REASON.nogood) {
    const { data } = nogoods
    const end = at + NOGOOD_HEAD + 2 * data[at]!
    for (let fact = at + NOGOOD_HEAD; fact < end; fact += 2)
      if (data[fact] !== (side ^ 1)) needs.need(data[fact]!, data[fact + 1]!)
  } else if (kind === REASON.load) {
    const { durations, demands, capacities } = profile.project
    const activity = side >> 1
    const resource = at % capacities.length
    const time = (at - resource) / capacities.length
    if (side % 2 === 0) needs.need(side, time - durations[activity]! + 1)
    else needs.need(side, -time)
    const room = capacities[resource]! - demands[activity * capacities.length + resource]!
    needOverload(reasons, needs, at, activity, room)
  }
}

/** Needs the facts that overfill a cell. */
export const explainOverfull = (reasons: Reasons, needs: Needs, cell: number): void => {
  const { capacities } = reasons.profile.project
  needOverload(reasons, needs, cell, -1, capacities[cell % capacities.length]!)
}
