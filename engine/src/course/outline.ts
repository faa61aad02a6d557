import { assert } from '../assert.ts'
import { checkedPolygon, MIN_MEAN_WIDTH_M } from '../ground/checked-polygon.ts'
import type { OutlineError } from '../ground/outline-error.ts'
import { lonLat, planeAt, type LocalPoint, type Plane } from '../ground/plane.ts'
import {
  distanceM,
  eachEdge,
  isOnGreen,
  polygonAreaM2,
  polygonCentroid,
  ringsOf,
  type Polygon,
} from '../ground/polygon.ts'
import { fail, ok, type Result } from '../result.ts'
import { GREEN_AREA_M2 } from './course.ts'
import type { CourseError, CourseWhere } from './course-error.ts'
import type { Position } from './read-geometry.ts'

/** An outline's area, m2 (to 0.01), and a point on it, degrees (to 1e-7). Rounded so that every machine's sine gives the same course. */
export type OutlineFacts = { readonly areaM2: number; readonly at: Position }

/** The local plane at a position that has been checked. */
export const planeAtPosition = ([lonDeg, latDeg]: Position): Plane => {
  const origin = lonLat(lonDeg, latDeg)
  assert(origin.ok, 'the position was checked when it was read')
  return planeAt(origin.value)
}

/** A checked position in local metres. */
export const toLocal = (plane: Plane, [lonDeg, latDeg]: Position): LocalPoint => {
  const place = lonLat(lonDeg, latDeg)
  assert(place.ok, 'the position was checked when it was read')
  return plane.toLocal(place.value)
}

const roundedTo = (value: number, digits: number): number => Number(value.toFixed(digits))

/** Local metres to a position of a file, to about a centimetre. */
export const toPosition = (plane: Plane, point: LocalPoint): Position => {
  const place = plane.toLonLat(point)
  return [roundedTo(place.lonDeg, 7), roundedTo(place.latDeg, 7)]
}

/** A point on the surface: the centre of gravity, or where that lies off a bent green, the middle of the widest stretch due east and west of it. */
const pointOnSurface = (polygon: Polygon): LocalPoint => {
  const centre = polygonCentroid(polygon)
  if (isOnGreen(centre, polygon)) return centre
  const crossings: number[] = []
  for (const ring of ringsOf(polygon))
    eachEdge(ring, (a, b) => {
      if (a.y > centre.y !== b.y > centre.y)
        crossings.push(a.x + ((centre.y - a.y) / (b.y - a.y)) * (b.x - a.x))
    })
  crossings.sort((p, q) => p - q)
  let best = { x: centre.x, widthM: 0 }
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const [from = 0, to = 0] = crossings.slice(i, i + 2)
    if (to - from > best.widthM) best = { x: (from + to) / 2, widthM: to - from }
  }
  return { x: best.x, y: centre.y }
}

const outlineError = (error: OutlineError, where: CourseWhere, plane: Plane): CourseError => {
  assert(error.type !== 'notFinite', 'positions are finite once read')
  if (error.type === 'selfCrossing' || error.type === 'islandOutside') {
    const [lonDeg, latDeg] = toPosition(plane, error.at)
    return { type: error.type, where, lonDeg, latDeg }
  }
  if (error.type === 'tooLarge') return outlineAreaOutOfRange(where, error.areaM2)
  const meanWidthM = error.type === 'sliver' ? error.meanWidthM : 0
  return { type: 'sliver', where, meanWidthM, minMeanWidthM: MIN_MEAN_WIDTH_M }
}

/** The refusal of an outline that holds more or less ground than a green can. */
export const outlineAreaOutOfRange = (where: CourseWhere, areaM2: number): CourseError => {
  const { min, max } = GREEN_AREA_M2
  const received = Math.round(areaM2 * 100) / 100
  return { type: 'outOfRange', where, field: 'area inside the outline', unit: 'm2', min, max, received }
}

/** The gap between first and last position of the first ring that is not closed, m; null when all are closed. */
export const ringGapM = (rings: readonly (readonly Position[])[]): number | null => {
  for (const ring of rings) {
    const [first, last] = [ring[0], ring[ring.length - 1]]
    if (first === undefined || last === undefined) continue
    if (first[0] !== last[0] || first[1] !== last[1]) {
      const plane = planeAtPosition(first)
      return distanceM(toLocal(plane, first), toLocal(plane, last))
    }
  }
  return null
}

/** Checks a green's rings and measures them on a plane of their own. Errors: unclosed, crossing (with the place), sliver, island outside, too large. */
export const readOutline = (
  rings: readonly (readonly Position[])[],
  where: CourseWhere,
): Result<OutlineFacts, CourseError> => {
  const gapM = ringGapM(rings)
  if (gapM !== null) return fail({ type: 'unclosedRing', where, gapM })
  const first = rings[0]?.[0]
  assert(first !== undefined, 'a polygon has a ring once read')
  const plane = planeAtPosition(first)
  const [outer = [], ...holes] = rings.map((ring) => ring.slice(0, -1).map((p) => toLocal(plane, p)))
  const checked = checkedPolygon({ outer, holes })
  if (!checked.ok) return fail(outlineError(checked.error, where, plane))
  return ok({
    areaM2: roundedTo(polygonAreaM2(checked.value), 2),
    at: toPosition(plane, pointOnSurface(checked.value)),
  })
}

/** As `readOutline`, for a green that is drawn by itself: the area must be one that a green can have. */
export const readGreenOutline = (
  rings: readonly (readonly Position[])[],
  where: CourseWhere,
): Result<OutlineFacts, CourseError> => {
  const read = readOutline(rings, where)
  if (!read.ok) return read
  const { areaM2 } = read.value
  const isGreen = areaM2 >= GREEN_AREA_M2.min && areaM2 <= GREEN_AREA_M2.max
  return isGreen ? read : fail(outlineAreaOutOfRange(where, areaM2))
}
