import type { MapContent, MapFeature } from '../ground/map-feature.ts'
import type { Result } from '../result.ts'
import type { CourseReading } from './assemble-course.ts'
import type { Place } from './course.ts'
import type { CourseError } from './course-error.ts'
import { readCourse } from './read-course.ts'

/** What mapped things are in a course; all else is left out. */
const PLACE_KIND: Partial<Readonly<Record<MapFeature['kind'], Place['kind']>>> = {
  tee: 'tee',
  bunker: 'bunker',
  water: 'water',
  path: 'track',
}

const closed = (ring: MapFeature['rings'][number]): readonly (readonly [number, number])[] =>
  [...ring, ...ring.slice(0, 1)].map(({ lonDeg, latDeg }) => [lonDeg, latDeg])

const geometryOf = ({ shape, rings }: MapFeature) =>
  shape === 'surface'
    ? { type: 'Polygon', coordinates: rings.map(closed) }
    : { type: 'LineString', coordinates: (rings[0] ?? []).map(({ lonDeg, latDeg }) => [lonDeg, latDeg]) }

/** A number that a name begins with is the hole: '7', '7 Dimwell', '7th'. */
const holeOf = (name: string): number | undefined => {
  const hole = Number(/^\D{0,6}?(\d{1,2})(?!\d)/u.exec(name)?.[1])
  return hole >= 1 && hole <= 36 ? hole : undefined
}

const greenProperties = ({ name }: MapFeature, taken: readonly MapFeature[]) => {
  // Two greens of one name are told apart by nobody: they get made-up ones.
  const isOwn = name !== undefined && taken.filter((other) => other.name === name).length === 1
  const hole = isOwn ? holeOf(name) : undefined
  return { kind: 'green', ...(isOwn ? { name } : {}), ...(hole === undefined ? {} : { hole }) }
}

/** The surfaces of a map that are greens; where none is called so, all surfaces of no other kind. */
export const greensOfMap = ({ features }: MapContent): readonly MapFeature[] => {
  const surfaces = features.filter((feature) => feature.shape === 'surface')
  const greens = surfaces.filter((feature) => feature.kind === 'green')
  return greens.length > 0 ? greens : surfaces.filter((feature) => feature.kind === 'other')
}

/**
 * A rough course from a map (an OpenStreetMap extract, KML, or GeoJSON that is no course file): its greens, and tees, bunkers, water and tracks
 * around them; machines, people and stores are those usual. Errors: those of a course file; a map without greens is one.
 */
export const courseFromMap = (content: MapContent): Result<CourseReading, CourseError> => {
  const greens = greensOfMap(content)
  const features = content.features.flatMap((feature) => {
    const kind = PLACE_KIND[feature.kind]
    const isFit = kind === 'track' ? feature.shape === 'line' : feature.shape === 'surface'
    if (greens.includes(feature))
      return [
        { type: 'Feature', properties: greenProperties(feature, greens), geometry: geometryOf(feature) },
      ]
    return kind === undefined || !isFit
      ? []
      : [{ type: 'Feature', properties: { kind }, geometry: geometryOf(feature) }]
  })
  return readCourse(JSON.stringify({ type: 'FeatureCollection', features }))
}
