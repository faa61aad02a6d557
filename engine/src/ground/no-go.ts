import type { LocalPoint } from './plane.ts'
import { distanceM, eachEdge, isInsideRing, type Ring } from './polygon.ts'

const turn = (o: LocalPoint, p: LocalPoint, q: LocalPoint): number =>
  (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x)

/** Nearer to its edge than this a point counts as on it, m. */
const ON_EDGE_M = 1e-6

const gapToEdgeM = (point: LocalPoint, ring: Ring): number => {
  let leastM = Infinity
  eachEdge(ring, (a, b) => {
    const lengthM = distanceM(a, b)
    const along = ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / (lengthM * lengthM)
    const share = Math.min(1, Math.max(0, along))
    leastM = Math.min(
      leastM,
      Math.hypot(a.x + share * (b.x - a.x) - point.x, a.y + share * (b.y - a.y) - point.y),
    )
  })
  return leastM
}

/** Whether a straight line runs through a surface: crosses an edge, or its middle lies within (a line along the edge does not). */
export const crossesRing = (a: LocalPoint, b: LocalPoint, ring: Ring): boolean => {
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
  let hit = isInsideRing(middle, ring) && gapToEdgeM(middle, ring) > ON_EDGE_M
  eachEdge(ring, (p, q) => {
    if (turn(a, b, p) * turn(a, b, q) < 0 && turn(p, q, a) * turn(p, q, b) < 0) hit = true
  })
  return hit
}
