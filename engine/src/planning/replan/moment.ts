import type { Problem } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { Operation } from '../operations.ts'
import type { Stock } from '../stock.ts'

/** One spell of work on a step as far as it was told. Minutes from the origin. */
export type Spell = {
  readonly startMin: number | null
  /** When it ended; null: it has not been told. */
  readonly endMin: number | null
  /** Whether the step was done then, or broken off. */
  readonly end: 'finished' | 'stopped'
  /** Share of the step done by a spell that was broken off; null: the time worked tells. */
  readonly doneShare: number | null
}

/** A machine or person that is not there. */
export type Outage = {
  readonly index: number
  readonly fromMin: number
  readonly untilMin: number
  readonly fact: number
}

/** So many times the planned minutes; null stands for all. */
export type Slower = {
  readonly green: number | null
  readonly operation: Operation | null
  readonly machine: number | null
  readonly factor: number
}

/** What was left of a stock at a moment: tonnes of sand, or sets of tines. */
export type StockSeen = {
  readonly stock: Stock
  readonly atMin: number
  readonly amount: number
  readonly fact: number
}

/** A delivery at another time. `store`: place among the stores of the course, then its tine sets. */
export type Redelivery = { readonly store: number; readonly date: string; readonly atMin: number }

/** What was pinned, as the facts have it. */
export type WishedPin =
  | {
      readonly kind: 'green'
      readonly green: number
      readonly day: number
      readonly openMin: number | null
      readonly fact: number
    }
  | {
      readonly kind: 'step'
      readonly green: number
      readonly step: number
      readonly startMin: number
      readonly machine: number | null
      readonly people: readonly number[] | null
      readonly fact: number
    }

/** The facts of the day, with ids as indices and moments as minutes. */
export type Moment = {
  readonly nowMin: number
  /** By green, by step: the spells of work on it in order. */
  readonly spells: readonly (readonly (readonly Spell[])[])[]
  readonly machinesOut: readonly Outage[]
  readonly peopleOut: readonly Outage[]
  readonly slower: readonly Slower[]
  readonly seen: readonly StockSeen[]
  readonly deliveries: readonly Redelivery[]
  readonly pins: readonly WishedPin[]
  /** Greens left out by the manager, with the fact and the manager's own words. */
  readonly skipped: ReadonlyMap<number, { readonly fact: number; readonly why: string | null }>
}

/** The outage that covers a minute, if any. */
export const outageAt = (outages: readonly Outage[], index: number, minute: number): Outage | undefined =>
  outages.find((one) => one.index === index && one.fromMin <= minute && minute < one.untilMin)

/** First outage of a machine or of one of the people that begins inside (start, finish); NEVER where there is none. */
export const cutBy = (
  moment: Pick<Moment, 'machinesOut' | 'peopleOut'>,
  task: { readonly machine: number | null; readonly people: readonly number[] },
  startMin: number,
  finishMin: number,
): number =>
  [
    ...moment.machinesOut.filter(({ index }) => index === task.machine),
    ...moment.peopleOut.filter(({ index }) => task.people.includes(index)),
  ].reduce(
    (first, { fromMin }) => (fromMin > startMin && fromMin < finishMin ? Math.min(first, fromMin) : first),
    NEVER,
  )

/** Whether anything was told of a step. */
export const isTold = (moment: Moment, green: number, step: number): boolean =>
  (moment.spells[green]?.[step]?.length ?? 0) > 0

/** The last step of a green of which anything was told; -1 where nothing was. */
export const lastTold = (moment: Moment, problem: Problem, green: number): number =>
  (problem.greens[green]?.steps ?? []).findLastIndex((_, step) => isTold(moment, green, step))
