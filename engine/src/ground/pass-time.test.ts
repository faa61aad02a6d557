import { expect, test } from 'vitest'
import { passTime } from './pass-time.ts'

const machine = { widthM: 1, overlapM: 0, speedMPerS: 1, turnS: 12, laps: 0 }

test('a rectangle of 10 x 30 m takes ten runs of 30 m and nine turns (by hand: 300 s + 108 s = 6.8 min)', () => {
  const outer = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 30 },
    { x: 0, y: 30 },
  ]
  const time = passTime({ ...machine, shape: { outer, holes: [] } })
  expect(time.runs).toBe(10)
  expect(time.turns).toBe(9)
  expect(time.runLengthM).toBeCloseTo(300, 6)
  expect(time.timeMin).toBeCloseTo(6.8, 6)
})

test('an area alone is timed on an ellipse: 500 m2 at 1 m takes at least 500 m of runs', () => {
  const time = passTime({ ...machine, shape: { areaM2: 500 } })
  expect(time.runLengthM).toBeGreaterThan(500)
  expect(time.runLengthM).toBeLessThan(550)
})
