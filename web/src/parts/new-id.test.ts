import { expect, it } from 'vitest'
import { newId } from './new-id.ts'

it('makes an id of a name by putting dashes between its words', () => {
  expect(newId('Spare mat (old)', [])).toBe('spare-mat-old')
})

it('numbers the second item of one name', () => {
  expect(newId('Spare mat', ['spare-mat', 'spare-mat-2'])).toBe('spare-mat-3')
})

it('still gives an id for a name without letters', () => {
  expect(newId('???', [])).toBe('item')
})
