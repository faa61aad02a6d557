import { assert } from '../../../assert.ts'
import type { Project } from '../project.ts'
import { pairsOf, type Pairs } from './pairs.ts'
import { lowerLatest, propagationOf, raiseEarliest, temporalNetworkOf } from './temporal-network.ts'
import { propagateRoot, treeOf, type Tree } from './tree.ts'

/** A project's tree at its propagated root, and what the search needs to read it. */
export type Root = {
  readonly tree: Tree
  readonly pairs: Pairs
  /** The activity that stands for the end of the project. */
  readonly end: number
}

/** Cells of the load profile at most: 512 MB. */
const MOST_CELLS = 2 ** 27

/** Adds an activity without duration that starts when all others have finished, so that its start is the makespan. */
const withEnd = (project: Project): Project => {
  const end = project.durations.length
  const activities = Array.from({ length: end }, (_, activity) => activity)
  const resources = project.capacities.length
  const demands = new Int32Array((end + 1) * resources)
  demands.set(project.demands)
  return {
    ...project,
    durations: Int32Array.of(...project.durations, 0),
    demands,
    lagFrom: Int32Array.of(...project.lagFrom, ...activities),
    lagTo: Int32Array.of(...project.lagTo, ...activities.map(() => end)),
    lagMin: Int32Array.of(...project.lagMin, ...project.durations),
  }
}

/**
 * A time by which some shortest schedule ends, if there is a schedule at all: the sum over activities of the longest of duration and positive lags that
 * leave it. For at every moment of a shortest schedule an activity or such a lag is under way, else all that comes later could come one unit sooner
 * (maximum lags reach from later to earlier starts and only gain by it). Neumann and Schwindt 1997, the usual upper bound of RCPSP/max.
 */
export const latestEndOf = ({ durations, lagFrom, lagMin }: Project): number => {
  const most = Int32Array.from(durations)
  for (let arc = 0; arc < lagFrom.length; arc++)
    most[lagFrom[arc]!] = Math.max(most[lagFrom[arc]!]!, lagMin[arc]!)
  return most.reduce((sum, time) => sum + time, 0)
}

/** Builds and propagates the root. Null = proven without schedule: a cycle of lags, or windows that resources leave empty. */
export const rootOf = (given: Project): Root | null => {
  const project = withEnd(given)
  const nodes = project.durations.length
  const pairs = pairsOf(project)
  if (pairs === null) return null
  const network = temporalNetworkOf(nodes, pairs.arcs)
  const buffers = propagationOf(nodes)
  const all = Int32Array.from(project.durations, (_, activity) => activity)
  const earliest = new Int32Array(nodes)
  const latest = new Int32Array(nodes).fill(latestEndOf(given))
  if (!raiseEarliest(network, earliest, all, buffers)) return null
  if (!lowerLatest(network, latest, all, buffers)) return null
  if (earliest.some((start, activity) => start > latest[activity]!)) return null
  const cells = latest[nodes - 1]! * project.capacities.length
  assert(cells <= MOST_CELLS, `the load profile has at most ${MOST_CELLS} cells: ${cells}`)
  const tree = treeOf(project, pairs, earliest, latest)
  return propagateRoot(tree) ? { tree, pairs, end: nodes - 1 } : null
}
