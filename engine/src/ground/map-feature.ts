import { lonLat, type LonLat } from './plane.ts'

/** What a mapped thing is on the course. */
export type FeatureKind =
  'green' | 'tee' | 'fairway' | 'bunker' | 'rough' | 'water' | 'hole' | 'path' | 'building' | 'other'

/** A thing read from a map file: a surface (outer ring, then islands) or a line. Rings and lines are as drawn, unchecked as shapes. */
export type MapFeature = {
  readonly kind: FeatureKind
  readonly name: string | undefined
  readonly shape: 'surface' | 'line'
  /** For a surface: outer ring first, then islands, closing points dropped. For a line: one list. */
  readonly rings: readonly (readonly LonLat[])[]
}

/** Something in the file that could not be read, and where. */
export type SkippedFeature = {
  /** Place in the file, from 0, among things of its sort. */
  readonly index: number
  readonly name: string | undefined
  readonly reason: 'placeOutOfRange' | 'tooFewPoints' | 'missingNodes' | 'ringNotClosed' | 'noPlace'
}

/** What a file held. */
export type MapContent = {
  readonly features: readonly MapFeature[]
  readonly skipped: readonly SkippedFeature[]
}

/** Why a file cannot be read at all. */
export type MapFileError =
  | { readonly type: 'notJson'; readonly detail: string }
  | { readonly type: 'unknownFormat'; readonly expected: string }

/** Pairs of longitude and latitude, checked; undefined when one is off the globe. */
export const placesFrom = (pairs: readonly (readonly [number, number])[]): readonly LonLat[] | undefined => {
  const places: LonLat[] = []
  for (const [lonDeg, latDeg] of pairs) {
    const place = lonLat(lonDeg, latDeg)
    if (!place.ok) return undefined
    places.push(place.value)
  }
  return places
}

const isSame = (a: LonLat | undefined, b: LonLat | undefined): boolean =>
  a !== undefined && a.lonDeg === b?.lonDeg && a.latDeg === b.latDeg

/** The ring without the closing point that files repeat. */
export const openRing = (ring: readonly LonLat[]): readonly LonLat[] =>
  ring.length > 1 && isSame(ring[0], ring[ring.length - 1]) ? ring.slice(0, -1) : ring

/** Pairs as a feature, or why not. */
export const featureOf = (
  given: {
    readonly kind: FeatureKind
    readonly name: string | undefined
    readonly shape: 'surface' | 'line'
  },
  rings: readonly (readonly (readonly [number, number])[])[],
  index: number,
): MapFeature | SkippedFeature => {
  const places = rings.map(placesFrom)
  const sound = places.flatMap((ring) =>
    ring === undefined ? [] : [given.shape === 'surface' ? openRing(ring) : ring],
  )
  if (sound.length < places.length) return { index, name: given.name, reason: 'placeOutOfRange' }
  const least = given.shape === 'surface' ? 3 : 2
  if (sound.length === 0 || sound.some((ring) => ring.length < least))
    return { index, name: given.name, reason: 'tooFewPoints' }
  return { ...given, rings: sound }
}

/** Sorts what was read from what was not. */
export const contentOf = (read: readonly (MapFeature | SkippedFeature)[]): MapContent => ({
  features: read.filter((entry) => 'rings' in entry),
  skipped: read.filter((entry) => 'reason' in entry),
})

const KIND_BY_WORD: Readonly<Record<string, FeatureKind>> = {
  green: 'green',
  putting_green: 'green',
  tee: 'tee',
  fairway: 'fairway',
  bunker: 'bunker',
  rough: 'rough',
  water_hazard: 'water',
  lateral_water_hazard: 'water',
  hole: 'hole',
  cartpath: 'path',
  path: 'path',
  clubhouse: 'building',
}

/** The kind that tags or properties tell, after OpenStreetMap's `golf=*` (wiki page Key:golf), else highway, building or natural=water. */
export const kindFromTags = (tags: Readonly<Record<string, unknown>>): FeatureKind => {
  const golf = tags['golf'] ?? tags['kind']
  const told = typeof golf === 'string' ? KIND_BY_WORD[golf] : undefined
  if (told !== undefined) return told
  if (tags['natural'] === 'water') return 'water'
  if (typeof tags['building'] === 'string' && tags['building'] !== 'no') return 'building'
  return typeof tags['highway'] === 'string' ? 'path' : 'other'
}
