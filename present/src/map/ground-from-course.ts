import {
  equivalentEllipse,
  lonLat,
  planeAt,
  polygonCentroid,
  type Course,
  type Green,
  type LocalPoint,
  type Plane,
  type Polygon,
} from '@swardwright/engine'
import type { MapGreen, MapGround, MapPlace } from './map-input.ts'

type Degrees = readonly [number, number]

/** A place of a checked course in local metres. Coordinates of a course were checked when it was read, so a refusal is a broken invariant. */
const localOf = (plane: Plane, [lonDeg, latDeg]: Degrees): LocalPoint => {
  const place = lonLat(lonDeg, latDeg)
  if (!place.ok) throw new RangeError(`${place.error.field} ${place.error.received} is off the map`)
  return plane.toLocal(place.value)
}

/** GeoJSON rings repeat their first point at the end; ours do not. */
const polygonOfRings = (plane: Plane, rings: readonly (readonly Degrees[])[]): Polygon => {
  const [outer = [], ...holes] = rings.map((ring) => ring.slice(0, -1).map((point) => localOf(plane, point)))
  return { outer, holes }
}

const movedTo = (polygon: Polygon, by: LocalPoint): Polygon => ({
  outer: polygon.outer.map((point) => ({ x: point.x + by.x, y: point.y + by.y })),
  holes: [],
})

const mapGreen = (plane: Plane, green: Green): MapGreen => {
  const { id, name, hole } = green
  if (green.outline !== undefined) {
    const outline = polygonOfRings(plane, green.outline)
    return { id, name, hole, outline, centre: polygonCentroid(outline), isDrawn: true }
  }
  const centre = localOf(plane, green.at)
  const outline = movedTo(equivalentEllipse({ areaM2: green.areaM2 }), centre)
  return { id, name, hole, outline, centre, isDrawn: false }
}

/** The ground of a course in local metres round its first green. */
export const groundFromCourse = (course: Course): MapGround => {
  const [lonDeg, latDeg] = course.greens[0]?.at ?? [0, 0]
  const origin = lonLat(lonDeg, latDeg)
  if (!origin.ok) throw new RangeError(`${origin.error.field} ${origin.error.received} is off the map`)
  const plane = planeAt(origin.value)
  return {
    greens: course.greens.map((green) => mapGreen(plane, green)),
    places: course.places.map((place): MapPlace => ({
      id: place.id,
      name: place.name,
      kind: place.kind,
      at: localOf(plane, place.at),
      ...(place.outline === undefined ? {} : { outline: polygonOfRings(plane, place.outline) }),
      ...(place.line === undefined ? {} : { line: place.line.map((point) => localOf(plane, point)) }),
    })),
  }
}
