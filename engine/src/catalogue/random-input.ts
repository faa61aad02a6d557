import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type { Item } from './item.ts'
import { elementOf, fieldsOf, optionsOf, quantityOf, unwrap } from './schema-walk.ts'

/** Draws numbers in [0, 1) from a seed. Test support: nothing outside tests uses this file. */
export type Random = () => number

/** A seeded source of chance. */
export const randomFrom = (seed: number): Random => {
  const generator = xoroshiro128plus(seed)
  return () => uniformFloat64(generator)
}

const GARBAGE: readonly unknown[] = [
  undefined,
  null,
  '',
  '12',
  'twelve',
  true,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  -0,
  0,
  -1,
  1e300,
  -1e300,
  5e-324,
  [],
  {},
  [[]],
  { low: 1 },
  { low: 3, typical: 2, high: 1 },
  { low: Number.NaN, typical: 1, high: 2 },
]

const pick = <T>(list: readonly T[], random: Random): T | undefined =>
  list[Math.floor(random() * list.length)]

/** How often a value is not what the schema wants. */
const WRONG = 0.02

const numberFor = (min: number, max: number, whole: boolean, random: Random): unknown => {
  const kind = random()
  if (kind < 0.04) return min
  if (kind < 0.08) return max
  if (kind < 0.09) return min - 10 ** (6 * random() - 3)
  if (kind < 0.1) return max + 10 ** (6 * random() - 3)
  // Half the values are near the lower end on a logarithmic scale: trade values are small against generous ranges.
  const near = random() < 0.5
  const value =
    near && max - min > 10 ? min + 10 ** (random() * Math.log10(max - min)) : min + (max - min) * random()
  const number = Math.min(max, whole ? Math.round(value) : value)
  if (kind > 0.997) return { low: number, typical: number, high: Math.min(max, number * 1.1 + 1e-9) }
  return number
}

const listFor = (element: unknown, random: Random): unknown => {
  const length = Math.floor(random() * 5)
  return Array.from({ length }, () => randomValue(element, random))
}

/** A value for a schema: mostly acceptable, sometimes at or beyond the range, sometimes not even of the right kind. */
export const randomValue = (schema: unknown, random: Random): unknown => {
  if (random() < WRONG) return pick(GARBAGE, random)
  const q = quantityOf(schema)
  if (q !== undefined) return numberFor(q.min, q.max, q.whole === true, random)
  const inner = unwrap(schema)
  const fields = Object.entries(fieldsOf(inner))
  if (fields.length > 0)
    return Object.fromEntries(
      fields.flatMap(([key, child]) =>
        child !== unwrap(child) && random() < 0.5 ? [] : [[key, randomValue(child, random)]],
      ),
    )
  const element = elementOf(inner)
  if (element !== undefined) return listFor(element, random)
  const option = pick(optionsOf(inner), random)
  if (option !== undefined) return typeof option === 'object' ? randomValue(option, random) : option
  return random() < 0.5
}

const leavesOf = (value: unknown): number =>
  typeof value === 'object' && value !== null
    ? Object.values(value).reduce<number>((sum, child) => sum + leavesOf(child), 0)
    : 1

/** A published input with about `share` of its values drawn anew, so that the shape is right and the formula runs. */
const changed = (value: unknown, schema: unknown, share: number, random: Random): unknown => {
  if (typeof value !== 'object' || value === null)
    return random() < share ? randomValue(schema, random) : value
  if (Array.isArray(value)) {
    const element = elementOf(schema)
    return value.map((child: unknown) => changed(child, element, share, random))
  }
  const fields = fieldsOf(schema)
  return Object.fromEntries(
    Object.entries(value).map(([key, child]) => [key, changed(child, fields[key], share, random)]),
  )
}

/** Values of a published input that are drawn anew, on average; at most half of them. */
const CHANGES = 2

/** An input for an item: drawn from its schema, or one of its published inputs changed here and there. */
export const randomInput = (item: Item, random: Random): unknown => {
  const published = pick(item.checks, random)
  return published === undefined || random() < 0.4
    ? randomValue(item.inputs, random)
    : changed(published.input, item.inputs, Math.min(0.5, CHANGES / leavesOf(published.input)), random)
}
