import type { Green } from '../course/course.ts'
import type { Shape } from '../ground/ellipse.ts'
import { lonLat, planeAt, type LocalPoint, type LonLat } from '../ground/plane.ts'
import { assert } from '../assert.ts'

/** A checked place from the pair that a course holds. */
export const placeOf = (pair: readonly [number, number]): LonLat => {
  const place = lonLat(pair[0], pair[1])
  assert(place.ok, 'places of a course were checked when it was read')
  return place.value
}

/** GeoJSON closes its rings; a ring in metres is open. */
const openRing = (points: readonly LocalPoint[]): readonly LocalPoint[] => points.slice(0, -1)

/** The green in local metres; without an outline only its area, then all that is worked on it is approximate. */
export const greenShape = (green: Green): Shape => {
  if (green.outline === undefined) return { areaM2: green.areaM2 }
  const plane = planeAt(placeOf(green.at))
  const [outer, ...holes] = green.outline.map((ring) =>
    openRing(ring.map((pair) => plane.toLocal(placeOf(pair)))),
  )
  return outer === undefined ? { areaM2: green.areaM2 } : { outer, holes }
}
