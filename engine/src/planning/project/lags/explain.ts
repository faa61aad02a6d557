import { conditionOf, lagOf, switchOf, targetOf, type Arcs } from './arcs.ts'
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
  /** Work space for the choice of activities in an overload, and the rank by which each is let go. */
  readonly chosen: Int32Array
  readonly rank: Int32Array
}

/** Below every bound. */
export const NOT_NEEDED = -2_000_000_000

/** Whether an activity surely runs at a time, by its present bounds. */
const surelyRuns = (value: Int32Array, activity: number, takes: number, time: number): boolean =>
  value[2 * activity + 1]! >= -time && value[2 * activity]! >= time - takes + 1

/** How many facts an activity's part in an overload would add to the nogood: 0, 1 or 2. */
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

/** Above every demand, so that new facts weigh more than demands. */
const RANK_OF_FACT = 1 << 24

/** Puts an activity in its place among those chosen: highest rank first, among equals the lower number first. */
const insert = ({ chosen, rank }: Needs, count: number, activity: number, itsRank: number): void => {
  let at = count
  while (at > 0 && rank[at - 1]! < itsRank) {
    chosen[at] = chosen[at - 1]!
    rank[at] = rank[at - 1]!
    at--
  }
  chosen[at] = activity
  rank[at] = itsRank
}

/**
 * Needs enough of the activities that surely run in a cell (leaving `spared` out) to use more than `room`. Those that would add most facts are let
 * go first, among them those with the smallest demand, as long as the rest is still too much.
 */
const needOverload = (reasons: Reasons, needs: Needs, cell: number, spared: number, room: number): void => {
  const { bounds, profile } = reasons
  const { durations, demands, capacities } = profile.project
  const resources = capacities.length
  const resource = cell % resources
  const time = (cell - resource) / resources
  let count = 0
  let excess = -room
  for (let activity = 0; activity < durations.length; activity++) {
    const demand = demands[activity * resources + resource]!
    if (demand === 0 || activity === spared) continue
    const takes = durations[activity]!
    if (!surelyRuns(bounds.value, activity, takes, time)) continue
    excess += demand
    insert(
      needs,
      count++,
      activity,
      RANK_OF_FACT * newFacts(bounds, needs.least, activity, takes, time) - demand,
    )
  }
  for (let at = 0; at < count; at++) {
    const activity = needs.chosen[at]!
    const demand = demands[activity * resources + resource]!
    if (excess - demand > 0) {
      excess -= demand
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
  const target = targetOf(arcs, arc) ^ 1
  const sum = 1 - lagOf(arcs, arc)
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
    needs.need(arcs.source[at]!, least - lagOf(arcs, at))
    if (conditionOf(arcs, at) >= 0) needs.need(conditionOf(arcs, at), switchOf(arcs, at))
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
