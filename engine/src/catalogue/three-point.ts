import { pathWords, quantityOf, stepInto } from './schema-walk.ts'

/**
 * An uncertain number: the least, the most likely and the greatest value that somebody holds possible, in the unit of its field.
 * Drawn from the triangle over the three, so that no draw leaves them.
 */
export type ThreePoint = { readonly low: number; readonly typical: number; readonly high: number }

/** An uncertain number of an input: the object itself, where it stands, and whether only whole numbers make sense there. */
export type UncertainField = {
  readonly at: object
  readonly field: string
  readonly value: ThreePoint
  readonly unit: string
  readonly whole: boolean
}

/** Deepest nesting of an input that is searched; no item goes deeper. */
const DEEPEST = 8

const isPlainObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isThreePoint = (value: unknown): value is ThreePoint =>
  isPlainObject(value) &&
  Object.keys(value).length === 3 &&
  typeof value['low'] === 'number' &&
  typeof value['typical'] === 'number' &&
  typeof value['high'] === 'number'

const search = (schema: unknown, value: unknown, path: readonly unknown[]): readonly UncertainField[] => {
  if (path.length > DEEPEST || typeof value !== 'object' || value === null) return []
  const quantity = quantityOf(schema)
  if (quantity !== undefined)
    return isThreePoint(value)
      ? [{ at: value, field: pathWords(path), value, unit: quantity.unit, whole: quantity.whole === true }]
      : []
  const children: readonly (readonly [unknown, unknown])[] = Array.isArray(value)
    ? [...value.entries()]
    : Object.entries(value)
  return children.flatMap(([key, child]) => search(stepInto(schema, key), child, [...path, key]))
}

/** The uncertain numbers of an input, by the name of their field, so that the order of keys does not change the draws. */
export const uncertainFields = (schema: unknown, input: unknown): readonly UncertainField[] =>
  search(schema, input, []).toSorted((a, b) => (a.field < b.field ? -1 : 1))

/** The input with each uncertain number replaced; everything else stays as it is. */
export const withNumbers = (value: unknown, numberOf: ReadonlyMap<object, number>): unknown => {
  if (typeof value !== 'object' || value === null) return value
  const drawn = numberOf.get(value)
  if (drawn !== undefined) return drawn
  if (Array.isArray(value)) return value.map((element: unknown) => withNumbers(element, numberOf))
  return Object.fromEntries(Object.entries(value).map(([key, child]) => [key, withNumbers(child, numberOf)]))
}

/** The value of a three-point estimate at `u` in [0, 1): the inverse of the triangle's distribution function. */
export const triangleAt = ({ low, typical, high }: ThreePoint, u: number): number => {
  const width = high - low
  if (width === 0) return low
  const rising = typical - low
  const value =
    u < rising / width
      ? low + Math.sqrt(u * width * rising)
      : high - Math.sqrt((1 - u) * width * (high - typical))
  return Math.min(high, Math.max(low, value))
}
