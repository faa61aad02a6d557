import * as v from 'valibot'
import { figureOrNull, words, wordsOrNull } from '../catalogue/quantity.ts'
import { SOURCES, type SourceId } from '../catalogue/sources.ts'
import type { Limit } from './limits.ts'
import type { Read } from './sieve-curve.ts'

/** Bounds of a criterion; null where that side is free. */
export type Bounds = { readonly min: number | null; readonly max: number | null }

/** One thing that is held against a limit. `pass` and `value` are null together, with the reason. */
export type Criterion = {
  readonly name: string
  readonly unit: string
  readonly value: number | null
  readonly limit: Bounds
  readonly pass: boolean | null
  readonly reason: string | null
  /** Id of the source of the limit, and the source written out. */
  readonly sourceId: string
  readonly source: string
}

export const criteriaSchema = v.array(
  v.strictObject({
    name: words('What is held against the limit'),
    unit: words('Unit of the value and the limit'),
    value: figureOrNull({ meaning: 'The value', unit: 'of the row' }),
    limit: v.strictObject({
      min: figureOrNull({ meaning: 'Least accepted', unit: 'of the row' }),
      max: figureOrNull({ meaning: 'Most accepted', unit: 'of the row' }),
    }),
    pass: v.pipe(v.nullable(v.boolean()), v.description('Whether it holds; null without a value')),
    reason: wordsOrNull('Why there is no value'),
    sourceId: words('Id of the source of the limit'),
    source: words('Source of the limit'),
  }),
)

/** What a criterion is about. */
export type CriterionHead = {
  readonly name: string
  readonly unit: string
  readonly source: SourceId
  readonly limit: Bounds
}

// A figure that meets its limit to the last digit passes; what a computer adds by rounding must not fail it.
const ROUNDING = 1e-9

/** Holds a value against its bounds; bounds themselves pass. */
export const criterion = ({ name, unit, source, limit }: CriterionHead, read: Read): Criterion => {
  const { author, year, title } = SOURCES[source]
  const pass =
    read.value === null
      ? null
      : (limit.min === null || read.value >= limit.min - ROUNDING) &&
        (limit.max === null || read.value <= limit.max + ROUNDING)
  return {
    name,
    unit,
    value: read.value,
    limit,
    pass,
    reason: read.value === null ? read.reason : null,
    sourceId: source,
    source: `${author} (${year}): ${title}`,
  }
}

/** A criterion with an upper limit from the table of published limits. */
export const atMost = (limit: Limit, read: Read): Criterion =>
  criterion(headOf(limit, { min: null, max: limit.value }), read)

/** A criterion with a lower limit from the table of published limits. */
export const atLeast = (limit: Limit, read: Read): Criterion =>
  criterion(headOf(limit, { min: limit.value, max: null }), read)

const headOf = (limit: Limit, bounds: Bounds): CriterionHead => ({
  name: limit.meaning,
  unit: limit.unit,
  source: limit.source,
  limit: bounds,
})

/** Divides two readings; no number when one is missing or the divisor is 0. */
export const ratioOf = (over: Read, under: Read): Read => {
  if (over.value === null) return over
  if (under.value === null) return under
  return under.value === 0 ? { value: null, reason: 'the divisor is 0' } : { value: over.value / under.value }
}
