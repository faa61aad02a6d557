import { describe, expect, it } from 'vitest'
import { parseNumber } from './parse-number.ts'

const depth = { label: 'Depth', unit: 'mm', min: 5, max: 400 }

describe('parseNumber', () => {
  it('reads a comma as a decimal point', () => {
    expect(parseNumber('12,5', depth)).toEqual({ ok: true, value: 12.5 })
  })

  it('names the field, the range and the unit when nothing was typed', () => {
    expect(parseNumber('  ', depth)).toEqual({ ok: false, message: 'Depth: give a number, 5 to 400 mm' })
  })

  it('says what was typed when it is no number', () => {
    expect(parseNumber('deep', depth)).toEqual({
      ok: false,
      message: 'Depth: ‘deep’ is not a number; 5 to 400 mm',
    })
  })

  it('refuses a value outside the range with the range', () => {
    expect(parseNumber('-3', depth)).toEqual({ ok: false, message: 'Depth: 5 to 400 mm, not -3' })
  })

  it('refuses a fraction where things are counted', () => {
    expect(parseNumber('1.5', { label: 'Passes', unit: '', min: 1, max: 6, whole: true })).toEqual({
      ok: false,
      message: 'Passes: a whole number, 1 to 6',
    })
  })
})
