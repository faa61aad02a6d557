import { mergedIntervals, type Interval } from './interval.ts'
import type { Ring } from './polygon.ts'

/** Equal strips beside each other, in heading coordinates: strip k lies from `startV + k step` to that plus the width, all in m. */
export type StripLayout = {
  readonly count: number
  readonly startV: number
  readonly stepM: number
  readonly widthM: number
}

/** A strip must reach this far into the ground to count, m: rounding of the turned coordinates must not make runs. */
const TOUCH_M = 1e-6

/** Strips needed for an extent: `n = ceil((extent - overlap) / (width - overlap))`, at least one. */
export const stripCount = (extentM: number, widthM: number, overlapM: number): number =>
  Math.max(1, Math.ceil((extentM - overlapM - TOUCH_M) / (widthM - overlapM)))

/** Rings flattened for quick turning, and room for what they look like at the heading in hand; written over for each heading. */
export type StripSheet = {
  readonly x: Float64Array
  readonly y: Float64Array
  /** Place of the point that follows each point on its ring. */
  readonly next: Int32Array
  readonly u: Float64Array
  readonly v: Float64Array
  readonly rings: number
  /** Per strip: the along-range of the edges in it, and how often edges cross its two sides. */
  least: Float64Array
  most: Float64Array
  lowCrossings: Uint16Array
  highCrossings: Uint16Array
}

/** A sheet for some rings. */
export const sheetOf = (rings: readonly Ring[]): StripSheet => {
  const points = rings.flat()
  const next = new Int32Array(points.length)
  let start = 0
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k++) next[start + k] = k + 1 === ring.length ? start : start + k + 1
    start += ring.length
  }
  return {
    x: Float64Array.from(points, (point) => point.x),
    y: Float64Array.from(points, (point) => point.y),
    next,
    u: new Float64Array(points.length),
    v: new Float64Array(points.length),
    rings: rings.length,
    least: new Float64Array(0),
    most: new Float64Array(0),
    lowCrossings: new Uint16Array(0),
    highCrossings: new Uint16Array(0),
  }
}

/** Turns the rings so that `u` runs along the heading and `v` to its right; gives the extent across. */
export const turnSheet = (sheet: StripSheet, headingDeg: number): Interval => {
  const angle = (headingDeg * Math.PI) / 180
  const sin = Math.sin(angle)
  const cos = Math.cos(angle)
  let least = Infinity
  let most = -Infinity
  for (let k = 0; k < sheet.x.length; k++) {
    const x = sheet.x[k] ?? 0
    const y = sheet.y[k] ?? 0
    const v = x * cos - y * sin
    sheet.u[k] = x * sin + y * cos
    sheet.v[k] = v
    if (v < least) least = v
    if (v > most) most = v
  }
  return [least, most]
}

const clear = (sheet: StripSheet, count: number): void => {
  if (sheet.least.length < count) {
    sheet.least = new Float64Array(count)
    sheet.most = new Float64Array(count)
    sheet.lowCrossings = new Uint16Array(count)
    sheet.highCrossings = new Uint16Array(count)
  }
  sheet.least.fill(Infinity)
  sheet.most.fill(-Infinity)
  sheet.lowCrossings.fill(0)
  sheet.highCrossings.fill(0)
}

