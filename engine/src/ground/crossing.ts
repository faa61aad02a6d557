import type { LocalPoint } from './plane.ts'
import { eachEdge, type Ring } from './polygon.ts'

/** Where two edges meet that should not, and whose they are (`rings` are places in the list given). */
export type Crossing = { readonly at: LocalPoint; readonly rings: readonly [number, number] }

type Edge = {
  readonly a: LocalPoint
  readonly b: LocalPoint
  readonly ring: number
  readonly index: number
  readonly count: number
  readonly minX: number
  readonly maxX: number
}

const edgesOf = (rings: readonly Ring[]): Edge[] => {
  const edges: Edge[] = []
  rings.forEach((ring, ringIndex) => {
    eachEdge(ring, (a, b, index) => {
      const span = { minX: Math.min(a.x, b.x), maxX: Math.max(a.x, b.x) }
      edges.push({ a, b, ring: ringIndex, index, count: ring.length, ...span })
    })
  })
  return edges.sort((p, q) => p.minX - q.minX)
}

/** Twice the area of the triangle o, p, q: positive when it turns left. */
const turn = (o: LocalPoint, p: LocalPoint, q: LocalPoint): number =>
  (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x)

const isWithin = (p: LocalPoint, edge: Edge): boolean =>
  p.x >= edge.minX &&
  p.x <= edge.maxX &&
  p.y >= Math.min(edge.a.y, edge.b.y) &&
  p.y <= Math.max(edge.a.y, edge.b.y)

/** The meeting point of two edges that share no end, if any: a true crossing or a touch. */
const meeting = (e: Edge, f: Edge): LocalPoint | undefined => {
  const a = turn(f.a, f.b, e.a)
  const b = turn(f.a, f.b, e.b)
  const c = turn(e.a, e.b, f.a)
  const d = turn(e.a, e.b, f.b)
  if (a * b < 0 && c * d < 0) {
    const share = a / (a - b)
    return { x: e.a.x + share * (e.b.x - e.a.x), y: e.a.y + share * (e.b.y - e.a.y) }
  }
  if (a === 0 && isWithin(e.a, f)) return e.a
  if (b === 0 && isWithin(e.b, f)) return e.b
  if (c === 0 && isWithin(f.a, e)) return f.a
  if (d === 0 && isWithin(f.b, e)) return f.b
  return undefined
}

/** Edges that follow each other share an end; they cross only when the second runs straight back over the first. */
const spike = (before: Edge, after: Edge): LocalPoint | undefined => {
  const corner = before.b
  const straight = turn(before.a, corner, after.b) === 0
  const back =
    (after.b.x - corner.x) * (before.a.x - corner.x) + (after.b.y - corner.y) * (before.a.y - corner.y) > 0
  return straight && back ? corner : undefined
}

const conflict = (e: Edge, f: Edge): LocalPoint | undefined => {
  if (e.ring !== f.ring) return meeting(e, f)
  if ((e.index + 1) % e.count === f.index) return spike(e, f)
  if ((f.index + 1) % f.count === e.index) return spike(f, e)
  return meeting(e, f)
}

/** The first place, from the west, where the rings cross or touch themselves or each other; undefined when they do not. */
export const findCrossing = (rings: readonly Ring[]): Crossing | undefined => {
  const edges = edgesOf(rings)
  for (let i = 0; i < edges.length; i++) {
    const e = edges[i]
    if (e === undefined) continue
    for (let j = i + 1; j < edges.length; j++) {
      const f = edges[j]
      if (f === undefined || f.minX > e.maxX) break
      const at = conflict(e, f)
      if (at !== undefined) return { at, rings: [Math.min(e.ring, f.ring), Math.max(e.ring, f.ring)] }
    }
  }
  return undefined
}
