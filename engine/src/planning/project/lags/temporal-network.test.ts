import { describe, expect, it } from 'vitest'
import { randomOf, type Random } from '../../search/random.ts'
import { distancesOf, NO_WAY } from './distances.ts'
import { lowerLatest, propagationOf, raiseEarliest, temporalNetworkOf } from './temporal-network.ts'

type Arc = readonly [number, number, number]

/** Bellman 1958 as in a textbook: relax every arc as often as there are nodes; still a change after that = positive cycle. */
const longestFrom = (nodes: number, arcs: readonly Arc[], first: readonly number[]): number[] | null => {
  const far = [...first]
  for (let round = 0; round <= nodes; round++) {
    let changed = false
    for (const [a, b, length] of arcs)
      if (far[a]! > -Infinity && far[a]! + length > far[b]!) {
        far[b] = far[a]! + length
        changed = true
      }
    if (!changed) return far
  }
  return null
}

const randomArcs = (random: Random, nodes: number): Arc[] =>
  Array.from({ length: 2 * nodes }, (): Arc => {
    const a = random.below(nodes)
    const b = random.below(nodes)
    return a < b ? [a, b, random.below(9)] : [a, b, -random.below(30)]
  })

const networkFrom = (nodes: number, arcs: readonly Arc[]) =>
  temporalNetworkOf(nodes, {
    from: arcs.map(([a]) => a),
    to: arcs.map(([, b]) => b),
    length: arcs.map(([, , length]) => length),
  })

const all = (nodes: number): number[] => Array.from({ length: nodes }, (_, node) => node)

describe('temporal network', () => {
  it('gives the longest ways that a textbook Bellman gives, on 300 random networks, and sees the same positive cycles', () => {
    const random = randomOf(11)
    const seen = { cycles: 0, clean: 0 }
    for (let trial = 0; trial < 300; trial++) {
      const nodes = 2 + random.below(12)
      const arcs = randomArcs(random, nodes)
      const expected = longestFrom(
        nodes,
        arcs,
        all(nodes).map(() => 0),
      )
      const starts = new Int32Array(nodes)
      const isClean = raiseEarliest(networkFrom(nodes, arcs), starts, all(nodes), propagationOf(nodes))
      expect(isClean).toBe(expected !== null)
      if (expected !== null) expect([...starts]).toEqual(expected)
      seen[isClean ? 'clean' : 'cycles']++
    }
    expect(Math.min(seen.cycles, seen.clean)).toBeGreaterThan(50)
  })

  it('carries one raised start on to the same values as a reckoning from scratch', () => {
    const random = randomOf(12)
    for (let trial = 0; trial < 200; trial++) {
      const nodes = 3 + random.below(10)
      const arcs = randomArcs(random, nodes)
      const network = networkFrom(nodes, arcs)
      const buffers = propagationOf(nodes)
      const starts = new Int32Array(nodes)
      if (!raiseEarliest(network, starts, all(nodes), buffers)) continue
      const node = random.below(nodes)
      starts[node]! += 1 + random.below(10)
      const expected = longestFrom(nodes, arcs, [...starts])
      expect(raiseEarliest(network, starts, [node], buffers)).toBe(expected !== null)
      if (expected !== null) expect([...starts]).toEqual(expected)
    }
  })

  it('gives latest starts that are the earliest of the network turned round', () => {
    const random = randomOf(13)
    for (let trial = 0; trial < 200; trial++) {
      const nodes = 3 + random.below(10)
      const arcs = randomArcs(random, nodes)
      const latest = new Int32Array(nodes).fill(100)
      const turned = arcs.map(([a, b, length]): Arc => [b, a, length])
      const expected = longestFrom(
        nodes,
        turned,
        all(nodes).map(() => -100),
      )
      const isClean = lowerLatest(networkFrom(nodes, arcs), latest, all(nodes), propagationOf(nodes))
      expect(isClean).toBe(expected !== null)
      if (expected !== null) expect([...latest]).toEqual(expected.map((far) => 0 - far))
    }
  })

  it('leaves its buffers ready for the next propagation when it meets a cycle', () => {
    const buffers = propagationOf(3)
    const cycle = networkFrom(3, [
      [0, 1, 2],
      [1, 0, -1],
      [1, 2, 4],
    ])
    expect(raiseEarliest(cycle, new Int32Array(3), [0, 1, 2], buffers)).toBe(false)
    const starts = new Int32Array(3)
    const chain = networkFrom(3, [
      [0, 1, 2],
      [1, 2, 4],
    ])
    expect(raiseEarliest(chain, starts, [0, 1, 2], buffers)).toBe(true)
    expect([...starts]).toEqual([0, 2, 6])
  })

  it('gives for every two nodes the distance that Bellman gives from the first of them', () => {
    const random = randomOf(14)
    for (let trial = 0; trial < 200; trial++) {
      const nodes = 2 + random.below(9)
      const arcs = randomArcs(random, nodes)
      const distances = distancesOf(networkFrom(nodes, arcs))
      const rows = all(nodes).map((from) =>
        longestFrom(
          nodes,
          arcs,
          all(nodes).map((node) => (node === from ? 0 : -Infinity)),
        ),
      )
      expect(distances === null).toBe(rows.includes(null))
      if (distances === null) continue
      const plain = [...distances].map((far) => (far === NO_WAY ? -Infinity : far))
      expect(plain).toEqual(rows.flatMap((row) => row ?? []))
    }
  })
})
