import { describe, expect, it } from 'vitest'
import { cursorText, parseCursor } from './cursor.ts'
import { idOf } from './testing/entries.ts'

describe('a cursor', () => {
  it('comes back from its text', () => {
    expect(cursorText(null)).toBe('0')
    expect(parseCursor('0')).toBeNull()
    const cursor = { seq: 12, id: idOf(3), receivedMs: 1_786_341_600_000 }
    expect(cursorText(cursor)).toBe(`12.${idOf(3)}.1786341600000`)
    expect(parseCursor(cursorText(cursor))).toEqual(cursor)
  })

  it('of an older server, without the moment, is still one', () => {
    const cursor = { seq: 12, id: idOf(3), receivedMs: null }
    expect(cursorText(cursor)).toBe(`12.${idOf(3)}`)
    expect(parseCursor(`12.${idOf(3)}`)).toEqual(cursor)
  })

  it.each([
    '',
    '12',
    '-1',
    `0.${idOf(1)}`,
    `1.5.${idOf(1)}`,
    '12.abc',
    `12.${idOf(1)} `,
    `12.${idOf(1)}.`,
    `12.${idOf(1)}.x`,
    'next',
  ])('is not %j', (text) => {
    expect(parseCursor(text)).toBeUndefined()
  })
})
