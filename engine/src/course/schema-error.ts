import * as v from 'valibot'
import { quantityAt } from '../catalogue/run.ts'
import { fail, ok, type Result } from '../result.ts'
import type { CourseError, CourseWhere } from './course-error.ts'

/** A value told in a few words, so that an error never carries a megabyte. */
export const described = (value: unknown): string => {
  if (value === null) return 'null'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'an object'
  if (value === undefined) return 'nothing'
  const text =
    typeof value === 'string' ? `'${value}'` : typeof value === 'number' ? `${value}` : JSON.stringify(value)
  return text !== undefined && text.length > 60 ? `${text.slice(0, 57)}...` : (text ?? typeof value)
}

const joined = (path: string, key: unknown): string =>
  typeof key === 'number' ? `${path}[${key}]` : path === '' ? String(key) : `${path}.${String(key)}`

/** The words of a closed list, from the schema's own telling of it: `("a" | "b")`. */
const wordsOf = (expected: string): readonly string[] =>
  [...expected.matchAll(/"((?:[^"\\]|\\.)*)"/gu)].map((match) => match[1] ?? '')

const unknownFieldOf = (issue: v.BaseIssue<unknown>, schema: v.GenericSchema): readonly string[] | null => {
  if (issue.type !== 'strict_object' || issue.expected !== 'never') return null
  const parents = (issue.path ?? []).slice(0, -1).map((part) => part.key)
  const at = parents.reduce<unknown>(stepInto, schema)
  return at !== null && typeof at === 'object' && 'entries' in at ? Object.keys(at.entries as object) : []
}

const stepInto = (schema: unknown, key: unknown): unknown => {
  let inner = schema
  while (typeof inner === 'object' && inner !== null && 'wrapped' in inner) inner = inner.wrapped
  if (typeof inner !== 'object' || inner === null) return undefined
  if ('item' in inner) return inner.item
  const next = 'entries' in inner ? (inner.entries as Record<string, unknown>)[String(key)] : undefined
  let found = next
  while (typeof found === 'object' && found !== null && 'wrapped' in found) found = found.wrapped
  return found
}

/** What a missing field should have been. */
const wantedAt = (schema: v.GenericSchema, keys: readonly unknown[]): string => {
  const at = keys.reduce<unknown>(stepInto, schema)
  const type = typeof at === 'object' && at !== null && 'type' in at ? at.type : undefined
  if (type === 'picklist' && typeof at === 'object' && at !== null && 'options' in at)
    return `one of ${(at.options as readonly string[]).join(', ')}`
  return TYPE_WORDS[String(type)] ?? 'given'
}

/** Types of the schema library in plain words. */
const TYPE_WORDS: Readonly<Record<string, string>> = {
  array: 'a list',
  object: 'an object',
  strict_object: 'an object',
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
}

/** What our own messages say instead of the schema library's. */
const expectedOf = (issue: v.BaseIssue<unknown>): string => {
  switch (issue.type) {
    case 'regex':
    case 'check':
      return issue.message
    case 'iso_date':
      return 'a day such as 2026-08-10'
    case 'iso_timestamp':
      return 'a time with its offset such as 2026-08-09T19:00:00+01:00'
    case 'integer':
      return 'a whole number'
    case 'min_length':
      return issue.input === '' || (Array.isArray(issue.input) && issue.input.length === 0)
        ? 'at least one'
        : 'more entries'
    case 'max_length':
      return 'a shorter text'
    default:
      return (
        TYPE_WORDS[issue.type] ??
        (issue.expected ?? 'another value')
          .replaceAll('"', "'")
          .replaceAll(' | ', ' or ')
          .replace(/^\((.*)\)$/u, '$1')
      )
  }
}

const errorOf = (schema: v.GenericSchema, issue: v.BaseIssue<unknown>, base: CourseWhere): CourseError => {
  const keys = (issue.path ?? []).map((part) => part.key)
  const where = { ...base, path: keys.reduce<string>(joined, base.path) }
  const field = keys.reduce<string>(joined, '')
  const allowed = unknownFieldOf(issue, schema)
  if (allowed !== null) return { type: 'unknownField', where, field, allowed }
  const q = quantityAt(schema, keys)
  const { input } = issue
  if (q !== undefined && typeof input === 'number' && (input < q.min || input > q.max))
    return { type: 'outOfRange', where, field, unit: q.unit, min: q.min, max: q.max, received: input }
  if (input === undefined)
    return {
      type: 'missing',
      where,
      field,
      expected:
        q === undefined
          ? wantedAt(schema, keys)
          : `a number from ${q.min} to ${q.max} ${q.unit}`.replace(/ 1$/u, ''),
    }
  if ((issue.type === 'picklist' || issue.type === 'literal') && typeof input === 'string')
    return {
      type: 'notAllowed',
      where,
      field,
      allowed: wordsOf(issue.expected ?? ''),
      received: described(input),
    }
  return { type: 'wrongType', where, field, expected: expectedOf(issue), received: described(input) }
}

/** Reads a part of a file by its schema; the first thing wrong comes back with its place. */
export const readBySchema = <S extends v.GenericSchema>(
  schema: S,
  input: unknown,
  where: CourseWhere,
): Result<v.InferOutput<S>, CourseError> => {
  const parsed = v.safeParse(schema, input, { abortEarly: true })
  return parsed.success ? ok(parsed.output) : fail(errorOf(schema, parsed.issues[0], where))
}
