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
  readonly target: Int32Array
  readonly lag: Int32Array
  /** The side whose fact switches the arc on, and from which bound. */
  readonly condition: Int32Array
  readonly from: Int32Array
  /** Arcs by condition: `ruled[side]` to `ruled[side + 1] - 1` are places in `byCondition`. */
  readonly ruled: Int32Array
  readonly byCondition: Int32Array
}

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
    target: Int32Array.from(drafts, ({ target }) => target),
    lag: Int32Array.from(drafts, ({ lag }) => lag),
    condition: Int32Array.from(drafts, ({ condition }) => condition),
    from: Int32Array.from(drafts, ({ condition }) => (condition % 2 === 0 ? 1 : 0)),
    ruled,
    byCondition,
  }
}

/** Carries the new bound of a start over the arcs that leave it. An arc that would leave no value closes its order. False on a clash. */
export const followArcs = (arcs: Arcs, bounds: Bounds, side: number): boolean => {
  const { out, target, lag, condition, from } = arcs
  const { value } = bounds
  const bound = value[side]!
  for (let arc = out[side]!; arc < out[side + 1]!; arc++) {
    const to = target[arc]!
    const reached = bound + lag[arc]!
    if (reached <= value[to]!) continue
    const switchedBy = condition[arc]!
    if (switchedBy < 0 || value[switchedBy]! >= from[arc]!) {
      if (!raise(bounds, to, reached, REASON.arc, arc)) return false
      continue
    }
    if (reached <= -value[to ^ 1]!) continue
    const closed = 1 - from[arc]!
    if (value[switchedBy ^ 1]! < closed && !raise(bounds, switchedBy ^ 1, closed, REASON.blocked, arc))
      return false
  }
  return true
}

/** Carries bounds over the arcs that a fact about an order just switched on. False on a clash. */
export const followOrder = (arcs: Arcs, bounds: Bounds, side: number): boolean => {
  const { ruled, byCondition, source, target, lag } = arcs
  const { value } = bounds
  for (let at = ruled[side]!; at < ruled[side + 1]!; at++) {
    const arc = byCondition[at]!
    const reached = value[source[arc]!]! + lag[arc]!
    const to = target[arc]!
    if (reached > value[to]! && !raise(bounds, to, reached, REASON.arc, arc)) return false
  }
  return true
}
