import { describe, expect, it } from 'vitest'
import { cursorText, parseCursor } from './cursor.ts'
import { idOf } from './testing/entries.ts'

describe('a cursor', () => {
  it('comes back from its text', () => {
    expect(cursorText(null)).toBe('0')
    expect(parseCursor('0')).toBeNull()
    expect(parseCursor(cursorText({ seq: 12, id: idOf(3) }))).toEqual({ seq: 12, id: idOf(3) })
  })

  it.each(['', '12', '-1', `0.${idOf(1)}`, `1.5.${idOf(1)}`, '12.abc', `12.${idOf(1)} `, 'next'])(
    'is not %j',
    (text) => {
      expect(parseCursor(text)).toBeUndefined()
    },
  )
})
