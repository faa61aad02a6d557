import type { Project } from '../project.ts'
import { distancesOf } from './distances.ts'
import { temporalNetworkOf, type ArcList } from './temporal-network.ts'

/** Above so many activities the distance of every two of them is not reckoned. */
const MOST_FOR_DISTANCES = 400

/** What the resources say about every two activities that do not fit beside each other. */
export type Pairs = {
  /** Pairs whose order is open: `first[p]` before `second[p]` or the other way round. */
  readonly first: readonly number[]
  readonly second: readonly number[]
  /** The project's lags with those that forced orders add. */
  readonly arcs: ArcList
  /** Longest ways over these lags; null when there are too many activities. */
  readonly distances: Int32Array | null
}

/** Whether two activities need more of a resource together than there is, and both take time. */
const clashes = ({ durations, demands, capacities }: Project, a: number, b: number): boolean => {
  if (durations[a] === 0 || durations[b] === 0) return false
  const count = capacities.length
  for (let resource = 0; resource < count; resource++)
    if (demands[a * count + resource]! + demands[b * count + resource]! > capacities[resource]!) return true
  return false
}

/** All clashing pairs, the smaller activity first. */
const clashingPairs = (project: Project): [number, number][] => {
  const found: [number, number][] = []
  const { length } = project.durations
  for (let a = 0; a < length; a++)
    for (let b = a + 1; b < length; b++) if (clashes(project, a, b)) found.push([a, b])
  return found
}

/**
 * Splits clashing pairs in ordered and open ones. A way from a to b longer than minus b's duration leaves no room for b before a, so a comes first;
 * the lag that follows lengthens other ways, so this is repeated until nothing is forced any more (Brucker, Drexl, Moehring, Neumann and Pesch 1999,
 * section 5.2: 'disjunctive' pairs of the distance matrix).
 *
 * @returns null when the lags hold a positive cycle, given or forced: no schedule exists.
 */
export const pairsOf = (project: Project): Pairs | null => {
  const nodes = project.durations.length
  const from = [...project.lagFrom]
  const to = [...project.lagTo]
  const length = [...project.lagMin]
  const arcs = { from, to, length }
  let open = clashingPairs(project)
  if (nodes > MOST_FOR_DISTANCES)
    return { first: open.map(([a]) => a), second: open.map(([, b]) => b), arcs, distances: null }
  for (;;) {
    const distances = distancesOf(temporalNetworkOf(nodes, arcs))
    if (distances === null) return null
    const before = from.length
    open = open.filter(([a, b]) => {
      const there = distances[a * nodes + b]!
      const back = distances[b * nodes + a]!
      const aTakes = project.durations[a]!
      const bTakes = project.durations[b]!
      if (there >= aTakes || back >= bTakes) return false
      if (there <= -bTakes && back <= -aTakes) return true
      const isAFirst = there > -bTakes
      from.push(isAFirst ? a : b)
      to.push(isAFirst ? b : a)
      length.push(isAFirst ? aTakes : bTakes)
      return false
    })
    if (from.length === before)
      return { first: open.map(([a]) => a), second: open.map(([, b]) => b), arcs, distances }
  }
}
