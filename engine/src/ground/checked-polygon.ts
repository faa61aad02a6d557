import { fail, ok, type Result } from '../result.ts'
import { findCrossing } from './crossing.ts'
import type { OutlineError } from './outline-error.ts'
import type { LocalPoint } from './plane.ts'
import { distanceM, isInsideRing, ringLengthM, signedAreaM2, type Polygon, type Ring } from './polygon.ts'

/** Points nearer to each other than this are one point, m: under what any survey of turf can tell. */
const SAME_POINT_M = 0.001

/** Thinnest mean width (2 area / perimeter) of a green, m: no machine works a strip thinner than a mower's cylinder (our assumption). */
export const MIN_MEAN_WIDTH_M = 0.25

/** An island can be as small as a sprinkler head; thinner than this it is a drawing slip, m (our assumption). */
const MIN_ISLAND_MEAN_WIDTH_M = 0.02

/** Largest accepted green, m2: the largest known greens are near a fifth of this (from memory), a larger ring is a fairway or a unit slip. */
export const MAX_GREEN_M2 = 20_000

/** The ring without repeated points, and without the closing point some formats repeat. */
export const withoutRepeats = (ring: Ring): Ring => {
  const kept: LocalPoint[] = []
  for (const point of ring) {
    const last = kept[kept.length - 1]
    if (last === undefined || distanceM(last, point) > SAME_POINT_M) kept.push(point)
  }
  const [first] = kept
  const isFirstAgain = (point: LocalPoint): boolean =>
    first !== undefined && distanceM(point, first) <= SAME_POINT_M
  const end = kept.findLastIndex((point, k) => k === 0 || !isFirstAgain(point))
  return kept.slice(0, end + 1)
}

const findNotFinite = (rings: readonly Ring[]): OutlineError | undefined => {
  for (const [ring, points] of rings.entries()) {
    const point = points.findIndex(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y))
    if (point >= 0) return { type: 'notFinite', ring, point }
  }
  return undefined
}

const findTooFew = (rings: readonly Ring[]): OutlineError | undefined => {
  const ring = rings.findIndex((points) => points.length < 3)
  return ring < 0 ? undefined : { type: 'tooFewPoints', ring, points: rings[ring]?.length ?? 0 }
}

const checkWidth = (ring: Ring, index: number): OutlineError | undefined => {
  const areaM2 = Math.abs(signedAreaM2(ring))
  const meanWidthM = (2 * areaM2) / ringLengthM(ring)
  const minMeanWidthM = index === 0 ? MIN_MEAN_WIDTH_M : MIN_ISLAND_MEAN_WIDTH_M
  const [at = { x: 0, y: 0 }] = ring
  if (meanWidthM < minMeanWidthM)
    return { type: 'sliver', ring: index, at, areaM2, meanWidthM, minMeanWidthM }
  return index === 0 && areaM2 > MAX_GREEN_M2
    ? { type: 'tooLarge', areaM2, maxAreaM2: MAX_GREEN_M2 }
    : undefined
}

/** An island must lie on the green, and not within another island. */
const checkIsland = (ring: Ring, index: number, rings: readonly Ring[]): OutlineError | undefined => {
  const [at] = ring
  if (at === undefined || index === 0) return undefined
  const [outer = []] = rings
  const inOther = rings.some((other, k) => k > 0 && k !== index && isInsideRing(at, other))
  return isInsideRing(at, outer) && !inOther ? undefined : { type: 'islandOutside', ring: index, at }
}

const turned = (ring: Ring, sign: 1 | -1): Ring => (signedAreaM2(ring) * sign < 0 ? ring.toReversed() : ring)

/**
 * A shape that the rest of the ground work may trust: no repeated points, outer ring anticlockwise, islands clockwise, no crossing,
 * no sliver, islands on the green. The input is left alone. Errors: `OutlineError`, the first found, with its place.
 */
export const checkedPolygon = (polygon: Polygon): Result<Polygon, OutlineError> => {
  const given = [polygon.outer, ...polygon.holes]
  const rings = given.map(withoutRepeats)
  const early = findNotFinite(given) ?? findTooFew(rings)
  if (early !== undefined) return fail(early)
  const crossing = findCrossing(rings)
  if (crossing !== undefined) return fail({ type: 'selfCrossing', ...crossing })
  for (const [index, ring] of rings.entries()) {
    const error = checkWidth(ring, index) ?? checkIsland(ring, index, rings)
    if (error !== undefined) return fail(error)
  }
  const [outer = [], ...holes] = rings
  return ok({ outer: turned(outer, 1), holes: holes.map((hole) => turned(hole, -1)) })
}
