import type { Project } from '../../project.ts'
import { randomOf, type Random } from '../../../search/random.ts'
import { distancesOf, NO_WAY } from '../distances.ts'
import { temporalNetworkOf } from '../temporal-network.ts'

/** Control of a random project, in the manner of ProGen/max (Schwindt 1998; Kolisch, Schwindt and Sprecher 1999). All shares in percent. */
export type RandomProjectShape = {
  /** Activities without the two dummies. */
  readonly activities: number
  readonly resources: number
  /** Chance that an activity uses a resource (resource factor). */
  readonly usePercent: number
  /** Where capacity lies between the largest single demand (0) and the peak of the earliest starts (100) (resource strength). */
  readonly strengthPercent: number
  /** Activities in cycle structures: pairs of them are tied by maximum lags. */
  readonly tiedPercent: number
  /** Slack of a maximum lag over the longest way that it closes, at most. */
  readonly slackPercent: number
  /** An arc leads at most so many activities onward: the fewer, the longer the chains. */
  readonly reach: number
  readonly seed: number
}

const DURATION_MOST = 10
const DEMAND_MOST = 10

type Draft = { readonly from: number[]; readonly to: number[]; readonly length: number[] }

const add = ({ from, to, length }: Draft, a: number, b: number, lag: number): void => {
  from.push(a)
  to.push(b)
  length.push(lag)
}

/** Two arcs onward from each activity, to ones not far ahead; the dummies before and after all. */
const onwardArcs = (random: Random, durations: Int32Array, reach: number): Draft => {
  const draft: Draft = { from: [], to: [], length: [] }
  const last = durations.length - 1
  for (let a = 1; a < last; a++) {
    add(draft, 0, a, 0)
    add(draft, a, last, durations[a]!)
    for (let arc = 0; arc < 2; arc++) {
      const b = a + 1 + random.below(reach)
      if (b < last) add(draft, a, b, random.below(durations[a]! + Math.ceil(durations[a]! / 2) + 1))
    }
  }
  return draft
}

/** Closes ways of the network by maximum lags a little longer than they are, so that no cycle has a positive length by itself. */
const tie = (random: Random, draft: Draft, shape: RandomProjectShape): void => {
  const nodes = shape.activities + 2
  let toTie = Math.floor((shape.activities * shape.tiedPercent) / 100)
  for (let tries = 0; toTie > 0 && tries < 50 * nodes; tries++) {
    const distances = distancesOf(temporalNetworkOf(nodes, draft))
    if (distances === null) throw new Error('the generator made a positive cycle')
    const a = 1 + random.below(shape.activities)
    const b = 1 + random.below(shape.activities)
    const way = distances[a * nodes + b]!
    if (a === b || way === NO_WAY || way < 1) continue
    add(draft, b, a, -(way + random.below(1 + Math.ceil((way * shape.slackPercent) / 100))))
    toTie--
  }
}

/** Peak use of each resource when all start as early as the lags allow. */
const peaks = (project: Project): Int32Array => {
  const { durations, demands, capacities } = project
  const nodes = durations.length
  const network = temporalNetworkOf(nodes, {
    from: project.lagFrom,
    to: project.lagTo,
    length: project.lagMin,
  })
  const distances = distancesOf(network)
  if (distances === null) throw new Error('the generator made a positive cycle')
  const use = new Map<number, number>()
  const peak = new Int32Array(capacities.length)
  for (let a = 0; a < nodes; a++)
    for (let time = distances[a]!; time < distances[a]! + durations[a]!; time++)
      for (let r = 0; r < capacities.length; r++) {
        const cell = time * capacities.length + r
        const load = (use.get(cell) ?? 0) + demands[a * capacities.length + r]!
        use.set(cell, load)
        peak[r] = Math.max(peak[r]!, load)
      }
  return peak
}

/** A random project with maximum lags. With or without a schedule: nobody knows before it is solved. */
export const randomProject = (shape: RandomProjectShape): Project => {
  const random = randomOf(shape.seed)
  const nodes = shape.activities + 2
  const durations = new Int32Array(nodes)
  const demands = new Int32Array(nodes * shape.resources)
  for (let a = 1; a < nodes - 1; a++) {
    durations[a] = 1 + random.below(DURATION_MOST)
    for (let r = 0; r < shape.resources; r++)
      if (random.below(100) < shape.usePercent)
        demands[a * shape.resources + r] = 1 + random.below(DEMAND_MOST)
  }
  const draft = onwardArcs(random, durations, shape.reach)
  tie(random, draft, shape)
  const project: Project = {
    durations,
    capacities: new Int32Array(shape.resources),
    demands,
    lagFrom: Int32Array.from(draft.from),
    lagTo: Int32Array.from(draft.to),
    lagMin: Int32Array.from(draft.length),
    hasMaxLags: draft.length.some((lag) => lag < 0),
  }
  const peak = peaks(project)
  const capacities = peak.map((most, r) => {
    let largest = 1
    for (let a = 0; a < nodes; a++) largest = Math.max(largest, demands[a * shape.resources + r]!)
    return largest + Math.round((Math.max(0, most - largest) * shape.strengthPercent) / 100)
  })
  return { ...project, capacities }
}
