import { expect, it } from 'vitest'
import { clockFace, headingWords } from './headings.ts'

it.each([
  // An hour of the clock is 30 degrees; opposite hours are the two ends of one run.
  [0, '12 to 6'],
  [62, '2 to 8'],
  [90, '3 to 9'],
  [150, '5 to 11'],
  [166, '12 to 6'],
  [240, '2 to 8'],
  [-30, '5 to 11'],
  [360, '12 to 6'],
])('a run at %i degrees is %s', (deg, words) => {
  expect(clockFace(deg)).toBe(words)
})

it('counts from the line of play where that is known', () => {
  // Play goes east (90); a run at 150 is 60 degrees to the right of it: two o'clock.
  expect(clockFace(150, 90)).toBe('2 to 8')
})

it('keeps the degrees behind', () => {
  expect(headingWords(242)).toBe('2 to 8 (62\u00b0)')
  expect(headingWords(179.7)).toBe('12 to 6 (0\u00b0)')
})
