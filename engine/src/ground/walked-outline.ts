import { fail, ok, type Result } from '../result.ts'
import { withoutRepeats } from './checked-polygon.ts'
import type { LocalPoint } from './plane.ts'
import { distanceM, ringLengthM, type Ring } from './polygon.ts'

/** An outline made from a walk with a phone. */
export type WalkedOutline = {
  /** Smoothed, evenly spaced, closed; not yet checked as a shape. */
  readonly ring: Ring
  /** From the last fix back to the first, m: how well the walk closed. */
  readonly closingErrorM: number
  readonly walkedM: number
  /** Fixes left out as jumps of the receiver. */
  readonly droppedFixes: number
}

/** Why a walk is no outline. */
export type WalkError =
  | { readonly type: 'tooFewFixes'; readonly fixes: number; readonly needed: number }
  | { readonly type: 'notClosed'; readonly closingErrorM: number; readonly maxClosingErrorM: number }

/** Fewest fixes of a usable walk: one every few metres round the smallest green (our assumption). */
const FEWEST_FIXES = 8

/** A fix this many times further off both neighbours than they are from each other, and by 5 m at least, is a jump (our assumption). */
const JUMP_RATIO = 3
const JUMP_M = 5

/** Spacing after resampling, m. */
const SPACING_M = 0.5

/** A walk may stay open by this share of its length, and by no less than 5 m: phone fixes stray by 3 to 5 m (our assumption). */
const OPEN_SHARE = 0.1
const OPEN_M = 5

/** Smoothing that keeps the size: one round shrinks by the first factor and swells by the second (Taubin 1995). */
const SHRINK = 0.5
const SWELL = -0.53
const ROUNDS = 12

const isJump = (before: LocalPoint, fix: LocalPoint, after: LocalPoint): boolean => {
  const nearM = Math.min(distanceM(before, fix), distanceM(fix, after))
  return nearM > JUMP_M && nearM > JUMP_RATIO * distanceM(before, after)
}

const withoutJumps = (fixes: readonly LocalPoint[]): readonly LocalPoint[] =>
  fixes.filter((fix, k) => {
    const before = fixes[k - 1]
    const after = fixes[k + 1]
    return before === undefined || after === undefined || !isJump(before, fix, after)
  })

/** Points at equal steps along a closed ring. */
const resampled = (ring: Ring, spacingM: number): Ring => {
  const count = Math.max(3, Math.round(ringLengthM(ring) / spacingM))
  const stepM = ringLengthM(ring) / count
  const points: LocalPoint[] = []
  let walkedM = 0
  ring.forEach((from, k) => {
    const to = ring[(k + 1) % ring.length] ?? from
    const lengthM = distanceM(from, to)
    while (points.length < count && points.length * stepM <= walkedM + lengthM) {
      const share = lengthM === 0 ? 0 : (points.length * stepM - walkedM) / lengthM
      points.push({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) })
    }
    walkedM += lengthM
  })
  return points
}

/** Each point moved by a share of the way to the middle of its neighbours. */
const relaxed = (ring: Ring, share: number): Ring =>
  ring.map((point, k) => {
    const before = ring[(k + ring.length - 1) % ring.length] ?? point
    const after = ring[(k + 1) % ring.length] ?? point
    return {
      x: point.x + share * ((before.x + after.x) / 2 - point.x),
      y: point.y + share * ((before.y + after.y) / 2 - point.y),
    }
  })

const smoothed = (ring: Ring): Ring => {
  let smooth = ring
  for (let round = 0; round < ROUNDS; round++) smooth = relaxed(relaxed(smooth, SHRINK), SWELL)
  return smooth
}

/** Where a walk that went on past its start is cut: the fix of its last quarter that lies nearest to the first. */
const cutAtStart = (fixes: readonly LocalPoint[]): readonly LocalPoint[] => {
  const [start] = fixes
  if (start === undefined) return fixes
  let end = fixes.length - 1
  for (let k = Math.floor(fixes.length * 0.75); k < fixes.length; k++) {
    const best = fixes[end]
    const fix = fixes[k]
    if (best !== undefined && fix !== undefined && distanceM(fix, start) < distanceM(best, start)) end = k
  }
  return fixes.slice(0, end + 1)
}

/**
 * Turns the fixes of a walk round a green, in local metres and in order, into a closed smooth ring: jumps out, walked-over end cut, closed,
 * spaced evenly, smoothed without shrinking. The closing error is always told; a walk open by more than a tenth of its length (5 m at
 * least) is refused.
 */
export const walkedOutline = (fixes: readonly LocalPoint[]): Result<WalkedOutline, WalkError> => {
  const kept = withoutJumps(fixes)
  if (kept.length < FEWEST_FIXES)
    return fail({ type: 'tooFewFixes', fixes: kept.length, needed: FEWEST_FIXES })
  const walk = cutAtStart(kept)
  const [first] = walk
  const last = walk[walk.length - 1]
  const closingErrorM = first === undefined || last === undefined ? 0 : distanceM(first, last)
  const walkedM = ringLengthM(walk) - closingErrorM
  const maxClosingErrorM = Math.max(OPEN_M, OPEN_SHARE * walkedM)
  if (closingErrorM > maxClosingErrorM) return fail({ type: 'notClosed', closingErrorM, maxClosingErrorM })
  const ring = smoothed(resampled(withoutRepeats(walk), SPACING_M))
  return ok({ ring, closingErrorM, walkedM, droppedFixes: fixes.length - kept.length })
}