/** Adds the edge that starts at point `i` to the strips it lies in: its along-range there, and the strip sides it crosses. */
const addEdge = (sheet: StripSheet, i: number, layout: StripLayout): void => {
  const { u, v, least, most, lowCrossings, highCrossings } = sheet
  const { startV, stepM, widthM } = layout
  const j = sheet.next[i] ?? 0
  const upward = (v[i] ?? 0) <= (v[j] ?? 0)
  const a = upward ? i : j
  const b = upward ? j : i
  const u0 = u[a] ?? 0
  const v0 = v[a] ?? 0
  const u1 = u[b] ?? 0
  const v1 = v[b] ?? 0
  const slope = v1 === v0 ? 0 : (u1 - u0) / (v1 - v0)
  const first = Math.max(0, Math.floor((v0 - startV - widthM) / stepM))
  const last = Math.min(layout.count - 1, Math.ceil((v1 - startV) / stepM))
  for (let k = first; k <= last; k++) {
    const low = startV + k * stepM + TOUCH_M
    const high = low + widthM - 2 * TOUCH_M
    if (v1 <= low || v0 >= high) continue
    const from = v0 < low ? u0 + slope * (low - v0) : u0
    const to = v1 > high ? u0 + slope * (high - v0) : u1
    const smaller = from < to ? from : to
    const larger = from < to ? to : from
    if (smaller < (least[k] ?? 0)) least[k] = smaller
    if (larger > (most[k] ?? 0)) most[k] = larger
    if (v0 <= low) lowCrossings[k] = (lowCrossings[k] ?? 0) + 1
    if (v1 > high) highCrossings[k] = (highCrossings[k] ?? 0) + 1
  }
}

/** Fills the per-strip columns for the heading last turned to. */
export const fillSheet = (sheet: StripSheet, layout: StripLayout): void => {
  clear(sheet, layout.count)
  for (let i = 0; i < sheet.x.length; i++) addEdge(sheet, i, layout)
}

/**
 * Whether the ground in a strip is surely one piece, so that its range is simply least to most: true for one ring that crosses each side of
 * the strip at most twice, since a second piece would need a crossing pair of its own.
 */
export const isOnePiece = (sheet: StripSheet, k: number): boolean =>
  sheet.rings === 1 && (sheet.lowCrossings[k] ?? 0) <= 2 && (sheet.highCrossings[k] ?? 0) <= 2

/** Where the line across = v lies inside the rings (even-odd). */
const chordsAt = (sheet: StripSheet, v: number): Interval[] => {
  const crossings: number[] = []
  for (let i = 0; i < sheet.x.length; i++) {
    const j = sheet.next[i] ?? 0
    const vi = sheet.v[i] ?? 0
    const vj = sheet.v[j] ?? 0
    if (vi > v === vj > v) continue
    const ui = sheet.u[i] ?? 0
    crossings.push(ui + ((v - vi) / (vj - vi)) * ((sheet.u[j] ?? 0) - ui))
  }
  crossings.sort((p, q) => p - q)
  const chords: Interval[] = []
  for (let k = 0; k + 1 < crossings.length; k += 2) chords.push([crossings[k] ?? 0, crossings[k + 1] ?? 0])
  return chords
}

/** The along-ranges of the edges inside one strip. */
const edgesIn = (sheet: StripSheet, low: number, high: number): Interval[] => {
  const found: Interval[] = []
  for (let i = 0; i < sheet.x.length; i++) {
    const j = sheet.next[i] ?? 0
    const vi = sheet.v[i] ?? 0
    const vj = sheet.v[j] ?? 0
    if (Math.max(vi, vj) <= low || Math.min(vi, vj) >= high) continue
    const ui = sheet.u[i] ?? 0
    const slope = vi === vj ? 0 : ((sheet.u[j] ?? 0) - ui) / (vj - vi)
    const from = ui + slope * (Math.min(high, Math.max(low, vi)) - vi)
    const to = vi === vj ? (sheet.u[j] ?? 0) : ui + slope * (Math.min(high, Math.max(low, vj)) - vi)
    found.push(from <= to ? [from, to] : [to, from])
  }
  return found
}

/**
 * The along-ranges over which any part of a strip's width lies inside the rings: the shadow, on the strip's line, of the ground cut to the
 * strip. The shadow of a region is that of its border, which is edges inside the strip plus chords along the strip's two sides.
 */
export const shadowOf = (sheet: StripSheet, layout: StripLayout, k: number): Interval[] => {
  const low = layout.startV + k * layout.stepM + TOUCH_M
  const high = low + layout.widthM - 2 * TOUCH_M
  return mergedIntervals([...edgesIn(sheet, low, high), ...chordsAt(sheet, low), ...chordsAt(sheet, high)])
}
