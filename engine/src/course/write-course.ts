import type { Course, Green, Place } from './course.ts'
import { COURSE_FILE_VERSION } from './course-file.ts'
import { readOutline } from './outline.ts'
import { positionOnPlace, type Geometry, type Position } from './read-geometry.ts'

const isSame = (a: Position, b: Position): boolean => a[0] === b[0] && a[1] === b[1]

/** What the outline tells by itself is not said twice, so that an edited outline carries its own area and place. */
const besidesOutline = (green: Green): { readonly areaM2?: number; readonly at?: Position } => {
  const { areaM2, at, outline } = green
  if (outline === undefined) return { areaM2 }
  const told = readOutline(outline, { feature: null, name: green.name, path: 'outline' })
  if (!told.ok) return { areaM2, at }
  return {
    ...(told.value.areaM2 === areaM2 ? {} : { areaM2 }),
    ...(isSame(told.value.at, at) ? {} : { at }),
  }
}

const greenFeature = (green: Green) => {
  const { outline, at, areaM2: _area, ...facts } = green
  return {
    type: 'Feature',
    properties: { kind: 'green', ...facts, ...besidesOutline(green) },
    geometry:
      outline === undefined ? { type: 'Point', coordinates: at } : { type: 'Polygon', coordinates: outline },
  }
}

const geometryOf = ({ at, line, outline }: Place): Geometry => {
  if (outline !== undefined) return { type: 'Polygon', rings: outline }
  return line === undefined ? { type: 'Point', at } : { type: 'LineString', line }
}

const placeFeature = (place: Place) => {
  const { at, line, outline, ...facts } = place
  const geometry = geometryOf(place)
  const own = isSame(positionOnPlace(geometry), at) ? {} : { at }
  return {
    type: 'Feature',
    properties: { ...facts, ...own },
    geometry: { type: geometry.type, coordinates: outline ?? line ?? at },
  }
}

/**
 * A course as the text of a course file, one feature a line. Reading it back gives the same course.
 * `assumed` goes along, so that what was rough stays marked.
 */
export const writeCourse = (course: Course, assumed: readonly string[] = []): string => {
  const { greens, places, version: _version, ...club } = course
  const member = { version: COURSE_FILE_VERSION, ...club, ...(assumed.length === 0 ? {} : { assumed }) }
  const features = [...greens.map(greenFeature), ...places.map(placeFeature)]
  const lines = features.map((feature) => `    ${JSON.stringify(feature)}`).join(',\n')
  const head = JSON.stringify(member, null, 2).replaceAll('\n', '\n  ')
  return `{\n  "type": "FeatureCollection",\n  "swardwright": ${head},\n  "features": [\n${lines}\n  ]\n}\n`
}
