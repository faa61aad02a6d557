import { halfTurnDeg } from './heading-frame.ts'
import type { Passes, Run } from './passes.ts'
import type { PassSettings } from './pass-settings.ts'
import type { Polygon } from './polygon.ts'
import { fillSheet, sheetOf, turnSheet, type StripLayout, type StripSheet } from './strip-sheet.ts'

/** Runs end on the edge they clear, so what lies beyond them by less than this is rounding, m. */
const ROUNDING_M = 1e-5

type Row = { readonly v: number; readonly fromU: number; readonly toU: number }

/** A straight run in the turned plane, whichever way it is driven. */
const rowOf = (run: Run, sin: number, cos: number): Row => {
  const start = run.from.x * sin + run.from.y * cos
  const end = run.to.x * sin + run.to.y * cos
  return { v: run.from.x * cos - run.from.y * sin, fromU: Math.min(start, end), toU: Math.max(start, end) }
}

/** The strips that the rows lie in, when there is one row in each and none is left out; else undefined. */
const layoutOf = (rows: readonly Row[], settings: PassSettings): StripLayout | undefined => {
  const { widthM, overlapM } = settings
  const stepM = widthM - overlapM
  const [first] = rows
  const isEven = rows.every((row, k) => Math.abs(row.v - (first?.v ?? 0) - k * stepM) < ROUNDING_M)
  return first === undefined || !isEven
    ? undefined
    : { count: rows.length, startV: first.v - widthM / 2, stepM, widthM }
}

/** Area of the turned ring between two lines across, m2: `A = |sum over edges of the integral of u dv|`, since along the lines themselves dv is nought. */
const betweenM2 = (sheet: StripSheet, low: number, high: number): number => {
  let areaM2 = 0
  for (let i = 0; i < sheet.x.length; i++) {
    const j = sheet.next[i] ?? 0
    const [v0, v1] = [sheet.v[i] ?? 0, sheet.v[j] ?? 0]
    const from = Math.min(high, Math.max(low, v0))
    const to = Math.min(high, Math.max(low, v1))
    if (from === to) continue
    const u0 = sheet.u[i] ?? 0
    const slope = ((sheet.u[j] ?? 0) - u0) / (v1 - v0)
    areaM2 += (to - from) * (u0 + slope * ((from + to) / 2 - v0))
  }
  return Math.abs(areaM2)
}

/** What lies under two strips or more: the bands of overlap, or all between the first and the last where bands run into each other. */
const twiceM2 = (sheet: StripSheet, { count, startV, stepM, widthM }: StripLayout): number => {
  if (stepM >= widthM || count < 2) return 0
  if (widthM - stepM >= stepM) return betweenM2(sheet, startV + stepM, startV + (count - 2) * stepM + widthM)
  let areaM2 = 0
  for (let k = 1; k < count; k++)
    areaM2 += betweenM2(sheet, startV + k * stepM, startV + (k - 1) * stepM + widthM)
  return areaM2
}

/**
 * The area worked twice where a pass plainly covers the whole green, m2; undefined where that is not so or is not plain, and areas must be
 * clipped. Plain: no islands, no laps, one run in each strip, the strips next to each other from side to side, and each run reaching
 * as far as the edge does within its strip. Then all is covered, and twice is what lies in the bands of overlap.
 */
export const plainSweepTwiceM2 = (
  polygon: Polygon,
  settings: PassSettings,
  passes: Passes,
): number | undefined => {
  if (polygon.holes.length > 0 || settings.laps > 0) return undefined
  const headingDeg = halfTurnDeg(passes.headingDeg)
  const angle = (headingDeg * Math.PI) / 180
  const rows = passes.runs
    .map((run) => rowOf(run, Math.sin(angle), Math.cos(angle)))
    .sort((a, b) => a.v - b.v)
  const layout = layoutOf(rows, settings)
  if (layout === undefined) return undefined
  const sheet = sheetOf([polygon.outer])
  const [least, most] = turnSheet(sheet, headingDeg)
  const endV = layout.startV + (layout.count - 1) * layout.stepM + layout.widthM
  if (least < layout.startV - ROUNDING_M || most > endV + ROUNDING_M) return undefined
  fillSheet(sheet, layout)
  const reaches = ({ fromU, toU }: Row, k: number): boolean =>
    fromU <= (sheet.least[k] ?? 0) + ROUNDING_M && toU >= (sheet.most[k] ?? 0) - ROUNDING_M
  return rows.every(reaches) ? twiceM2(sheet, layout) : undefined
}
