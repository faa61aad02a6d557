import type { Problem } from './problem.ts'
import { NEVER } from './spans.ts'

/** Something kept in stock: a kind of sand, or a kind of tine by its number. */
export type Stock = 'damp' | 'kilnDried' | number

/** Taken from stock: tonnes of sand, or sets of tines. */
export type Draw = { readonly stock: Stock; readonly amount: number; readonly atMin: number }

/** Tonnes or sets that rounding may hide: a gram, or a ten-thousandth of a set. */
const roundingOf = (stock: Stock): number => (typeof stock === 'number' ? 1e-4 : 1e-9)

type Entry = {
  readonly amount: number
  readonly deliveries: readonly { readonly atMin: number; readonly amount: number }[]
}

const entriesOf = ({ stores, tines = [] }: Problem, stock: Stock): readonly Entry[] =>
  typeof stock === 'number'
    ? tines
        .filter(({ kind }) => kind === stock)
        .map(({ sets, deliveries }) => ({
          amount: sets,
          deliveries: deliveries.map((one) => ({ atMin: one.atMin, amount: one.sets })),
        }))
    : stores
        .filter(({ kind }) => kind === stock)
        .map(({ stockT, deliveries }) => ({
          amount: stockT,
          deliveries: deliveries.map((one) => ({ atMin: one.atMin, amount: one.massT })),
        }))

/** What was in stock at first or had come by a minute. */
export const supplyOf = (problem: Problem, stock: Stock, minute: number): number =>
  entriesOf(problem, stock).reduce(
    (sum, { amount, deliveries }) =>
      deliveries.reduce((more, one) => (one.atMin <= minute ? more + one.amount : more), sum + amount),
    0,
  )

/** Earliest minute from `from` on at which so much more can be taken and no later draw goes short; NEVER where it does not suffice. */
export const stockFrom = (
  { problem, draws }: { readonly problem: Problem; readonly draws: readonly Draw[] },
  stock: Stock,
  from: number,
  amount: number,
): number => {
  const rounding = roundingOf(stock)
  const own = draws.filter((draw) => draw.stock === stock)
  const planned = own.reduce((sum, draw) => sum + draw.amount, 0)
  if (planned + amount <= supplyOf(problem, stock, from) + rounding) return from
  const enough = (minute: number): boolean =>
    [minute, ...own.filter((draw) => draw.atMin > minute).map((draw) => draw.atMin)].every((moment) => {
      const drawn = own.reduce((sum, draw) => sum + (draw.atMin <= moment ? draw.amount : 0), 0)
      return drawn + amount <= supplyOf(problem, stock, moment) + rounding
    })
  if (enough(from)) return from
  const later = entriesOf(problem, stock)
    .flatMap(({ deliveries }) => deliveries.map(({ atMin }) => atMin))
    .filter((minute) => minute > from)
    .sort((a, b) => a - b)
  return later.find(enough) ?? NEVER
}

/** What of a stock is left after all draws by the end of the days planned. */
export const leftOver = (problem: Problem, draws: readonly Draw[], stock: Stock): number =>
  draws.reduce(
    (left, draw) => (draw.stock === stock ? left - draw.amount : left),
    supplyOf(problem, stock, problem.horizonMin),
  )
