import { describe, expect, it } from 'vitest'
import { sameJson } from './sameJson.ts'

describe('sameJson', () => {
  it.each([
    [
      { a: 1, b: [1, { c: null }] },
      { b: [1, { c: null }], a: 1 },
    ],
    [[], []],
    ['x', 'x'],
    [null, null],
  ])('finds %j and %j the same', (a, b) => {
    expect(sameJson(a, b)).toBe(true)
  })

  it.each([
    [{ a: 1 }, { a: 1, b: 2 }],
    [{ a: 1 }, { b: 1 }],
    [
      [1, 2],
      [2, 1],
    ],
    [[], {}],
    [null, {}],
    [1, '1'],
    [{ toString: 1 }, {}],
  ])('finds %j and %j different', (a, b) => {
    expect(sameJson(a, b)).toBe(false)
    expect(sameJson(b, a)).toBe(false)
  })
})
