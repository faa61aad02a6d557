import { cellsOf, type Cell } from './cell.ts'
import { rowsInOrder } from './row-order.ts'
import type { StripRun } from './strips.ts'
import { turnLengthM, type TurnStyle } from './turn-length.ts'

/** A run in working order with its direction: from `startU` to `endU` along the heading (endU may be the smaller). */
export type DrivenRun = {
  readonly strip: number
  readonly v: number
  readonly startU: number
  readonly endU: number
}

/** Runs in working order, and the way from each to the next. */
export type DrivenOrder = {
  readonly runs: readonly DrivenRun[]
  /** Length of the turns between neighbouring runs, m. */
  readonly turnM: number
  /** Way between pieces of the green that do not adjoin (round an island, from lobe to lobe), straight, m. */
  readonly transferM: number
}

/** What decides turns. */
export type TurnRule = { readonly radiusM: number; readonly style: TurnStyle; readonly reach: number }

type Place = { readonly u: number; readonly v: number }
type Entry = { readonly fromLast: boolean; readonly fromHigh: boolean }

const ENTRIES: readonly Entry[] = [false, true].flatMap((fromLast) =>
  [false, true].map((fromHigh) => ({ fromLast, fromHigh })),
)

/** More starts than this many cells are not tried one by one: the nearest cell each time is good enough there. */
const MOST_STARTS = 6

/** One cell driven from one of its four corners. */
const drivenCell = (cell: Cell, entry: Entry, reach: number): readonly DrivenRun[] => {
  const rows = entry.fromLast ? cell.toReversed() : cell
  return rowsInOrder(rows.length, reach).flatMap((row, k) => {
    const run = rows[row]
    if (run === undefined) return []
    const high = (k % 2 === 1) !== entry.fromHigh
    const { strip, v, fromU, toU } = run
    return [{ strip, v, startU: high ? toU : fromU, endU: high ? fromU : toU }]
  })
}

const transferBetweenM = (from: Place | undefined, to: DrivenRun | undefined): number =>
  from === undefined || to === undefined ? 0 : Math.hypot(to.startU - from.u, to.v - from.v)

const turnsWithinM = (runs: readonly DrivenRun[], rule: TurnRule): number =>
  runs.reduce((sum, run, k) => {
    const before = runs[k - 1]
    if (before === undefined) return sum
    const sideM = Math.abs(run.v - before.v)
    return sum + Math.abs(run.startU - before.endU) + turnLengthM(sideM, rule.radiusM, rule.style)
  }, 0)

const endOf = (runs: readonly DrivenRun[]): Place | undefined => {
  const last = runs[runs.length - 1]
  return last === undefined ? undefined : { u: last.endU, v: last.v }
}

type Step = { readonly cell: Cell; readonly runs: readonly DrivenRun[]; readonly transferM: number }

/** The nearest unworked cell and its nearest corner. Ties go to the earlier cell. */
const nearestStep = (left: readonly Cell[], at: Place | undefined, reach: number): Step | undefined => {
  let best: Step | undefined
  for (const cell of left)
    for (const entry of ENTRIES) {
      const runs = drivenCell(cell, entry, reach)
      const transferM = transferBetweenM(at, runs[0])
      if (best === undefined || transferM < best.transferM) best = { cell, runs, transferM }
    }
  return best
}

const orderFrom = (cells: readonly Cell[], first: Cell, entry: Entry, rule: TurnRule): DrivenOrder => {
  const firstRuns = drivenCell(first, entry, rule.reach)
  const runs = [...firstRuns]
  let turnM = turnsWithinM(firstRuns, rule)
  let transferM = 0
  let left = cells.filter((cell) => cell !== first)
  while (left.length > 0) {
    const step = nearestStep(left, endOf(runs), rule.reach)
    if (step === undefined) break
    turnM += turnsWithinM(step.runs, rule)
    transferM += step.transferM
    runs.push(...step.runs)
    left = left.filter((cell) => cell !== step.cell)
  }
  return { runs, turnM, transferM }
}

/**
 * Puts runs in working order: cell after cell, each by its rows, the nearest next; of all starts the one with the least way between cells
 * (exhaustive over starts up to six cells, nearest-next after that).
 */
export const orderedRuns = (runs: readonly StripRun[], rule: TurnRule): DrivenOrder => {
  const cells = cellsOf(runs)
  const [first] = cells
  if (first === undefined) return { runs: [], turnM: 0, transferM: 0 }
  if (cells.length === 1) return orderFrom(cells, first, { fromLast: false, fromHigh: false }, rule)
  const starts = cells.length > MOST_STARTS ? [first] : cells
  const options = starts.flatMap((cell) => ENTRIES.map((entry) => orderFrom(cells, cell, entry, rule)))
  return options.reduce((best, option) => (option.transferM < best.transferM ? option : best))
}
