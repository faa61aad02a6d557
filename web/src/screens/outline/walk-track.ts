import { distanceM, walkedOutline, type LocalPoint, type WalkError } from '@swardwright/engine'

/** One position told by the phone, in local metres. */
export type Fix = { readonly point: LocalPoint; readonly accuracyM: number }

/** A walk round a green as it goes on. */
export type Walk = {
  readonly fixes: readonly LocalPoint[]
  /** Of the latest fix, kept or not. */
  readonly accuracyM: number | null
  /** Fixes left out since they were too rough. */
  readonly rough: number
}

/** Nothing walked yet. */
export const NO_WALK: Walk = { fixes: [], accuracyM: null, rough: 0 }

/** A fix rougher than this says nothing about an edge, m (our assumption; phones under open sky tell 3 to 8 m). */
const ROUGH_M = 20

/** Steps shorter than this are the receiver's own unrest, m (our assumption). */
const STILL_M = 0.5

/** Takes a fix into the walk. */
export const withFix = (walk: Walk, { point, accuracyM }: Fix): Walk => {
  if (!(accuracyM <= ROUGH_M)) return { ...walk, accuracyM, rough: walk.rough + 1 }
  const last = walk.fixes[walk.fixes.length - 1]
  if (last !== undefined && distanceM(last, point) < STILL_M) return { ...walk, accuracyM }
  return { ...walk, accuracyM, fixes: [...walk.fixes, point] }
}

/** Metres walked, and from here to where the walk began. */
export const lengthsOf = ({ fixes }: Walk): { readonly walkedM: number; readonly toStartM: number } => {
  const [first] = fixes
  const last = fixes[fixes.length - 1]
  const walkedM = fixes.reduce((sum, fix, k) => {
    const before = fixes[k - 1]
    return before === undefined ? sum : sum + distanceM(before, fix)
  }, 0)
  return { walkedM, toStartM: first === undefined || last === undefined ? 0 : distanceM(first, last) }
}

/** A corner may leave the walked line by this, m: under what a phone knows, and few enough corners to edit. */
const STRAY_M = 0.15

const offLineM = (point: LocalPoint, a: LocalPoint, b: LocalPoint): number => {
  const lengthM = distanceM(a, b)
  return lengthM === 0
    ? distanceM(point, a)
    : Math.abs((b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)) / lengthM
}

/** The line with fewer points, none of those left out further than `strayM` from it (Douglas and Peucker 1973). */
const thinned = (line: readonly LocalPoint[], strayM: number): readonly LocalPoint[] => {
  const [first] = line
  const last = line[line.length - 1]
  if (first === undefined || last === undefined || line.length < 3) return line
  let [worst, worstM] = [0, 0]
  line.forEach((point, k) => {
    const offM = offLineM(point, first, last)
    if (offM > worstM) [worst, worstM] = [k, offM]
  })
  if (worstM <= strayM) return [first, last]
  return [...thinned(line.slice(0, worst + 1), strayM), ...thinned(line.slice(worst), strayM).slice(1)]
}

/** A closed ring with fewer corners. */
const thinnedRing = (ring: readonly LocalPoint[]): readonly LocalPoint[] => {
  const half = Math.floor(ring.length / 2)
  const there = thinned(ring.slice(0, half + 1), STRAY_M)
  const back = thinned([...ring.slice(half), ...ring.slice(0, 1)], STRAY_M)
  return [...there.slice(0, -1), ...back.slice(0, -1)]
}

/** What a walk came to. */
export type WalkEnd =
  | {
      readonly ok: true
      readonly ring: readonly LocalPoint[]
      readonly closingErrorM: number
      readonly droppedFixes: number
    }
  | { readonly ok: false; readonly error: WalkError }

/** Closes the walk: jumps out, smoothed, and as few corners as tell the same. */
export const endOfWalk = (fixes: readonly LocalPoint[]): WalkEnd => {
  const walked = walkedOutline(fixes)
  if (!walked.ok) return walked
  const { ring, closingErrorM, droppedFixes } = walked.value
  return { ok: true, ring: thinnedRing(ring), closingErrorM, droppedFixes }
}
