import { describe, expect, it } from 'vitest'
import { CATALOGUE, calculate } from './catalogue.ts'
import type { Item } from './item.ts'
import type { Quantity } from './quantity.ts'
import { elementOf, fieldsOf, pathWords, quantityOf } from './schema-walk.ts'

type Key = string | number
type NumberField = { readonly path: readonly Key[]; readonly quantity: Quantity }

/** Every number of a published input, with its range. Of a list the first entry stands for all. */
const numbersOf = (schema: unknown, value: unknown, path: readonly Key[] = []): readonly NumberField[] => {
  const quantity = quantityOf(schema)
  if (quantity !== undefined) return typeof value === 'number' ? [{ path, quantity }] : []
  if (Array.isArray(value)) return numbersOf(elementOf(schema), value[0], [...path, 0])
  if (typeof value !== 'object' || value === null) return []
  const fields = fieldsOf(schema)
  return Object.entries(value).flatMap(([key, child]) => numbersOf(fields[key], child, [...path, key]))
}

/** A copy of an input with one value replaced. */
const withValue = (input: unknown, [key, ...rest]: readonly Key[], value: unknown): unknown => {
  if (key === undefined) return value
  if (Array.isArray(input))
    return input.map((child, i) => (i === key ? withValue(child, rest, value) : (child as unknown)))
  const object = input as Readonly<Record<string, unknown>>
  return { ...object, [key]: withValue(object[key], rest, value) }
}

const published = (item: Item): unknown => item.checks[0]?.input

const cases = CATALOGUE.flatMap((item) =>
  item.checks
    .flatMap((check) =>
      numbersOf(item.inputs, check.input).map((number) => ({ ...number, input: check.input })),
    )
    .filter((one, i, all) => all.findIndex((other) => pathWords(other.path) === pathWords(one.path)) === i)
    .map((one) => [item.name, pathWords(one.path), one] as const),
)

describe('the range of every number', () => {
  it('is tested on at least one number of every item', () => {
    expect(new Set(cases.map(([name]) => name))).toEqual(new Set(CATALOGUE.map((item) => item.name)))
  })

  it.each(cases)(
    '%s refuses %s below and above, naming field, unit and range',
    (name, field, { path, quantity, input }) => {
      const { min, max, unit } = quantity
      const step = Math.max(1, Math.abs(max) / 1000)
      for (const received of [min - step, max + step]) {
        const outcome = calculate(name, withValue(input, path, received))
        expect(outcome).toEqual({ ok: false, error: { type: 'outOfRange', field, unit, min, max, received } })
      }
    },
  )

  it.each(cases)(
    '%s takes %s at both ends of its range as far as the range goes',
    (name, _field, { path, quantity, input }) => {
      for (const value of [quantity.min, quantity.max]) {
        const outcome = calculate(name, withValue(input, path, value))
        // Ends of a range may not go with the other values of the row; then the item says so itself.
        if (!outcome.ok) expect(outcome.error.type).toBe('notDefined')
      }
    },
  )

  it.each(cases)('%s refuses words for %s and says what it takes', (name, field, { path, input }) => {
    const outcome = calculate(name, withValue(input, path, 'many'))
    expect(outcome).toMatchObject({ ok: false, error: { type: 'wrongType', field, received: '"many"' } })
    expect(outcome.ok ? '' : outcome.error).toHaveProperty('expected', expect.stringMatching(/number from/u))
  })
})

describe.each(CATALOGUE.map((item) => [item.name, item] as const))('%s', (name, item) => {
  it('names a missing field', () => {
    const outcome = calculate(name, {})
    expect(outcome).toMatchObject({ ok: false })
    expect(outcome.ok ? '' : outcome.error.type).toMatch(/^(missing|notDefined)$/u)
  })

  it('refuses a field that it does not know, so that a slip of the pen is not taken as left out', () => {
    const outcome = calculate(name, { ...(published(item) as object), holeDiametreMm: 12 })
    expect(outcome).toMatchObject({ ok: false, error: { type: 'wrongType', field: 'holeDiametreMm' } })
  })

  it.each([null, undefined, 5, 'text', [], true])('refuses %j for an input', (input) => {
    expect(calculate(name, input)).toMatchObject({ ok: false })
  })
})

it('refuses the name of a calculation that there is not', () => {
  expect(calculate('tining.depth', {})).toEqual({
    ok: false,
    error: { type: 'unknownItem', name: 'tining.depth' },
  })
})
