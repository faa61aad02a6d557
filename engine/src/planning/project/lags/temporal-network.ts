/**
 * Lags between starts as a graph: an arc from a to b of length l says start[b] >= start[a] + l. Minimum lags are positive arcs, maximum lags
 * negative ones in the other direction. Arcs are held by the node they leave and by the node they reach, so that both directions are quick.
 */
export type TemporalNetwork = {
  readonly nodes: number
  /** Arcs that leave node a: `out[a]` to `out[a + 1] - 1`, into `target` and `length`. */
  readonly out: Int32Array
  readonly target: Int32Array
  readonly length: Int32Array
  /** Arcs that reach node b: `into[b]` to `into[b + 1] - 1`, into `source` and `lengthBack`. */
  readonly into: Int32Array
  readonly source: Int32Array
  readonly lengthBack: Int32Array
}

/** Arcs of a network, one an index. */
export type ArcList = {
  readonly from: ArrayLike<number>
  readonly to: ArrayLike<number>
  readonly length: ArrayLike<number>
}

/** Compressed rows of one direction: arcs sorted by the node in `by`, in their stated order. */
const rowsOf = (
  nodes: number,
  by: ArrayLike<number>,
  other: ArrayLike<number>,
  length: ArrayLike<number>,
) => {
  const start = new Int32Array(nodes + 1)
  for (let arc = 0; arc < by.length; arc++) start[by[arc]! + 1]!++
  for (let node = 0; node < nodes; node++) start[node + 1]! += start[node]!
  const next = start.slice(0, nodes)
  const end = new Int32Array(by.length)
  const size = new Int32Array(by.length)
  for (let arc = 0; arc < by.length; arc++) {
    const at = next[by[arc]!]!++
    end[at] = other[arc]!
    size[at] = length[arc]!
  }
  return { start, end, size }
}

/** Builds the network; nodes count from 0. Arcs from a node to itself and several arcs between two nodes are allowed. */
export const temporalNetworkOf = (nodes: number, arcs: ArcList): TemporalNetwork => {
  const out = rowsOf(nodes, arcs.from, arcs.to, arcs.length)
  const into = rowsOf(nodes, arcs.to, arcs.from, arcs.length)
  return {
    nodes,
    out: out.start,
    target: out.end,
    length: out.size,
    into: into.start,
    source: into.end,
    lengthBack: into.size,
  }
}

/** Buffers of a propagation: one a search, so that a propagation allocates nothing. */
export type Propagation = {
  /** Nodes that wait for their arcs to be looked at (a ring). */
  readonly queue: Int32Array
  readonly isQueued: Uint8Array
  /** Arcs on the way by which a node got its value; a way of as many arcs as there are nodes runs in a circle. */
  readonly hops: Int32Array
}

/** Fresh buffers for a network of so many nodes. */
export const propagationOf = (nodes: number): Propagation => ({
  queue: new Int32Array(nodes + 1),
  isQueued: new Uint8Array(nodes),
  hops: new Int32Array(nodes),
})

/** Rows of arcs in the direction in which values travel. */
type Rows = { readonly first: Int32Array; readonly end: Int32Array; readonly size: Int32Array }

const travel = (
  rows: Rows,
  sign: 1 | -1,
  starts: Int32Array,
  { queue, isQueued, hops }: Propagation,
  waiting: number,
): boolean => {
  const { first, end, size } = rows
  const ring = queue.length
  const nodes = hops.length
  let head = 0
  let tail = waiting
  while (head !== tail) {
    const node = queue[head]!
    head = head + 1 === ring ? 0 : head + 1
    isQueued[node] = 0
    const from = starts[node]!
    for (let arc = first[node]!; arc < first[node + 1]!; arc++) {
      const to = end[arc]!
      const reached = from + sign * size[arc]!
      if (sign * (reached - starts[to]!) <= 0) continue
      starts[to] = reached
      const way = hops[node]! + 1
      hops[to] = way
      if (to === node || way >= nodes) {
        while (head !== tail) {
          isQueued[queue[head]!] = 0
          head = head + 1 === ring ? 0 : head + 1
        }
        return false
      }
      if (isQueued[to] === 1) continue
      isQueued[to] = 1
      queue[tail] = to
      tail = tail + 1 === ring ? 0 : tail + 1
    }
  }
  return true
}

const seed = ({ queue, isQueued, hops }: Propagation, changed: ArrayLike<number>): number => {
  hops.fill(0)
  let waiting = 0
  for (let at = 0; at < changed.length; at++) {
    if (isQueued[changed[at]!] === 1) continue
    isQueued[changed[at]!] = 1
    queue[waiting++] = changed[at]!
  }
  return waiting
}

/**
 * Raises earliest starts until every lag holds, from the nodes whose value was just raised. Label correcting (Bellman 1958, Ford 1956) with a
 * queue; only what changes is looked at.
 *
 * @returns false when the arcs hold a cycle of positive length: then no schedule exists, with or without resources. `starts` is spoilt then.
 */
export const raiseEarliest = (
  network: TemporalNetwork,
  starts: Int32Array,
  changed: ArrayLike<number>,
  buffers: Propagation,
): boolean =>
  travel(
    { first: network.out, end: network.target, size: network.length },
    1,
    starts,
    buffers,
    seed(buffers, changed),
  )

/** Lowers latest starts in the same way, against the arcs: start[a] <= start[b] - l. */
export const lowerLatest = (
  network: TemporalNetwork,
  starts: Int32Array,
  changed: ArrayLike<number>,
  buffers: Propagation,
): boolean =>
  travel(
    { first: network.into, end: network.source, size: network.lengthBack },
    -1,
    starts,
    buffers,
    seed(buffers, changed),
  )
