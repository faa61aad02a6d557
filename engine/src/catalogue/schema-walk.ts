import * as v from 'valibot'
import type { Figure, Quantity } from './quantity.ts'

/** Schemas that wrap another one (optional, nullable) keep it under `wrapped`; this is the one inside. */
export const unwrap = (schema: unknown): unknown =>
  typeof schema === 'object' && schema !== null && 'wrapped' in schema ? unwrap(schema.wrapped) : schema

/** The fields of an object schema, empty for any other. */
export const fieldsOf = (schema: unknown): Readonly<Record<string, unknown>> => {
  const inner = unwrap(schema)
  return typeof inner === 'object' &&
    inner !== null &&
    'entries' in inner &&
    typeof inner.entries === 'object' &&
    inner.entries !== null
    ? (inner.entries as Record<string, unknown>)
    : {}
}

/** The schema of a list's elements, undefined for any other schema. */
export const elementOf = (schema: unknown): unknown => {
  const inner = unwrap(schema)
  return typeof inner === 'object' && inner !== null && 'item' in inner ? inner.item : undefined
}

/** The options of a union or picklist, empty for any other schema. */
export const optionsOf = (schema: unknown): readonly unknown[] => {
  const inner = unwrap(schema)
  return typeof inner === 'object' && inner !== null && 'options' in inner && Array.isArray(inner.options)
    ? inner.options
    : []
}

/** Walks one step into a schema: a field of an object, an element of a list, or, in a union, whichever option has it. */
export const stepInto = (schema: unknown, key: unknown): unknown => {
  const fields = fieldsOf(schema)
  const name = String(key)
  if (Object.hasOwn(fields, name)) return fields[name]
  if (typeof key === 'number') {
    const element = elementOf(schema)
    if (element !== undefined) return element
  }
  return optionsOf(schema)
    .map((option) => (typeof option === 'object' ? stepInto(option, key) : undefined))
    .find((found) => found !== undefined)
}

const metadataOf = (schema: unknown): Readonly<Record<string, unknown>> => {
  const inner = unwrap(schema)
  return typeof inner === 'object' && inner !== null && 'kind' in inner
    ? v.getMetadata(inner as v.GenericSchema)
    : {}
}

/** The quantity that a schema stands for, if it is a number with a unit. */
export const quantityOf = (schema: unknown): Quantity | undefined =>
  metadataOf(schema)['quantity'] as Quantity | undefined

/** The figure that an output schema stands for, if it is a number with a unit. */
export const figureOf = (schema: unknown): Figure | undefined =>
  metadataOf(schema)['figure'] as Figure | undefined

/** The quantity that a field of an input schema holds, if it is a number with a unit. */
export const quantityAt = (schema: unknown, path: readonly unknown[]): Quantity | undefined =>
  quantityOf(path.reduce<unknown>(stepInto, schema))

/** A path as people write it: `layers[0].toMm`. */
export const pathWords = (path: readonly unknown[]): string =>
  path.reduce<string>((words, key) => {
    if (typeof key === 'number') return `${words}[${key}]`
    return words === '' ? String(key) : `${words}.${String(key)}`
  }, '')
