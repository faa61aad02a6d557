import { raise, REASON, type Bounds } from './bounds.ts'
import type { Pairs } from './pairs.ts'

/**
 * All lags as arcs between sides (see `bounds.ts`): value[target] >= value[source] + lag, while the fact `condition` holds (-1 = always). The order
 * of an open pair is a variable of its own, 1 = first before second; its two facts are the conditions of the two possible lags.
 */
export type Arcs = {
  /** Arcs by the side that they leave: `out[side]` to `out[side + 1] - 1`. */
  readonly out: Int32Array
  readonly source: Int32Array
  /** What an arc is looked up for most, side by side in memory: four numbers an arc, see the places below. */
  readonly row: Int32Array
  /** Arcs by condition: `ruled[side]` to `ruled[side + 1] - 1` are places in `byCondition`. */
  readonly ruled: Int32Array
  readonly byCondition: Int32Array
}

/** Numbers in a row, and their places: where the arc leads, its lag, the side whose fact switches it on (-1 = always on), and from which bound. */
const WIDTH = 4
const TARGET = 0
const LAG = 1
const CONDITION = 2
const FROM = 3

/** Side that an arc leads to. */
export const targetOf = ({ row }: Arcs, arc: number): number => row[WIDTH * arc + TARGET]!

/** Lag of an arc. */
export const lagOf = ({ row }: Arcs, arc: number): number => row[WIDTH * arc + LAG]!

/** Side of the fact that switches an arc on; -1 = always on. */
export const conditionOf = ({ row }: Arcs, arc: number): number => row[WIDTH * arc + CONDITION]!

/** Bound of that side from which the arc is on. */
export const switchOf = ({ row }: Arcs, arc: number): number => row[WIDTH * arc + FROM]!

type Draft = {
  readonly source: number
  readonly target: number
  readonly lag: number
  readonly condition: number
}

/** The lag from activity a to activity b, as an arc between lower sides and one between upper sides. */
const bothSides = (a: number, b: number, lag: number, condition: number): Draft[] => [
  { source: 2 * a, target: 2 * b, lag, condition },
  { source: 2 * b + 1, target: 2 * a + 1, lag, condition },
]

const draftsOf = ({ arcs, first, second }: Pairs, durations: Int32Array): Draft[] => {
  const drafts: Draft[] = []
  for (let arc = 0; arc < arcs.from.length; arc++)
    drafts.push(...bothSides(arcs.from[arc]!, arcs.to[arc]!, arcs.length[arc]!, -1))
  for (let pair = 0; pair < first.length; pair++) {
    const order = 2 * (durations.length + pair)
    const a = first[pair]!
    const b = second[pair]!
    drafts.push(...bothSides(a, b, durations[a]!, order), ...bothSides(b, a, durations[b]!, order + 1))
  }
  return drafts
}

/** Counts of a key, summed up so that entry k is where its rows begin. */
const startsOf = (keys: readonly number[], size: number): Int32Array => {
  const start = new Int32Array(size + 1)
  for (const key of keys) if (key >= 0) start[key + 1]!++
  for (let key = 0; key < size; key++) start[key + 1]! += start[key]!
  return start
}

/** Builds the arcs of a project's lags and of its open pairs. */
export const arcsOf = (pairs: Pairs, durations: Int32Array): Arcs => {
  const drafts = draftsOf(pairs, durations).sort((x, y) => x.source - y.source || x.condition - y.condition)
  const sides = 2 * (durations.length + pairs.first.length)
  const ruled = startsOf(
    drafts.map(({ condition }) => condition),
    sides,
  )
  const next = ruled.slice()
  const byCondition = new Int32Array(ruled[sides]!)
  for (const [arc, { condition }] of drafts.entries())
    if (condition >= 0) byCondition[next[condition]!++] = arc
  return {
    out: startsOf(
      drafts.map(({ source }) => source),
      sides,
    ),
    source: Int32Array.from(drafts, ({ source }) => source),
    row: Int32Array.from(
      drafts.flatMap(({ target, lag, condition }) => [target, lag, condition, condition % 2 === 0 ? 1 : 0]),
    ),
    ruled,
    byCondition,
  }
}

/** Carries the new bound of a start over the arcs that leave it. An arc that would leave no value closes its order. False on a clash. */
export const followArcs = ({ out, row }: Arcs, bounds: Bounds, side: number): boolean => {
  const { value } = bounds
  const bound = value[side]!
  const end = out[side + 1]!
  for (let arc = out[side]!; arc < end; arc++) {
    const at = WIDTH * arc
    const to = row[at + TARGET]!
    const reached = bound + row[at + LAG]!
    if (reached <= value[to]!) continue
    const condition = row[at + CONDITION]!
    const from = row[at + FROM]!
    if (condition < 0 || value[condition]! >= from) {
      if (!raise(bounds, to, reached, REASON.arc, arc)) return false
      continue
    }
    if (reached <= -value[to ^ 1]!) continue
    if (value[condition ^ 1]! < 1 - from && !raise(bounds, condition ^ 1, 1 - from, REASON.blocked, arc))
      return false
  }
  return true
}

/** Carries bounds over the arcs that a fact about an order just switched on. False on a clash. */
export const followOrder = (arcs: Arcs, bounds: Bounds, side: number): boolean => {
  const { ruled, byCondition, source } = arcs
  const { value } = bounds
  for (let at = ruled[side]!; at < ruled[side + 1]!; at++) {
    const arc = byCondition[at]!
    const reached = value[source[arc]!]! + lagOf(arcs, arc)
    const to = targetOf(arcs, arc)
    if (reached > value[to]! && !raise(bounds, to, reached, REASON.arc, arc)) return false
  }
  return true
}
