import type { HeadingBan } from './heading-ban.ts'
import { frameOf, halfTurnDeg } from './heading-frame.ts'
import { hullOf } from './hull.ts'
import type { LocalPoint } from './plane.ts'
import { distanceM, eachEdge, ringLengthM, type Ring } from './polygon.ts'
import { stripCount } from './strip-sheet.ts'

const GRID_DEG = 5

/** Halvings that find where the number of runs changes, from 5 degrees to 0.005. */
const BISECTIONS = 10

/** The ground to cover and the strips laid over it, m. */
export type CandidateTask = {
  readonly cover: readonly Ring[]
  readonly widthM: number
  readonly overlapM: number
}

const hullOfRings = (rings: readonly Ring[]): readonly LocalPoint[] => hullOf(rings.flat())

const extentAcrossM = (hull: readonly LocalPoint[], headingDeg: number): number => {
  const { sin, cos } = frameOf(headingDeg)
  let least = Infinity
  let most = -Infinity
  for (const point of hull) {
    const v = point.x * cos - point.y * sin
    if (v < least) least = v
    if (v > most) most = v
  }
  return most - least
}

const bearingDeg = (a: LocalPoint, b: LocalPoint): number =>
  halfTurnDeg((Math.atan2(b.x - a.x, b.y - a.y) * 180) / Math.PI)

/** An edge shorter than this share of the hull's length is a facet of a curve, not a side that runs could follow. */
const SIDE_SHARE = 0.05

/** Directions of the hull's edges that are at least `shortestM` long. */
const edgeHeadingsDeg = (hull: readonly LocalPoint[], shortestM: number): readonly number[] => {
  const headings: number[] = []
  eachEdge(hull, (a, b) => {
    if (distanceM(a, b) >= shortestM) headings.push(bearingDeg(a, b))
  })
  return headings
}

/** The least extent across over all headings, m: always square to an edge of the hull (Freeman and Shapira 1975 show it for the box). */
export const leastExtentM = (rings: readonly Ring[]): number => {
  const hull = hullOfRings(rings)
  return Math.min(...edgeHeadingsDeg(hull, 0).map((headingDeg) => extentAcrossM(hull, headingDeg)))
}

/** The headings, between neighbours of a list, where the number of strips changes: told on the side with fewer. */
const changeHeadingsDeg = (
  hull: readonly LocalPoint[],
  task: CandidateTask,
  sorted: readonly number[],
): readonly number[] => {
  const countAt = (headingDeg: number): number =>
    stripCount(extentAcrossM(hull, headingDeg), task.widthM, task.overlapM)
  const counts = sorted.map(countAt)
  return sorted.flatMap((from, k) => {
    const to = k + 1 < sorted.length ? sorted[k + 1] : (sorted[0] ?? 0) + 180
    const fromCount = counts[k] ?? 0
    const toCount = counts[(k + 1) % counts.length] ?? 0
    if (to === undefined || fromCount === toCount) return []
    const fewer = Math.min(fromCount, toCount)
    let [inside, outside] = fromCount < toCount ? [from, to] : [to, from]
    for (let round = 0; round < BISECTIONS; round++) {
      const middle = (inside + outside) / 2
      if (countAt(middle) <= fewer) inside = middle
      else outside = middle
    }
    return [halfTurnDeg(inside)]
  })
}

/**
 * Headings worth trying, 0 to under 180 degrees, sorted: every fifth degree, along the hull's long sides, where the number of runs
 * changes, and the limits of bans; each also turned back by each offset, so that a later pass can lie on it.
 */
export const headingCandidatesDeg = (
  task: CandidateTask,
  bans: readonly HeadingBan[],
  offsetsDeg: readonly number[],
): readonly number[] => {
  const hull = hullOfRings(task.cover)
  const grid = Array.from({ length: 180 / GRID_DEG }, (_, k) => k * GRID_DEG)
  const limits = bans.flatMap((ban) => [ban.middleDeg - ban.halfWidthDeg, ban.middleDeg + ban.halfWidthDeg])
  const special = [...edgeHeadingsDeg(hull, SIDE_SHARE * ringLengthM(hull)), ...limits.map(halfTurnDeg)]
  const sorted = [...grid, ...special].sort((a, b) => a - b)
  const found = [...special, ...changeHeadingsDeg(hull, task, sorted)]
  const turnedBack = offsetsDeg.flatMap((offsetDeg) =>
    found.map((headingDeg) => halfTurnDeg(headingDeg - offsetDeg)),
  )
  const all = [...grid, ...found, ...turnedBack].sort((a, b) => a - b)
  return all.filter((headingDeg, k) => k === 0 || headingDeg - (all[k - 1] ?? 0) > 1e-9)
}
