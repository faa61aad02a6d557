import type { StripRun } from './strips.ts'

/** Runs of neighbouring strips that follow each other without a gap or an island between: one piece of work, in strip order. */
export type Cell = readonly StripRun[]

const overlaps = (a: StripRun, b: StripRun): boolean => a.fromU < b.toU && b.fromU < a.toU

/** Runs of the strip beside `run` that lie against it. */
const beside = (run: StripRun, strip: readonly StripRun[] | undefined): readonly StripRun[] =>
  (strip ?? []).filter((other) => overlaps(run, other))

const byStrip = (runs: readonly StripRun[]): StripRun[][] => {
  const strips: StripRun[][] = []
  for (const run of runs) (strips[run.strip] ??= []).push(run)
  return strips
}

/**
 * Splits runs into cells: a run goes on its neighbour's cell when each is the other's only neighbour on that side; where the ground forks
 * or joins (round an island, into two lobes) a new cell begins. After the cell decomposition of Choset and Pignon 1998, on strips.
 */
export const cellsOf = (runs: readonly StripRun[]): readonly Cell[] => {
  const strips = byStrip(runs)
  const cellByRun = new Map<StripRun, StripRun[]>()
  const cells: StripRun[][] = []
  for (const run of runs) {
    const before = beside(run, strips[run.strip - 1])
    const [only] = before
    const joined = before.length === 1 && only !== undefined && beside(only, strips[run.strip]).length === 1
    const cell = joined ? cellByRun.get(only) : undefined
    if (cell === undefined) cells.push([run])
    else cell.push(run)
    cellByRun.set(run, cell ?? cells[cells.length - 1] ?? [])
  }
  return cells
}
