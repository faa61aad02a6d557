import {
  equivalentEllipse,
  lonLat,
  outlineFrom,
  planeAt,
  readGreenOutline,
  type Green,
  type LocalPoint,
  type LonLat,
  type OutlineFacts,
  type Plane,
} from '@swardwright/engine'
import { courseErrorSentence } from '@swardwright/present'
import { WORDS } from './words.ts'

/** A place as a course file has it: longitude, latitude, degrees. */
export type Pair = readonly [number, number]

/** An outline in the making: open rings, the outer one first; the outer one may still have too few corners. */
export type OutlineDraft = { readonly outer: readonly Pair[]; readonly holes: readonly (readonly Pair[])[] }

/** What is to be said of a draft. */
export type Judged =
  | { readonly type: 'empty' }
  | { readonly type: 'sound'; readonly facts: OutlineFacts }
  | { readonly type: 'wrong'; readonly sentence: string; readonly at: Pair | null }

/** About 1 cm: finer than any walk or picture. */
const DECIMALS = 7

/** A place as it is kept. */
export const pairOf = ({ lonDeg, latDeg }: LonLat): Pair => [
  Number(lonDeg.toFixed(DECIMALS)),
  Number(latDeg.toFixed(DECIMALS)),
]

/** The checked place of a pair; places off the globe are left out. */
const placesOf = (pairs: readonly Pair[]): readonly LonLat[] =>
  pairs.flatMap(([lonDeg, latDeg]) => {
    const place = lonLat(lonDeg, latDeg)
    return place.ok ? [place.value] : []
  })

/** The plane that touches the ground at a pair of a course, which was checked when it was read. */
export const planeOf = (at: Pair): Plane => {
  const [place] = placesOf([at])
  if (place === undefined) throw new Error('places of a course lie on the globe')
  return planeAt(place)
}

/** Pairs in metres of a plane. */
export const localOf = (pairs: readonly Pair[], plane: Plane): readonly LocalPoint[] =>
  placesOf(pairs).map(plane.toLocal)

/** GeoJSON closes its rings. */
const closed = (ring: readonly Pair[]): readonly Pair[] => [...ring, ...ring.slice(0, 1)]

/** Takes up the outline that a green has; empty where it has none. */
export const draftOf = (green: Green): OutlineDraft => {
  const [outer = [], ...holes] = (green.outline ?? []).map((ring) => ring.slice(0, -1))
  return { outer, holes }
}

/** An ellipse of the green's area, to be pulled into shape. */
export const ellipseDraft = (green: Green): OutlineDraft => {
  const plane = planeOf(green.at)
  const { outer } = equivalentEllipse({ areaM2: green.areaM2 })
  // Every third of its 72 corners: few enough to drag.
  return {
    outer: outer.filter((_, k) => k % 3 === 0).map((point) => pairOf(plane.toLonLat(point))),
    holes: [],
  }
}

/** Whether a draft will do, its area, or why not and where. */
export const judge = ({ outer, holes }: OutlineDraft, name: string): Judged => {
  if (outer.length === 0) return { type: 'empty' }
  if (outer.length < 3) return { type: 'wrong', sentence: WORDS.tooFew, at: null }
  const read = readGreenOutline([outer, ...holes].map(closed), { feature: null, name, path: 'outline' })
  if (read.ok) return { type: 'sound', facts: read.value }
  const placed = outlineFrom([outer, ...holes].map(placesOf))
  const at = placed.ok || placed.error.at === undefined ? null : pairOf(placed.error.at)
  return { type: 'wrong', sentence: courseErrorSentence(read.error), at }
}

/** What is kept of a sound draft: the outline, its area, and a point on it. */
export const fieldsOf = (
  { outer, holes }: OutlineDraft,
  { areaM2, at }: OutlineFacts,
): Pick<Green, 'areaM2' | 'at'> & { readonly outline: [number, number][][] } => ({
  outline: [outer, ...holes].map((ring) => closed(ring).map(([lonDeg, latDeg]) => [lonDeg, latDeg])),
  areaM2,
  at: [at[0], at[1]],
})
