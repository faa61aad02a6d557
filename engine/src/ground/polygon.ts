import type { LocalPoint } from './plane.ts'

/** A closed line of points in local metres; the last point joins the first and is not repeated. */
export type Ring = readonly LocalPoint[]

/** A green's shape: outer ring and islands to keep off. Checked shapes (`checkedPolygon`) run anticlockwise outside, clockwise for islands. */
export type Polygon = { readonly outer: Ring; readonly holes: readonly Ring[] }

/** All rings of a shape, the outer one first. */
export const ringsOf = (polygon: Polygon): readonly Ring[] => [polygon.outer, ...polygon.holes]

/** Calls `visit` with each edge of the ring in turn. */
export const eachEdge = (
  ring: Ring,
  visit: (from: LocalPoint, to: LocalPoint, index: number) => void,
): void => {
  let from = ring[ring.length - 1]
  for (let index = 0; index < ring.length; index++) {
    const to = ring[index]
    if (from !== undefined && to !== undefined) visit(from, to, index)
    from = to
  }
}

/** Straight distance, m. */
export const distanceM = (a: LocalPoint, b: LocalPoint): number => Math.hypot(b.x - a.x, b.y - a.y)

/** Area of a ring, m2: positive when anticlockwise. `A = sum (x1 y2 - x2 y1) / 2`, taken from the ring's first point so that far-off coordinates lose no digits. */
export const signedAreaM2 = (ring: Ring): number => {
  const [base] = ring
  if (base === undefined) return 0
  let doubled = 0
  eachEdge(ring, (a, b) => {
    doubled += (a.x - base.x) * (b.y - base.y) - (b.x - base.x) * (a.y - base.y)
  })
  return doubled / 2
}

/** Length of a ring's line, m. */
export const ringLengthM = (ring: Ring): number => {
  let lengthM = 0
  eachEdge(ring, (a, b) => {
    lengthM += distanceM(a, b)
  })
  return lengthM
}

/** Area of the green without its islands, m2, whichever way the rings run. */
export const polygonAreaM2 = (polygon: Polygon): number =>
  polygon.holes.reduce(
    (left, hole) => left - Math.abs(signedAreaM2(hole)),
    Math.abs(signedAreaM2(polygon.outer)),
  )

/** Length of the outer edge, m (islands left out). */
export const polygonPerimeterM = (polygon: Polygon): number => ringLengthM(polygon.outer)

/** Area and first moments of one ring about `base`. */
const moments = (ring: Ring, base: LocalPoint): { areaM2: number; mx: number; my: number } => {
  let areaM2 = 0
  let mx = 0
  let my = 0
  eachEdge(ring, (a, b) => {
    const cross = ((a.x - base.x) * (b.y - base.y) - (b.x - base.x) * (a.y - base.y)) / 2
    areaM2 += cross
    mx += (cross * (a.x + b.x - 2 * base.x)) / 3
    my += (cross * (a.y + b.y - 2 * base.y)) / 3
  })
  return { areaM2, mx, my }
}

/** Centre of gravity of the surface, islands taken out. Needs an area above zero. */
export const polygonCentroid = (polygon: Polygon): LocalPoint => {
  const base = polygon.outer[0] ?? { x: 0, y: 0 }
  let areaM2 = 0
  let mx = 0
  let my = 0
  ringsOf(polygon).forEach((ring, index) => {
    const part = moments(ring, base)
    const sign = Math.sign(part.areaM2) * (index === 0 ? 1 : -1)
    areaM2 += sign * part.areaM2
    mx += sign * part.mx
    my += sign * part.my
  })
  return { x: base.x + mx / areaM2, y: base.y + my / areaM2 }
}

/** Whether a point lies inside a ring (even-odd; points on the line may fall either way). */
export const isInsideRing = (point: LocalPoint, ring: Ring): boolean => {
  let inside = false
  eachEdge(ring, (a, b) => {
    if (a.y > point.y !== b.y > point.y && point.x < a.x + ((point.y - a.y) / (b.y - a.y)) * (b.x - a.x))
      inside = !inside
  })
  return inside
}

/** Whether a point lies on the green and not on an island. */
export const isOnGreen = (point: LocalPoint, polygon: Polygon): boolean =>
  isInsideRing(point, polygon.outer) && !polygon.holes.some((hole) => isInsideRing(point, hole))
