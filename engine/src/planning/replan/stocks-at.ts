import type { Course } from '../../course/course.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import type { Draw, Stock } from '../stock.ts'
import { doesStep } from './field.ts'
import type { Moment, StockSeen } from './moment.ts'
import type { Standing } from './standing.ts'

/** What stocks are changed by. */
type Known = { readonly course: Course; readonly moment: Moment; readonly standing: Standing }

/** What tasks took from stock: loads their sand, each covering that was begun its tines, once where it was broken off and taken up again. */
export const drawsOf = (problem: Problem, tasks: readonly ScheduledTask[]): readonly Draw[] =>
  problem.greens.flatMap((green, index) => {
    const own = tasks.filter((task) => task.green === index)
    return green.steps.flatMap((step): readonly Draw[] => {
      const loads =
        step.operation === 'dress'
          ? own.filter((task) => task.kind === 'load' && task.load === step.load)
          : []
      const sand = loads.map(({ startMin }) => ({
        stock: green.sand.kind,
        amount: step.sandT,
        atMin: startMin,
      }))
      const begun = step.tines === undefined ? undefined : own.find((task) => doesStep(task, step))
      return step.tines === undefined || begun === undefined
        ? sand
        : [...sand, { stock: step.tines.kind, amount: step.tines.sets, atMin: begun.startMin }]
    })
  })

/** What had been taken from a stock before a minute. */
export const takenBefore = (draws: readonly Draw[], stock: Stock, minute: number): number =>
  draws.reduce((sum, draw) => (draw.stock === stock && draw.atMin < minute ? sum + draw.amount : sum), 0)

/** Deliveries of one entry of the course as the facts have them; `at` is its place among the stores and then the tine sets. */
const movedBy = <T extends { readonly atMin: number }>(
  moment: Moment,
  at: number,
  own: { readonly deliveries: readonly { readonly date: string }[] } | undefined,
  deliveries: readonly T[],
): readonly T[] =>
  deliveries.map((delivery, index) => {
    const date = own?.deliveries[index]?.date
    const again = moment.deliveries.find((one) => one.store === at && one.date === date)
    return again === undefined ? delivery : { ...delivery, atMin: again.atMin }
  })

/** An entry of a stock. */
type Entry = { readonly kind: Stock; readonly deliveries: readonly { readonly atMin: number }[] }

/** Entries as they were seen: what was left, all of it in the first entry of its kind, and what was delivered after it was looked at. `holding` makes an entry hold so much. */
const asSeen = <E extends Entry>(
  entries: readonly E[],
  seen: readonly StockSeen[],
  holding: (entry: E, amount: number) => E,
): readonly E[] =>
  seen.reduce((now, { stock, atMin, amount }) => {
    const first = now.findIndex(({ kind }) => kind === stock)
    return now.map((entry, index) =>
      entry.kind !== stock
        ? entry
        : holding(
            { ...entry, deliveries: entry.deliveries.filter((one) => one.atMin > atMin) },
            index === first ? amount : 0,
          ),
    )
  }, entries)

/** Stores and tine sets as the facts have them. What was seen counts with what had been taken by then. */
export const stocksAt = (
  problem: Problem,
  { course, moment, standing }: Known,
): Pick<Problem, 'stores' | 'tines'> => {
  const draws = drawsOf(problem, standing.tasks)
  const seen = moment.seen
    .map((one) => ({ ...one, amount: one.amount + takenBefore(draws, one.stock, one.atMin) }))
    .toSorted((a, b) => a.atMin - b.atMin)
  const stores = problem.stores.map((store, index) => ({
    ...store,
    deliveries: movedBy(moment, index, course.stores[index], store.deliveries),
  }))
  const tines = problem.tines?.map((entry, index) => ({
    ...entry,
    deliveries: movedBy(moment, course.stores.length + index, course.tineSets?.[index], entry.deliveries),
  }))
  return {
    stores: asSeen(stores, seen, (store, stockT) => ({ ...store, stockT })),
    ...(tines === undefined ? {} : { tines: asSeen(tines, seen, (entry, sets) => ({ ...entry, sets })) }),
  }
}
