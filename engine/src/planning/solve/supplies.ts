import type { Problem, ProblemStep } from '../problem.ts'

/** One stock over time: from each minute on, so much in all has been there. Whole numbers (grams of sand, millionths of a tine set), so that sums are exact. */
export type Supply = { readonly fromMin: Int32Array; readonly total: Float64Array }

/** Kinds of sand, by their place among the stocks. */
export const SAND_KINDS = ['damp', 'kilnDried'] as const

/** Place of the first kind of tine among the stocks. */
export const FIRST_TINES = SAND_KINDS.length

/** Grams of a tonne, and parts of a set. */
const PARTS = 1_000_000

type Coming = { readonly atMin: number; readonly amount: number }

const supplyOf = (stock: number, deliveries: readonly Coming[]): Supply => {
  const coming = [...deliveries].sort((a, b) => a.atMin - b.atMin)
  const parts = [stock, ...coming.map(({ amount }) => amount)].map((one) => Math.round(one * PARTS))
  let total = 0
  return {
    fromMin: Int32Array.from([0, ...coming.map(({ atMin }) => atMin)]),
    total: Float64Array.from(parts, (part) => (total += part)),
  }
}

/** All that is kept in stock over time: sand by kind, then tines by kind. */
export const suppliesOf = ({ stores, tines = [] }: Problem): readonly Supply[] => [
  ...SAND_KINDS.map((kind) => {
    const own = stores.filter((store) => store.kind === kind)
    return supplyOf(
      own.reduce((sum, { stockT }) => sum + stockT, 0),
      own.flatMap(({ deliveries }) => deliveries.map(({ atMin, massT }) => ({ atMin, amount: massT }))),
    )
  }),
  ...Array.from({ length: Math.max(-1, ...tines.map(({ kind }) => kind)) + 1 }, (_, kind) => {
    const own = tines.filter((entry) => entry.kind === kind)
    return supplyOf(
      own.reduce((sum, { sets }) => sum + sets, 0),
      own.flatMap(({ deliveries }) => deliveries.map(({ atMin, sets }) => ({ atMin, amount: sets }))),
    )
  }),
]

/** Which stock each step of a problem takes from, by step (-1: none), and how much. */
export const takesOf = (
  greens: Problem['greens'],
): { readonly stockOfStep: Int8Array; readonly amount: Int32Array } => {
  const all = greens.flatMap(({ steps, sand }) => steps.map((step) => ({ step, sand: sand.kind })))
  const stockOf = (step: ProblemStep, sand: (typeof SAND_KINDS)[number]): number =>
    step.tines === undefined
      ? step.operation === 'dress'
        ? SAND_KINDS.indexOf(sand)
        : -1
      : FIRST_TINES + step.tines.kind
  return {
    stockOfStep: Int8Array.from(all, ({ step, sand }) => stockOf(step, sand)),
    amount: Int32Array.from(all, ({ step }) => Math.round((step.tines?.sets ?? step.sandT) * PARTS)),
  }
}
