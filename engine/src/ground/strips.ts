import { intervalsWithout, type Interval } from './interval.ts'
import type { Ring } from './polygon.ts'
import {
  fillSheet,
  isOnePiece,
  shadowOf,
  sheetOf,
  stripCount,
  turnSheet,
  type StripLayout,
  type StripSheet,
} from './strip-sheet.ts'

/** One straight run in heading coordinates: its strip (0 leftmost), where it starts and ends along the heading, its middle line. */
export type StripRun = {
  readonly strip: number
  readonly fromU: number
  readonly toU: number
  readonly v: number
}

/** Number and length of the straight runs at one heading. */
export type StripTotals = { readonly runs: number; readonly runLengthM: number }

/** What the strips are laid over. */
export type StripTask = {
  /** Rings of the ground to cover (even-odd). */
  readonly cover: readonly Ring[]
  /** Rings that no part of the machine's width may enter. */
  readonly blocked: readonly Ring[]
  readonly widthM: number
  readonly overlapM: number
}

/** Lays strips over one ground at any number of headings. It owns scratch room, which no answer shares. */
export type StripLayer = {
  /** The runs, ordered by strip, then along. */
  readonly runs: (headingDeg: number) => readonly StripRun[]
  /** Strips at a heading, without laying out what is in them. */
  readonly count: (headingDeg: number) => number
  /** The same runs only counted and measured, for a search over many headings. */
  readonly totals: (headingDeg: number) => StripTotals
}

/** Shorter pieces between islands are not worth setting the machine down for, m. */
const SHORTEST_RUN_M = 0.01

/** Strips centred on the extent across, so that the first and the last stand over the edge by the same. */
const centredLayout = ([least, most]: Interval, task: StripTask): StripLayout => {
  const stepM = task.widthM - task.overlapM
  const count = stripCount(most - least, task.widthM, task.overlapM)
  const overhangM = count * stepM + task.overlapM - (most - least)
  return { count, startV: least - overhangM / 2, stepM, widthM: task.widthM }
}

/** Whether any edge of the rings lies in the strip; a strip wholly inside an island has crossings on neither side but is then never ground. */
const isTouched = (sheet: StripSheet, k: number): boolean => (sheet.most[k] ?? -Infinity) > -Infinity

/**
 * Straight runs that cover a ground: each starts and ends where the machine's full width has cleared the edge, so nothing is missed but
 * beside islands.
 */
export const stripLayer = (task: StripTask): StripLayer => {
  const ground = sheetOf(task.cover)
  const islands = sheetOf(task.blocked)

  const lay = (headingDeg: number): StripLayout => {
    const layout = centredLayout(turnSheet(ground, headingDeg), task)
    fillSheet(ground, layout)
    if (islands.rings > 0) {
      turnSheet(islands, headingDeg)
      fillSheet(islands, layout)
    }
    return layout
  }

  const isPlain = (k: number): boolean =>
    isOnePiece(ground, k) && (islands.rings === 0 || !isTouched(islands, k))

  const pieces = (layout: StripLayout, k: number): readonly Interval[] => {
    if (isPlain(k)) return [[ground.least[k] ?? 0, ground.most[k] ?? 0]]
    const whole = shadowOf(ground, layout, k)
    const free = islands.rings > 0 ? intervalsWithout(whole, shadowOf(islands, layout, k)) : whole
    return free.filter(([fromU, toU]) => toU - fromU > SHORTEST_RUN_M)
  }

  const runs = (headingDeg: number): readonly StripRun[] => {
    if (ground.rings === 0) return []
    const layout = lay(headingDeg)
    const found: StripRun[] = []
    for (let strip = 0; strip < layout.count; strip++) {
      const v = layout.startV + strip * layout.stepM + layout.widthM / 2
      for (const [fromU, toU] of pieces(layout, strip)) found.push({ strip, fromU, toU, v })
    }
    return found
  }

  const totals = (headingDeg: number): StripTotals => {
    if (ground.rings === 0) return { runs: 0, runLengthM: 0 }
    const layout = lay(headingDeg)
    let runCount = 0
    let runLengthM = 0
    for (let k = 0; k < layout.count; k++) {
      if (isPlain(k)) {
        runCount += 1
        runLengthM += (ground.most[k] ?? 0) - (ground.least[k] ?? 0)
        continue
      }
      for (const [fromU, toU] of pieces(layout, k)) {
        runCount += 1
        runLengthM += toU - fromU
      }
    }
    return { runs: runCount, runLengthM }
  }

  const count = (headingDeg: number): number =>
    ground.rings === 0 ? 0 : centredLayout(turnSheet(ground, headingDeg), task).count

  return { runs, count, totals }
}
