import type { LocalPoint } from './plane.ts'
import type { Polygon } from './polygon.ts'

/** What is known of a green that nobody has drawn: its area, and perhaps its longest and shortest span (either order). */
export type AreaShape = { readonly areaM2: number; readonly spansM?: readonly [number, number] }

/** A green's outline, or only its area. */
export type Shape = Polygon | AreaShape

/** Long span over short span where none is given: our assumption, most greens are somewhat longer than wide. */
const USUAL_SPAN_RATIO = 1.3

const POINTS = 72

/** Tells an outline from a mere area. */
export const isPolygon = (shape: Shape): shape is Polygon => 'outer' in shape

/**
 * The ellipse that stands in for a green without outline, long axis to the north, centre at 0, 0; anything worked on it is approximate.
 * The area is kept exactly; spans set only the ratio of the axes. `a b = A / (K sin(2 pi / K) / 2)` for its K points, so that the
 * polygon and not the smooth curve has the area told.
 */
export const equivalentEllipse = (shape: AreaShape): Polygon => {
  const [p, q] = shape.spansM ?? [USUAL_SPAN_RATIO, 1]
  const ratio = Math.max(p, q) / Math.min(p, q)
  const unitAreaM2 = (POINTS * Math.sin((2 * Math.PI) / POINTS)) / 2
  const shortM = Math.sqrt(shape.areaM2 / (unitAreaM2 * ratio))
  const outer = Array.from({ length: POINTS }, (_, k): LocalPoint => {
    const angle = (2 * Math.PI * k) / POINTS
    return { x: shortM * Math.cos(angle), y: shortM * ratio * Math.sin(angle) }
  })
  return { outer, holes: [] }
}

/** The outline, or the ellipse in its stead. */
export const polygonOf = (shape: Shape): Polygon => (isPolygon(shape) ? shape : equivalentEllipse(shape))
