import { fail, ok, type Result } from '../result.ts'
import type { MapContent, MapFileError } from './map-feature.ts'
import { osmFeatures, type OsmRelation, type OsmWay } from './osm-features.ts'
import { elementsNamed, readXml, type XmlElement } from './xml.ts'

type Pair = readonly [number, number]

const tagsOf = (element: XmlElement): Record<string, string> =>
  Object.fromEntries(
    element.children
      .filter((child) => child.name === 'tag')
      .map((tag) => [tag.attributes['k'] ?? '', tag.attributes['v'] ?? '']),
  )

const pairFrom = (attributes: Readonly<Record<string, string>>): Pair => [
  Number.parseFloat(attributes['lon'] ?? ''),
  Number.parseFloat(attributes['lat'] ?? ''),
]

/** Features of an OpenStreetMap XML text (API 0.6 or an extract of it). */
export const readOsmXml = (source: string): Result<MapContent, MapFileError> => {
  const [osm] = elementsNamed(readXml(source), 'osm')
  if (osm === undefined)
    return fail({ type: 'unknownFormat', expected: 'OpenStreetMap XML with an <osm> element' })
  const named = (name: string) => osm.children.filter((child) => child.name === name)
  const idOf = (element: XmlElement) => element.attributes['id'] ?? ''
  const refsOf = (element: XmlElement, name: string) =>
    element.children.filter((child) => child.name === name)
  return ok(
    osmFeatures({
      nodes: new Map(named('node').map((node) => [idOf(node), pairFrom(node.attributes)])),
      ways: new Map(
        named('way').map((way): [string, OsmWay] => [
          idOf(way),
          { nodes: refsOf(way, 'nd').map((nd) => nd.attributes['ref'] ?? ''), tags: tagsOf(way) },
        ]),
      ),
      relations: named('relation').map((relation): OsmRelation => {
        const members = refsOf(relation, 'member').filter((member) => member.attributes['type'] === 'way')
        return {
          members: members.map(({ attributes }) => ({
            way: attributes['ref'] ?? '',
            role: attributes['role'] ?? '',
          })),
          tags: tagsOf(relation),
        }
      }),
    }),
  )
}

type Json = Readonly<Record<string, unknown>>

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const objects = (value: unknown): readonly Json[] => (Array.isArray(value) ? value.filter(isObject) : [])

const jsonPair = (value: Json): Pair => [Number(value['lon']), Number(value['lat'])]

const jsonTags = (value: Json): Record<string, string> =>
  isObject(value['tags'])
    ? Object.fromEntries(Object.entries(value['tags']).map(([key, tag]) => [key, String(tag)]))
    : {}

/** Places written out with a way or a member, as some extracts do. */
const jsonPlaces = (value: Json): { readonly places: readonly Pair[] } | undefined =>
  Array.isArray(value['geometry']) ? { places: objects(value['geometry']).map(jsonPair) } : undefined

const jsonWay = (way: Json): OsmWay => ({
  nodes: Array.isArray(way['nodes']) ? way['nodes'].map(String) : [],
  tags: jsonTags(way),
  ...jsonPlaces(way),
})

const jsonRelation = (relation: Json): OsmRelation => ({
  members: objects(relation['members'])
    .filter((member) => member['type'] === 'way')
    .map((member) => ({
      way: String(member['ref']),
      role: member['role'] === 'inner' ? 'inner' : 'outer',
      ...jsonPlaces(member),
    })),
  tags: jsonTags(relation),
})

/** Features of an OpenStreetMap JSON text: an object with `elements`, nodes listed or places written out with each way. */
export const readOsmJson = (source: string): Result<MapContent, MapFileError> => {
  let json: unknown
  try {
    json = JSON.parse(source)
  } catch (error) {
    return fail({ type: 'notJson', detail: error instanceof Error ? error.message : String(error) })
  }
  if (!isObject(json) || !Array.isArray(json['elements']))
    return fail({ type: 'unknownFormat', expected: 'OpenStreetMap JSON with "elements"' })
  const elements = objects(json['elements'])
  const ofType = (type: string) => elements.filter((element) => element['type'] === type)
  return ok(
    osmFeatures({
      nodes: new Map(ofType('node').map((node) => [String(node['id']), jsonPair(node)])),
      ways: new Map(ofType('way').map((way) => [String(way['id']), jsonWay(way)])),
      relations: ofType('relation').map(jsonRelation),
    }),
  )
}
