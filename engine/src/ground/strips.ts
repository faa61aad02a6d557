import { acrossM, alongM, frameOf } from './heading-frame.ts'
import { intervalsWithout, mergedIntervals, type Interval } from './interval.ts'
import { eachEdge, type Ring } from './polygon.ts'

/** One straight run in heading coordinates: its strip (0 leftmost), where it starts and ends along the heading, its middle line. */
export type StripRun = {
  readonly strip: number
  readonly fromU: number
  readonly toU: number
  readonly v: number
}

/** What the strips are laid over. */
export type StripTask = {
  /** Rings of the ground to cover (even-odd). */
  readonly cover: readonly Ring[]
  /** Rings that no part of the machine's width may enter. */
  readonly blocked: readonly Ring[]
  readonly widthM: number
  readonly overlapM: number
}

/** A strip must reach this far into the ground to count, m: rounding of the turned coordinates must not make runs. */
const TOUCH_M = 1e-6

/** Shorter pieces between islands are not worth setting the machine down for, m. */
const SHORTEST_RUN_M = 0.01

/** Strips needed for an extent: `n = ceil((extent - overlap) / (width - overlap))`, at least one. */
export const stripCount = (extentM: number, widthM: number, overlapM: number): number =>
  Math.max(1, Math.ceil((extentM - overlapM - TOUCH_M) / (widthM - overlapM)))

type Layout = {
  readonly count: number
  readonly startV: number
  readonly stepM: number
  readonly widthM: number
}

/** Rings in heading coordinates, x along and y across. */
const turnedRings = (rings: readonly Ring[], headingDeg: number): Ring[] => {
  const frame = frameOf(headingDeg)
  return rings.map((ring) => ring.map((point) => ({ x: alongM(frame, point), y: acrossM(frame, point) })))
}

/** Strips centred on the extent across, so that the first and the last stand over the edge by the same. */
const layoutOf = (rings: readonly Ring[], task: StripTask): Layout => {
  let least = Infinity
  let most = -Infinity
  for (const ring of rings)
    for (const point of ring) {
      least = Math.min(least, point.y)
      most = Math.max(most, point.y)
    }
  const stepM = task.widthM - task.overlapM
  const count = stripCount(most - least, task.widthM, task.overlapM)
  const overhangM = count * stepM + task.overlapM - (most - least)
  return { count, startV: least - overhangM / 2, stepM, widthM: task.widthM }
}

/** Adds to each strip the along-range of every edge inside it. */
const addEdges = (rings: readonly Ring[], layout: Layout, into: Interval[][]): void => {
  for (const ring of rings)
    eachEdge(ring, (p, q) => {
      const [a, b] = p.y <= q.y ? [p, q] : [q, p]
      const first = Math.max(0, Math.floor((a.y - layout.startV - layout.widthM) / layout.stepM))
      const last = Math.min(layout.count - 1, Math.ceil((b.y - layout.startV) / layout.stepM))
      for (let k = first; k <= last; k++) {
        const low = layout.startV + k * layout.stepM + TOUCH_M
        const high = low + layout.widthM - 2 * TOUCH_M
        if (b.y <= low || a.y >= high) continue
        const slope = b.y - a.y === 0 ? 0 : (b.x - a.x) / (b.y - a.y)
        const from = a.y < low ? a.x + slope * (low - a.y) : a.x
        const to = b.y > high ? a.x + slope * (high - a.y) : b.x
        into[k]?.push(from <= to ? [from, to] : [to, from])
      }
    })
}

/** Where the line across = v lies inside the rings (even-odd). */
const chordsAt = (rings: readonly Ring[], v: number): Interval[] => {
  const crossings: number[] = []
  for (const ring of rings)
    eachEdge(ring, (a, b) => {
      if (a.y > v !== b.y > v) crossings.push(a.x + ((v - a.y) / (b.y - a.y)) * (b.x - a.x))
    })
  crossings.sort((p, q) => p - q)
  const chords: Interval[] = []
  for (let k = 0; k + 1 < crossings.length; k += 2) chords.push([crossings[k] ?? 0, crossings[k + 1] ?? 0])
  return chords
}

/**
 * For each strip the along-ranges over which any part of its width lies on the ground: the shadow, on the strip's line, of ground cut
 * to the strip. The shadow of a region is that of its border, which is edges inside the strip plus chords along the strip's two sides.
 */
const shadows = (rings: readonly Ring[], layout: Layout): Interval[][] => {
  const found = Array.from({ length: layout.count }, (): Interval[] => [])
  addEdges(rings, layout, found)
  return found.map((intervals, k) => {
    const low = layout.startV + k * layout.stepM + TOUCH_M
    const sides = [...chordsAt(rings, low), ...chordsAt(rings, low + layout.widthM - 2 * TOUCH_M)]
    return mergedIntervals([...intervals, ...sides])
  })
}

/**
 * The straight runs that cover the ground at a heading: each starts and ends where the machine's full width has cleared the edge, so
 * nothing is missed but beside islands. Ordered by strip, then along.
 */
export const stripRuns = (task: StripTask, headingDeg: number): readonly StripRun[] => {
  const cover = turnedRings(task.cover, headingDeg)
  if (cover.length === 0) return []
  const layout = layoutOf(cover, task)
  const ground = shadows(cover, layout)
  const kept = task.blocked.length === 0 ? [] : shadows(turnedRings(task.blocked, headingDeg), layout)
  return ground.flatMap((intervals, strip) => {
    const v = layout.startV + strip * layout.stepM + layout.widthM / 2
    return intervalsWithout(intervals, kept[strip] ?? [])
      .filter(([fromU, toU]) => toU - fromU > SHORTEST_RUN_M)
      .map(([fromU, toU]) => ({ strip, fromU, toU, v }))
  })
}
