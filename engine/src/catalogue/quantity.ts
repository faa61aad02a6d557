import * as v from 'valibot'

/** What a number in a calculation is: its meaning, unit and accepted range. Stored as valibot metadata under `quantity`. */
export type Quantity = {
  /** What it is, in the trade's words, without the unit. */
  readonly meaning: string
  /** Unit as written on screens: 'mm', 'm2', 'L/m2', 'kg/m3', '%', '1' for shares and counts. */
  readonly unit: string
  /** Symbol used in the item's formula, if it has one. */
  readonly symbol?: string
  /** Smallest accepted value. */
  readonly min: number
  /** Largest accepted value. */
  readonly max: number
  /** True for counts: only whole numbers are accepted. */
  readonly whole?: true
}

/** What a number in an output is. Stored as valibot metadata under `figure`. */
export type Figure = { readonly meaning: string; readonly unit: string; readonly symbol?: string }

/**
 * A number input inside [min, max], so finite. Throws nothing; a bad value becomes a `CalculationError` when the item runs.
 * The range alone refuses Infinity, which keeps the schema convertible to JSON Schema.
 */
export const quantity = (q: Quantity) =>
  v.pipe(
    v.number(),
    v.minValue(q.min),
    v.maxValue(q.max),
    v.description(q.meaning),
    v.metadata({ quantity: q }),
  )

/** A whole-number input (counts, passes): an integer inside [min, max]. */
export const count = (q: Omit<Quantity, 'unit' | 'whole'>) =>
  v.pipe(
    v.number(),
    v.integer(),
    v.minValue(q.min),
    v.maxValue(q.max),
    v.description(q.meaning),
    v.metadata({ quantity: { ...q, unit: '1', whole: true } }),
  )

/** A number in an output: no range, since the engine answers for it. */
export const figure = (f: Figure) => v.pipe(v.number(), v.description(f.meaning), v.metadata({ figure: f }))

/** A number in an output that may be undefined for this input; the item then says why in a field of its own. */
export const figureOrNull = (f: Figure) => v.nullable(figure(f))

/** A word from a closed list. */
export const choice = <const T extends readonly string[]>(meaning: string, words: T) =>
  v.pipe(v.picklist(words), v.description(meaning))

/** Yes or no. */
export const yesNo = (meaning: string) => v.pipe(v.boolean(), v.description(meaning))

/** Words in an output. */
export const words = (meaning: string) => v.pipe(v.string(), v.description(meaning))

/** Words in an output, or null when there is nothing to say. */
export const wordsOrNull = (meaning: string) => v.nullable(words(meaning))
