import * as v from 'valibot'
import { fail, type Result } from '../result.ts'
import type { CalculationError } from './errors.ts'
import type { Item } from './item.ts'
import type { Quantity } from './quantity.ts'

/** The path of an issue as people write it: `layers[0].toMm`. */
const fieldOf = (issue: v.BaseIssue<unknown>): string =>
  (issue.path ?? []).reduce(
    (path, part) =>
      typeof part.key === 'number'
        ? `${path}[${part.key}]`
        : path === ''
          ? String(part.key)
          : `${path}.${String(part.key)}`,
    '',
  )

const hasQuantity = (metadata: unknown): metadata is { readonly quantity: Quantity } =>
  typeof metadata === 'object' && metadata !== null && 'quantity' in metadata

/** Schemas that wrap another one and keep it under `wrapped`. */
const unwrap = (schema: unknown): unknown =>
  typeof schema === 'object' && schema !== null && 'wrapped' in schema ? unwrap(schema.wrapped) : schema

/** Walks one step into a schema: a field of an object, an element of an array, or, in a union, whichever option has it. */
const step = (schema: unknown, key: unknown): unknown => {
  const inner = unwrap(schema)
  if (typeof inner !== 'object' || inner === null) return undefined
  if ('entries' in inner && typeof inner.entries === 'object' && inner.entries !== null)
    return (inner.entries as Record<string, unknown>)[String(key)]
  if ('item' in inner) return inner.item
  if ('options' in inner && Array.isArray(inner.options))
    return inner.options.map((option: unknown) => step(option, key)).find((found) => found !== undefined)
  return undefined
}

/** The quantity that a field of an input schema holds, if it is a number with a unit. */
export const quantityAt = (schema: unknown, path: readonly unknown[]): Quantity | undefined => {
  const found = unwrap(path.reduce<unknown>(step, schema))
  if (typeof found !== 'object' || found === null || !('kind' in found)) return undefined
  const metadata: unknown = v.getMetadata(found as v.GenericSchema)
  return hasQuantity(metadata) ? metadata.quantity : undefined
}

const describe = (value: unknown): string =>
  value === null
    ? 'null'
    : Array.isArray(value)
      ? 'a list'
      : typeof value === 'object'
        ? 'an object'
        : (JSON.stringify(value) ?? typeof value)

/** The first thing wrong with an input, as a typed error. */
const errorOf = (schema: v.GenericSchema, issue: v.BaseIssue<unknown>): CalculationError => {
  const field = fieldOf(issue)
  const q = quantityAt(
    schema,
    (issue.path ?? []).map((part) => part.key),
  )
  const unit = q?.unit ?? '1'
  if (
    q !== undefined &&
    typeof issue.input === 'number' &&
    Number.isFinite(issue.input) &&
    (issue.input < q.min || issue.input > q.max)
  )
    return { type: 'outOfRange', field, unit, min: q.min, max: q.max, received: issue.input }
  const expected =
    q === undefined ? (issue.expected ?? 'another value') : `a number from ${q.min} to ${q.max}`
  if (issue.input === undefined) return { type: 'missing', field, unit, expected }
  return { type: 'wrongType', field, unit, expected, received: describe(issue.input) }
}

/** Checks an input against the item's schema, then runs the item. Never throws for what a person typed. */
export const runItem = <I extends v.GenericSchema, O extends v.GenericSchema>(
  item: Item<I, O>,
  input: unknown,
): Result<v.InferOutput<O>, CalculationError> => {
  const parsed = v.safeParse(item.inputs, input, { abortEarly: true })
  if (parsed.success) return item.run(parsed.output)
  return fail(errorOf(item.inputs, parsed.issues[0]))
}
