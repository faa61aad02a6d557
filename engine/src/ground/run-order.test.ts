import { expect, test } from 'vitest'
import { lShape, rectangle, withIsland } from './fixtures/outlines.ts'
import { planPasses } from './passes.ts'
import { rowsForTurn, rowsInOrder } from './row-order.ts'
import { turnLengthM } from './turn-length.ts'

const settings = {
  widthM: 1,
  overlapM: 0,
  speedMPerS: 1,
  turnS: 10,
  turnRadiusM: 0,
  turnStyle: 'lift',
  laps: 0,
  order: 'backAndForth',
} as const

test('every row is worked once, whatever the number of rows and the reach', () => {
  for (let count = 0; count <= 40; count++)
    for (let reach = 1; reach <= 9; reach++)
      expect(rowsInOrder(count, reach).toSorted((a, b) => a - b)).toEqual(
        Array.from({ length: count }, (_, k) => k),
      )
})

test('reach 2 over six rows: 0 3 1 4 2 5, so turns span three rows out and two home', () => {
  expect(rowsInOrder(6, 2)).toEqual([0, 3, 1, 4, 2, 5])
  expect(rowsForTurn(2, 1)).toBe(4)
  expect(rowsForTurn(0, 1)).toBe(1)
})

test('turn lengths by hand', () => {
  // Room: half circle of radius 1 and 1 m straight. Tight: pi + reverse of 1 m. Keyhole at side 0: 7 pi / 3 (three arcs of 60, 300 and 60 degrees).
  expect(turnLengthM(3, 1, 'lift')).toBeCloseTo(Math.PI + 1, 9)
  expect(turnLengthM(1, 1, 'lift')).toBeCloseTo(Math.PI + 1, 9)
  expect(turnLengthM(0, 1, 'keyhole')).toBeCloseTo((7 * Math.PI) / 3, 9)
  expect(turnLengthM(2, 1, 'keyhole')).toBeCloseTo(Math.PI, 9)
  expect(turnLengthM(1.2, 0, 'keyhole')).toBe(1.2)
})

test('with a radius of 2 m, skipping rows turns less than next-row keyholes', () => {
  const wide = { ...settings, turnRadiusM: 2, turnStyle: 'keyhole' } as const
  const next = planPasses(rectangle(16, 25), wide, 0)
  const skipped = planPasses(rectangle(16, 25), { ...wide, order: 'skip' }, 0)
  expect(skipped.turnLengthM).toBeLessThan(next.turnLengthM)
  expect(skipped.runLengthM).toBeCloseTo(next.runLengthM, 9)
})

test('across the notch of an L both lobes are one piece after another; only a real gap costs a way between', () => {
  expect(planPasses(lShape(), settings, 0).transferM).toBe(0)
  const island = planPasses(withIsland(4), settings, 0)
  expect(island.transferM).toBeGreaterThan(0)
  expect(island.transferM).toBeLessThan(60)
})
