import { dryFrom } from '../dried.ts'
import type { Problem } from '../problem.ts'

/** When sand that is laid at a minute is dry, by what has to leave it: worked out when first asked, then remembered. */
export type Drying = {
  /** By step: which table it reads, -1 where nothing has to dry. */
  readonly tableOf: Int32Array
  /** By table: minute by minute of the horizon, 0 where nobody has asked yet. */
  readonly tables: readonly Int32Array[]
  readonly needMm: readonly number[]
}

/** Empty tables, one for each need that occurs: greens of one prescription share theirs. */
export const dryingOf = (problem: Problem): Drying => {
  const needs = problem.greens.flatMap((green) => green.steps.map((step) => step.dryNeedMm))
  const needMm = [...new Set(needs)].filter((need) => need > 0)
  return {
    tableOf: Int32Array.from(needs, (need) => needMm.indexOf(need)),
    tables: needMm.map(() => new Int32Array(problem.horizonMin + 1)),
    needMm,
  }
}

/** First minute by which the sand under a step is dry if it was laid at `from`; `from` where nothing has to dry, NEVER if not within the horizon. */
export const dryBy = (problem: Problem, drying: Drying, step: number, from: number): number => {
  const index = drying.tableOf[step] ?? -1
  const table = drying.tables[index]
  if (table === undefined) return from
  const known = table[from] ?? 0
  if (known > 0) return known
  const dry = dryFrom(problem.driedMm, from, drying.needMm[index] ?? 0)
  table[from] = dry
  return dry
}
