import { describe, expect, it } from 'vitest'
import { calculate, type CalculationError } from '@swardwright/engine'
import { calculationErrorWords } from './calculation-words.ts'

describe('words for what is wrong with an input', () => {
  it.each<[CalculationError, string]>([
    [{ type: 'unknownItem', name: 'tining.magic' }, 'there is no calculation called tining.magic'],
    [
      { type: 'missing', field: 'depthMm', unit: 'mm', expected: 'a number from 1 to 450' },
      'depthMm is missing; it must be a number from 1 to 450 mm',
    ],
    [
      { type: 'missing', field: 'pattern', unit: '1', expected: '("rectangular" | "staggered")' },
      'pattern is missing; it must be ("rectangular" | "staggered")',
    ],
    [
      {
        type: 'wrongType',
        field: 'layers[0].toMm',
        unit: 'mm',
        expected: 'a number from 1 to 400',
        received: '"deep"',
      },
      'layers[0].toMm is "deep"; it must be a number from 1 to 400 mm',
    ],
    [
      { type: 'wrongType', field: '', unit: '1', expected: 'Object', received: 'a list' },
      'the input is a list; it must be Object',
    ],
    [
      { type: 'outOfRange', field: 'depthMm', unit: 'mm', min: 1, max: 450, received: 900 },
      'depthMm is 900 mm; it must be 1 to 450 mm',
    ],
    [
      { type: 'outOfRange', field: 'fillFactor', unit: '1', min: 0.3, max: 1.2, received: 12500 },
      'fillFactor is 12500; it must be 0.3 to 1.2',
    ],
    [
      {
        type: 'notDefined',
        field: 'depthMm',
        unit: 'mm',
        reason: 'depthMm is 90 mm but the layers end at 80 mm',
      },
      'depthMm is 90 mm but the layers end at 80 mm',
    ],
  ])('%j', (error, words) => {
    expect(calculationErrorWords(error)).toBe(words)
  })

  it('speak of what was really typed', () => {
    const result = calculate('tining.areaShare', { depthMm: 'x' })
    if (result.ok) throw new Error('a word is no depth')
    expect(calculationErrorWords(result.error)).toMatch(/^[a-zA-Z]+ is .*; it must be /u)
  })
})
