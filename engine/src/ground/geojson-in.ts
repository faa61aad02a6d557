import { fail, ok, type Result } from '../result.ts'
import {
  contentOf,
  featureOf,
  kindFromTags,
  type MapContent,
  type MapFeature,
  type MapFileError,
  type SkippedFeature,
} from './map-feature.ts'

type Json = Readonly<Record<string, unknown>>

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isPair = (value: unknown): value is readonly [number, number] =>
  Array.isArray(value) && typeof value[0] === 'number' && typeof value[1] === 'number'

const pairs = (value: unknown): readonly (readonly [number, number])[] =>
  Array.isArray(value) ? value.filter(isPair) : []

const lists = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])

type Described = { readonly tags: Json; readonly name: string | undefined }

/** Each surface or line of a geometry (RFC 7946, section 3.1), members of collections apart. */
const shapesOf = (geometry: unknown): readonly { surface: boolean; rings: readonly unknown[] }[] => {
  if (!isObject(geometry)) return []
  const { coordinates } = geometry
  switch (geometry['type']) {
    case 'Polygon':
      return [{ surface: true, rings: lists(coordinates) }]
    case 'MultiPolygon':
      return lists(coordinates).map((rings) => ({ surface: true, rings: lists(rings) }))
    case 'LineString':
      return [{ surface: false, rings: [coordinates] }]
    case 'MultiLineString':
      return lists(coordinates).map((line) => ({ surface: false, rings: [line] }))
    case 'GeometryCollection':
      return lists(geometry['geometries']).flatMap(shapesOf)
    default:
      return []
  }
}

const read = (
  geometry: unknown,
  { tags, name }: Described,
  index: number,
): readonly (MapFeature | SkippedFeature)[] => {
  const shapes = shapesOf(geometry)
  if (shapes.length === 0) return [{ index, name, reason: 'noPlace' }]
  return shapes.map(({ surface, rings }) => {
    const given = {
      kind: kindFromTags(tags),
      name,
      shape: surface ? ('surface' as const) : ('line' as const),
    }
    return featureOf(given, rings.map(pairs), index)
  })
}

const described = (feature: Json): Described => {
  const tags = isObject(feature['properties']) ? feature['properties'] : {}
  const name = tags['name'] ?? tags['ref']
  return { tags, name: typeof name === 'string' || typeof name === 'number' ? String(name) : undefined }
}

/** Surfaces and lines of a GeoJSON text (RFC 7946: longitude first, WGS84). A bare geometry or feature will do. Points are skipped. */
export const readGeoJson = (source: string): Result<MapContent, MapFileError> => {
  let json: unknown
  try {
    json = JSON.parse(source)
  } catch (error) {
    return fail({ type: 'notJson', detail: error instanceof Error ? error.message : String(error) })
  }
  if (!isObject(json) || typeof json['type'] !== 'string')
    return fail({ type: 'unknownFormat', expected: 'GeoJSON with a "type"' })
  const features = json['type'] === 'FeatureCollection' ? lists(json['features']).filter(isObject) : [json]
  return ok(
    contentOf(
      features.flatMap((feature, index) =>
        feature['type'] === 'Feature'
          ? read(feature['geometry'], described(feature), index)
          : read(feature, { tags: {}, name: undefined }, index),
      ),
    ),
  )
}
