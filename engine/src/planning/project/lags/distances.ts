import type { TemporalNetwork } from './temporal-network.ts'

/** No way leads from one node to another: far below every distance, and two of them still fit in 32 bits. */
export const NO_WAY = -1_000_000_000

/**
 * Longest way between every two nodes, row `from * nodes + to`: start[to] >= start[from] + distance; NO_WAY where none leads. Null when a cycle
 * has a positive length. Floyd 1962, Warshall 1962: nodes^3 steps, for networks up to some hundred nodes.
 */
export const distancesOf = (network: TemporalNetwork): Int32Array | null => {
  const { nodes, out, target, length } = network
  const far = new Int32Array(nodes * nodes).fill(NO_WAY)
  for (let node = 0; node < nodes; node++) {
    far[node * nodes + node] = 0
    for (let arc = out[node]!; arc < out[node + 1]!; arc++) {
      const cell = node * nodes + target[arc]!
      if (length[arc]! > far[cell]!) far[cell] = length[arc]!
    }
  }
  for (let via = 0; via < nodes; via++) {
    if (far[via * nodes + via]! > 0) return null
    for (let from = 0; from < nodes; from++) joinWays(far, nodes, from, via)
  }
  for (let node = 0; node < nodes; node++) if (far[node * nodes + node]! > 0) return null
  return far
}

/** Lengthens the ways from one node by those that lead through another. */
const joinWays = (far: Int32Array, nodes: number, from: number, via: number): void => {
  const first = far[from * nodes + via]!
  if (first === NO_WAY) return
  const row = from * nodes
  const viaRow = via * nodes
  for (let to = 0; to < nodes; to++) {
    const rest = far[viaRow + to]!
    if (rest !== NO_WAY && first + rest > far[row + to]!) far[row + to] = first + rest
  }
}
