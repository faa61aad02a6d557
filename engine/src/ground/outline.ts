import { fail, ok, type Result } from '../result.ts'
import { checkedPolygon } from './checked-polygon.ts'
import type { OutlineError } from './outline-error.ts'
import { lonLat, planeAt, type LonLat, type Plane } from './plane.ts'
import { polygonAreaM2, type Polygon } from './polygon.ts'

/** A green's outline on its own plane, checked. */
export type Outline = {
  readonly plane: Plane
  readonly polygon: Polygon
  /** Told to 1 m2 on screens; true to far less on its own plane. */
  readonly areaM2: number
}

/** The middle of the box round some places; near enough to touch the plane down. */
const middleOf = (places: readonly LonLat[]): LonLat | undefined => {
  const lons = places.map((place) => place.lonDeg)
  const lats = places.map((place) => place.latDeg)
  const middle = lonLat(
    (Math.min(...lons) + Math.max(...lons)) / 2,
    (Math.min(...lats) + Math.max(...lats)) / 2,
  )
  return middle.ok ? middle.value : undefined
}

/** Why an outline is refused, and where on the map. */
export type PlacedOutlineError = { readonly problem: OutlineError; readonly at: LonLat | undefined }

const placed = (problem: OutlineError, plane: Plane): PlacedOutlineError => ({
  problem,
  at: 'at' in problem ? plane.toLonLat(problem.at) : undefined,
})

/** A surface in degrees (outer ring, then islands) as a checked outline on a plane of its own. Errors: the first fault found, with its place. */
export const outlineFrom = (rings: readonly (readonly LonLat[])[]): Result<Outline, PlacedOutlineError> => {
  const [outer = [], ...holes] = rings
  const origin = middleOf(outer)
  if (origin === undefined)
    return fail({ problem: { type: 'tooFewPoints', ring: 0, points: outer.length }, at: undefined })
  const plane = planeAt(origin)
  const checked = checkedPolygon({
    outer: outer.map(plane.toLocal),
    holes: holes.map((hole) => hole.map(plane.toLocal)),
  })
  if (!checked.ok) return fail(placed(checked.error, plane))
  return ok({ plane, polygon: checked.value, areaM2: polygonAreaM2(checked.value) })
}
