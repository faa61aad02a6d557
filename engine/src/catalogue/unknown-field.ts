import type { CalculationError } from './errors.ts'
import { elementOf, fieldsOf, pathWords, unwrap } from './schema-walk.ts'

type Path = readonly (string | number)[]

/** The error for a field that a schema does not have; the fields that it has are told. */
export const unknownFieldError = (path: Path, fields: readonly string[]): CalculationError => ({
  type: 'wrongType',
  field: pathWords(path),
  unit: '1',
  expected: `no such field; the fields are ${fields.join(', ')}`,
  received: JSON.stringify(path.at(-1) ?? ''),
})

const isLoose = (schema: unknown): boolean => {
  const inner = unwrap(schema)
  return (
    typeof inner === 'object' &&
    inner !== null &&
    'type' in inner &&
    inner.type !== 'object' &&
    inner.type !== 'strict_object'
  )
}

/**
 * The first field of an input that its schema does not have, at any depth. Object schemas drop such fields in silence, so that a misspelt
 * optional field would count as left out.
 */
export const unknownField = (
  schema: unknown,
  input: unknown,
  path: Path = [],
): CalculationError | undefined => {
  if (typeof input !== 'object' || input === null) return undefined
  if (Array.isArray(input)) {
    const element = elementOf(schema)
    if (Object.keys(fieldsOf(element)).length === 0 && elementOf(element) === undefined) return undefined
    return firstOf(input.map((child, i) => [element, child, [...path, i]]))
  }
  const fields = fieldsOf(schema)
  const names = Object.keys(fields)
  if (names.length === 0 || isLoose(schema)) return undefined
  const stranger = Object.keys(input).find((key) => !Object.hasOwn(fields, key))
  if (stranger !== undefined) return unknownFieldError([...path, stranger], names)
  return firstOf(Object.entries(input).map(([key, child]) => [fields[key], child, [...path, key]]))
}

const firstOf = (
  children: readonly (readonly [schema: unknown, input: unknown, path: Path])[],
): CalculationError | undefined => {
  for (const [schema, input, path] of children) {
    const found = unknownField(schema, input, path)
    if (found !== undefined) return found
  }
  return undefined
}
