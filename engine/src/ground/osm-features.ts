import {
  contentOf,
  featureOf,
  kindFromTags,
  type MapContent,
  type MapFeature,
  type SkippedFeature,
} from './map-feature.ts'

type Pair = readonly [number, number]

/** OpenStreetMap data, whichever way it was written. */
export type OsmData = {
  readonly nodes: ReadonlyMap<string, Pair>
  readonly ways: ReadonlyMap<string, OsmWay>
  readonly relations: readonly OsmRelation[]
}

/** A way: its nodes, or their places written out in the file itself. */
export type OsmWay = {
  readonly nodes: readonly string[]
  readonly places?: readonly Pair[]
  readonly tags: Readonly<Record<string, string>>
}

/** A relation with its member ways. */
export type OsmRelation = {
  readonly members: readonly {
    readonly way: string
    readonly role: string
    readonly places?: readonly Pair[]
  }[]
  readonly tags: Readonly<Record<string, string>>
}

const placesOf = (way: OsmWay, nodes: OsmData['nodes']): readonly Pair[] | undefined => {
  if (way.places !== undefined) return way.places
  const places = way.nodes.flatMap((id) => nodes.get(id) ?? [])
  const found = way.nodes.map((id) => nodes.get(id)).filter((pair) => pair !== undefined)
  return found.length === way.nodes.length && places.length > 0 ? found : undefined
}

const isSamePair = (a: Pair | undefined, b: Pair | undefined): boolean =>
  a !== undefined && b !== undefined && a[0] === b[0] && a[1] === b[1]

/** Joins member lines end to end into closed rings; undefined when an end stays open. */
const joinedRings = (lines: readonly (readonly Pair[])[]): readonly (readonly Pair[])[] | undefined => {
  const rings: (readonly Pair[])[] = []
  let left = [...lines]
  for (let ring = left.shift(); ring !== undefined; ring = left.shift()) {
    while (!isSamePair(ring[0], ring[ring.length - 1])) {
      const end: Pair | undefined = ring[ring.length - 1]
      const next: readonly Pair[] | undefined = left.find(
        (line) => isSamePair(line[0], end) || isSamePair(line[line.length - 1], end),
      )
      if (next === undefined) return undefined
      left = left.filter((line) => line !== next)
      ring = [...ring, ...(isSamePair(next[0], end) ? next : next.toReversed()).slice(1)]
    }
    rings.push(ring)
  }
  return rings
}

const nameOf = (tags: Readonly<Record<string, string>>): string | undefined => tags['name'] ?? tags['ref']

const isInside = ([x, y]: Pair, ring: readonly Pair[]): boolean => {
  let inside = false
  ring.forEach(([bx, by], k) => {
    const [ax, ay] = ring[(k + ring.length - 1) % ring.length] ?? [bx, by]
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  })
  return inside
}

const readRelation = (
  relation: OsmRelation,
  data: OsmData,
  index: number,
): readonly (MapFeature | SkippedFeature)[] => {
  const name = nameOf(relation.tags)
  const linesOf = (isWanted: (role: string) => boolean) =>
    relation.members
      .filter((member) => isWanted(member.role))
      .map(
        (member) =>
          member.places ??
          placesOf(data.ways.get(member.way) ?? { nodes: [member.way], tags: {} }, data.nodes),
      )
  const outer = linesOf((role) => role !== 'inner')
  const inner = linesOf((role) => role === 'inner')
  const known = [...outer, ...inner].filter((line) => line !== undefined)
  if (known.length < outer.length + inner.length) return [{ index, name, reason: 'missingNodes' }]
  const outerRings = joinedRings(outer.filter((line) => line !== undefined))
  const innerRings = joinedRings(inner.filter((line) => line !== undefined))
  if (outerRings === undefined || innerRings === undefined) return [{ index, name, reason: 'ringNotClosed' }]
  return outerRings.map((ring) => {
    const islands = innerRings.filter(([first]) => first !== undefined && isInside(first, ring))
    return featureOf({ kind: kindFromTags(relation.tags), name, shape: 'surface' }, [ring, ...islands], index)
  })
}

const readWay = (way: OsmWay, nodes: OsmData['nodes'], index: number): MapFeature | SkippedFeature => {
  const name = nameOf(way.tags)
  const places = placesOf(way, nodes)
  if (places === undefined) return { index, name, reason: 'missingNodes' }
  const kind = kindFromTags(way.tags)
  const closed = places.length > 3 && isSamePair(places[0], places[places.length - 1])
  const isLine = !closed || kind === 'path' || kind === 'hole'
  return featureOf({ kind, name, shape: isLine ? 'line' : 'surface' }, [places], index)
}

/** Golf things (and paths, buildings, water) of OpenStreetMap data: tagged ways and multipolygon relations. What has no such tag is passed over. */
export const osmFeatures = (data: OsmData): MapContent => {
  const ways = [...data.ways.values()].filter((way) => kindFromTags(way.tags) !== 'other')
  const relations = data.relations.filter((relation) => kindFromTags(relation.tags) !== 'other')
  return contentOf([
    ...ways.map((way, index) => readWay(way, data.nodes, index)),
    ...relations.flatMap((relation, index) => readRelation(relation, data, ways.length + index)),
  ])
}
