import type * as v from 'valibot'
import type { Result } from '../result.ts'
import type { CalculationError } from './errors.ts'
import type { SourceId } from './sources.ts'

/** How good the ground is that a formula stands on; shown beside every number. */
export type Evidence = 'measured trial' | 'handbook' | 'common practice' | 'our assumption'

/** Where an expected value comes from: seen in print, worked out by hand from printed inputs, or remembered. */
export type CheckClass = 'published' | 'derived' | 'memory'

/** One published (or hand-worked) row that the item must reproduce. The expected value never comes from our own output. */
export type Check = {
  /** Stable name of the row, unique in the item. */
  readonly id: string
  readonly class: CheckClass
  readonly source: SourceId
  /** Page, table, example or sentence in the source, and what the row is. */
  readonly where: string
  readonly input: unknown
  /** Path to a number in the output: 'areaShareOnePass' or 'layers[0].organicPercent'. */
  readonly output: string
  /** The output is multiplied by this before it is compared (100 for a share printed as a percentage). Default 1. */
  readonly factor?: number
  readonly expected: number
  /** Largest accepted |factor * output - expected|; the source's own rounding. */
  readonly tolerance: number
}

type AnySchema = v.GenericSchema

/** Everything there is to say about one calculation. Feeds the CLI, the HTTP API, the app's 'where from' panel, docs and tests. */
export type Item<I extends AnySchema = AnySchema, O extends AnySchema = AnySchema> = {
  /** `noun.quantity`, e.g. `tining.areaShare`. */
  readonly name: string
  /** A heading in the trade's words. */
  readonly title: string
  /** The formula in words that a greenkeeper can follow, one to three sentences. */
  readonly words: string
  /** The formula in symbols, as in the source. */
  readonly formula: string
  readonly evidence: Evidence
  readonly sources: readonly [SourceId, ...SourceId[]]
  /** Where sources disagree, what is left out, the size of an approximation. */
  readonly notes?: readonly string[]
  readonly inputs: I
  readonly outputs: O
  readonly checks: readonly Check[]
  /** The pure function. Its input has already been checked against `inputs`. (A method, so that items of any shape share one list.) */
  run(input: v.InferOutput<I>): Result<v.InferOutput<O>, CalculationError>
}

/** Ties an item's function to its schemas; the compiler then checks both ends. */
export const item = <I extends AnySchema, O extends AnySchema>(definition: Item<I, O>): Item<I, O> =>
  definition
