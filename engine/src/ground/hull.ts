import type { LocalPoint } from './plane.ts'

const turn = (o: LocalPoint, p: LocalPoint, q: LocalPoint): number =>
  (p.x - o.x) * (q.y - o.y) - (p.y - o.y) * (q.x - o.x)

const chain = (points: readonly LocalPoint[]): LocalPoint[] => {
  const kept: LocalPoint[] = []
  for (const point of points) {
    for (;;) {
      const p = kept[kept.length - 2]
      const q = kept[kept.length - 1]
      if (p === undefined || q === undefined || turn(p, q, point) > 0) break
      kept.pop()
    }
    kept.push(point)
  }
  return kept.slice(0, -1)
}

/** The convex hull, anticlockwise (Andrew 1979, monotone chain). The input is left alone. */
export const hullOf = (points: readonly LocalPoint[]): readonly LocalPoint[] => {
  const sorted = points.toSorted((p, q) => p.x - q.x || p.y - q.y)
  return [...chain(sorted), ...chain(sorted.toReversed())]
}
