import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { issueFacts } from './issueFacts.ts'

const schema = v.strictObject({
  count: v.pipe(v.number(), v.minValue(1)),
  name: v.optional(v.pipe(v.string(), v.minLength(1), v.maxLength(3))),
  list: v.optional(v.pipe(v.array(v.number()), v.maxLength(2))),
  how: v.optional(v.picklist(['dry', 'wet'])),
  day: v.optional(v.pipe(v.string(), v.regex(/^\d+$/u, 'a day in digits'))),
})

describe('the facts of what is wrong', () => {
  it.each([
    ['a missing field', {}, { field: 'count', expected: 'present' }],
    ['a field too many', { count: 1, more: 2 }, { field: 'more', expected: 'absent' }],
    ['a value of another kind', { count: 'x' }, { field: 'count', expected: 'a number' }],
    ['a text that is empty', { count: 1, name: '' }, { field: 'name', expected: 'at least 1 character' }],
    ['a text that is long', { count: 1, name: 'four' }, { field: 'name', expected: 'at most 3 characters' }],
    ['a list that is long', { count: 1, list: [1, 2, 3] }, { field: 'list', expected: 'at most 2 items' }],
    ['no word of a list', { count: 1, how: 'soft' }, { field: 'how', expected: '"dry" or "wet"' }],
    ['a value out of range', { count: 0 }, { field: 'count', expected: 'at least 1' }],
    [
      'a value that our own words describe',
      { count: 1, day: 'x' },
      { field: 'day', expected: 'a day in digits' },
    ],
    ['the whole', 7, { field: 'body', expected: 'an object' }],
  ])('name the field and what it should be, for %s', (_what, input, facts) => {
    const parsed = v.safeParse(schema, input)
    if (parsed.success) throw new Error('nothing is wrong')
    expect(issueFacts(parsed.issues[0], 'body')).toEqual(facts)
  })
})
