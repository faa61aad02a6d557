import type { FactKind } from './facts.ts'

/** What is wrong with a fact that reads well but does not fit the plan, the course or the moment. Closed; `present` words it. */
export type FactProblem =
  /** No such green, machine, person, task, store, step or delivery; `accepted` lists what there is. */
  | 'unknown'
  /** It says that something has happened after now. */
  | 'afterNow'
  /** Ends before it begins. */
  | 'endsBeforeStart'
  /** Lies outside the days of the plan. */
  | 'outsideDays'
  /** A field that this fact needs, or one of several, is not there. */
  | 'missing'
  /** Two fields that exclude each other. */
  | 'tooMuch'
  /** The green is in work or done, so it can't be left out or opened elsewhere. */
  | 'inWork'

/** A fact that can't be used: which (from 0), its field, what would be accepted and what was received. */
export type FactError = {
  readonly type: 'badFact'
  readonly index: number
  readonly kind: FactKind
  readonly field: string
  readonly problem: FactProblem
  /** Ids, or moments from and to, or fields. */
  readonly accepted: readonly string[]
  readonly received: string
}
