import { expect, test } from 'vitest'
import { clockFace, headingOfHour } from './clock-face.ts'

test.each([
  [60, 0, 2, 8, 0],
  [240, 0, 2, 8, 0],
  [0, 0, 6, 12, 0],
  [178, 0, 6, 12, -2],
  [90, 0, 3, 9, 0],
  [40, 0, 1, 7, 10],
  [150, 90, 2, 8, 0],
  [10, 310, 2, 8, 0],
])(
  'heading %s with the line of play at %s is told as %s to %s, %s degrees off',
  (heading, play, from, to, off) => {
    const told = clockFace(heading, play)
    expect([told.fromHour, told.toHour]).toEqual([from, to])
    expect(told.offDeg).toBeCloseTo(off, 9)
  },
)

test('an hour turned back into a heading is the same line', () => {
  for (let hour = 1; hour <= 12; hour++) {
    const told = clockFace(headingOfHour(hour, 37), 37)
    expect([told.fromHour, told.toHour]).toContain(hour)
    expect(Math.abs(told.offDeg)).toBeLessThan(1e-9)
  }
})
