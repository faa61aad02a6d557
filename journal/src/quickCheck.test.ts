import * as fc from 'fast-check'
import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { KINDS, KIND_NAMES, findKind } from './kinds.ts'
import { quickCheckOf } from './quickCheck.ts'

/** Kinds that a season has thousands of: for these the quick check must answer. */
const FREQUENT = [
  'taskStarted',
  'taskStopped',
  'taskFinished',
  'greenFinished',
  'problemReported',
  'rainBegan',
  'rainEnded',
  'noteWritten',
  'measureTaken',
  'stockUsed',
  'deliveryReceived',
  'photoTaken',
  'struck',
] as const

const kindOf = (name: string) => {
  const kind = findKind(KINDS, name)
  if (kind === undefined) throw new Error(`no kind ${name}`)
  return kind
}

/** A body with one of its values replaced, added or taken out, at any depth. */
const spoilt = (body: unknown): fc.Arbitrary<unknown> => {
  if (typeof body !== 'object' || body === null)
    return fc.oneof(fc.jsonValue({ maxDepth: 1 }), fc.constant(` ${String(body)} `), fc.double())
  const keys = Object.keys(body)
  const replaced = keys.map((key) =>
    spoilt(Reflect.get(body, key)).map((value) =>
      Array.isArray(body) ? [value] : { ...body, [key]: value },
    ),
  )
  const without = keys.map((key) =>
    fc.constant(Object.fromEntries(Object.entries(body).filter(([name]) => name !== key))),
  )
  return fc.oneof(fc.constant({ ...body, surprise: 1 }), fc.constant(undefined), ...replaced, ...without)
}

describe('the quick check', () => {
  it.each(FREQUENT)('is sure of a good %s', (name) => {
    const { body, example } = kindOf(name)
    expect(quickCheckOf(body)(example)).toBe(true)
  })

  it.each(KIND_NAMES)('is never sure of a %s that the schema would refuse or change', (name) => {
    const { body, example } = kindOf(name)
    const check = quickCheckOf(body)
    fc.assert(
      fc.property(spoilt(example), (value) => {
        if (!check(value)) return
        const parsed = v.safeParse(body, value)
        expect(parsed.success).toBe(true)
        expect(parsed.output).toEqual(value)
      }),
      { seed: 8, numRuns: 300 },
    )
  })

  it('is not sure where the schema would fill in a default, change a text, or is of another sort', () => {
    const filled = quickCheckOf(v.strictObject({ a: v.optional(v.number(), 1) }))
    expect(filled({ a: 1 })).toBe(false)
    expect(quickCheckOf(v.pipe(v.string(), v.trim()))(' a')).toBe(false)
    expect(quickCheckOf(v.pipe(v.string(), v.toUpperCase()))('A')).toBe(false)
    expect(quickCheckOf(v.union([v.date(), v.string()]))('a')).toBe(false)
    expect(quickCheckOf(v.object({ a: v.number() }))({ a: 1 })).toBe(false)
  })
})
