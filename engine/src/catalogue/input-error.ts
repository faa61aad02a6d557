import type * as v from 'valibot'
import type { CalculationError } from './errors.ts'
import type { Quantity } from './quantity.ts'
import { pathWords, quantityAt, stepInto } from './schema-walk.ts'

/** Longest piece of a wrong value that is repeated in an error. */
const RECEIVED_LENGTH = 60

/** A value as it stands in an error. */
const received = (value: unknown): string => {
  if (value === null || typeof value === 'number' || typeof value === 'boolean') return String(value)
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object') return 'an object'
  return (JSON.stringify(value) ?? typeof value).slice(0, RECEIVED_LENGTH)
}

const rangeWords = (q: Quantity, input: unknown): string => {
  const number = `a ${q.whole === true ? 'whole ' : ''}number from ${q.min} to ${q.max}`
  return typeof input === 'object' && input !== null ? `${number}, or { low, typical, high } of such` : number
}

/** The schema library's own words, e.g. `("cool" | "warm")`, as people write them. */
const plainWords = (expects: string): string => {
  if (expects === 'Array') return 'a list'
  if (expects === 'Object') return 'an object'
  if (expects === 'boolean') return 'true or false'
  return expects.replaceAll(' | ', ' or ').replaceAll(/[()]/gu, '')
}

/** What a field that is not a number should hold; `schema` is its own schema. */
const wantedWords = (issue: v.BaseIssue<unknown>, schema: unknown): string => {
  if (issue.type === 'min_length') return `a list of at least ${String(issue.requirement)}`
  if (issue.type === 'max_length') return `a list of at most ${String(issue.requirement)}`
  return typeof schema === 'object' &&
    schema !== null &&
    'expects' in schema &&
    typeof schema.expects === 'string'
    ? plainWords(schema.expects)
    : plainWords(issue.expected ?? 'another value')
}

/** The first thing wrong with an input, as a typed error that names the field, its unit and what is accepted. */
export const inputError = (schema: v.GenericSchema, issue: v.BaseIssue<unknown>): CalculationError => {
  const path = (issue.path ?? []).map((part) => part.key)
  const field = pathWords(path) || 'input'
  const { input } = issue
  const q = quantityAt(schema, path)
  const unit = q?.unit ?? '1'
  if (
    q !== undefined &&
    typeof input === 'number' &&
    Number.isFinite(input) &&
    (input < q.min || input > q.max)
  )
    return { type: 'outOfRange', field, unit, min: q.min, max: q.max, received: input }
  const wanted = path.reduce<unknown>(stepInto, schema)
  const expected = q === undefined ? wantedWords(issue, wanted) : rangeWords(q, input)
  return input === undefined
    ? { type: 'missing', field, unit, expected }
    : { type: 'wrongType', field, unit, expected, received: received(input) }
}
