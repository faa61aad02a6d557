import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { issueFacts } from './issueFacts.ts'

const schema = v.strictObject({
  count: v.pipe(v.number(), v.minValue(1)),
  day: v.optional(v.pipe(v.string(), v.regex(/^\d+$/u, 'a day in digits'))),
})

describe('the facts of what is wrong', () => {
  it.each([
    ['a missing field', {}, { field: 'count', expected: 'present' }],
    ['a field too many', { count: 1, more: 2 }, { field: 'more', expected: 'absent' }],
    ['a value of another kind', { count: 'x' }, { field: 'count', expected: 'number' }],
    ['a value out of range', { count: 0 }, { field: 'count', expected: '>=1' }],
    [
      'a value that our own words describe',
      { count: 1, day: 'x' },
      { field: 'day', expected: 'a day in digits' },
    ],
    ['the whole', 7, { field: 'body', expected: 'Object' }],
  ])('name the field and what it should be, for %s', (_what, input, facts) => {
    const parsed = v.safeParse(schema, input)
    if (parsed.success) throw new Error('nothing is wrong')
    expect(issueFacts(parsed.issues[0], 'body')).toEqual(facts)
  })
})
