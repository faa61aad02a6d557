import { expect, test } from 'vitest'
import { checkedPolygon } from './checked-polygon.ts'
import { circle, ellipse, lShape, moved, rectangle, withIsland } from './fixtures/outlines.ts'
import type { LocalPoint } from './plane.ts'
import { isOnGreen, polygonAreaM2, polygonCentroid, polygonPerimeterM, signedAreaM2 } from './polygon.ts'

const ring = (...pairs: readonly (readonly [number, number])[]): LocalPoint[] =>
  pairs.map(([x, y]) => ({ x, y }))

const refused = (outer: readonly LocalPoint[], holes: readonly (readonly LocalPoint[])[] = []) => {
  const checked = checkedPolygon({ outer, holes })
  return checked.ok ? undefined : checked.error
}

test('area, edge length and centre match closed forms', () => {
  expect(polygonAreaM2(lShape())).toBe(420)
  expect(polygonPerimeterM(lShape())).toBe(100)
  // L by its two rectangles: (200 + 220): 10 x 30 about (5, 15) and 10 x 12 about (15, 6).
  expect(polygonCentroid(lShape()).x).toBeCloseTo((300 * 5 + 120 * 15) / 420, 9)
  expect(polygonCentroid(lShape()).y).toBeCloseTo((300 * 15 + 120 * 6) / 420, 9)
  expect(polygonAreaM2(ellipse(9, 14))).toBeCloseTo(Math.PI * 9 * 14, 1)
  expect(polygonAreaM2(withIsland(2))).toBeCloseTo(polygonAreaM2(circle(12)) - 4, 9)
})

test('the centre of a green with an island lies where moments put it, and not on the island', () => {
  const green = withIsland(2)
  const areaM2 = polygonAreaM2(green)
  expect(polygonCentroid(green).x).toBeCloseTo((-4 * 3) / areaM2, 9)
  expect(isOnGreen({ x: 3, y: 1 }, green)).toBe(false)
  expect(isOnGreen({ x: -3, y: 1 }, green)).toBe(true)
})

test('a figure of eight is refused with the place of the crossing', () => {
  expect(refused(ring([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual({
    type: 'selfCrossing',
    rings: [0, 0],
    at: { x: 5, y: 5 },
  })
})

test('a spike that runs back over itself, and a touch of two corners, are refused', () => {
  expect(refused(ring([0, 0], [10, 0], [15, 0], [10, 0], [10, 10], [0, 10]))?.type).toBe('selfCrossing')
  expect(refused(ring([0, 0], [10, 0], [5, 5], [10, 10], [0, 10], [5, 5]))?.type).toBe('selfCrossing')
})

test('slivers, too few points, figures that are not numbers and greens larger than any are refused', () => {
  expect(refused(ring([0, 0], [30, 0], [30, 0.1], [0, 0.1]))).toMatchObject({ type: 'sliver', ring: 0 })
  expect(refused(ring([0, 0], [1, 0], [0, 0.0001]))).toMatchObject({ type: 'tooFewPoints' })
  expect(refused(ring([0, 0], [10, 0]))).toEqual({ type: 'tooFewPoints', ring: 0, points: 2 })
  expect(refused(ring([0, 0], [10, Number.NaN], [10, 10]))).toMatchObject({ type: 'notFinite', point: 1 })
  expect(refused(rectangle(200, 150).outer)).toMatchObject({ type: 'tooLarge', areaM2: 30_000 })
})

test('an island must lie on the green and not cross its edge', () => {
  const { outer } = rectangle(20, 20)
  expect(refused(outer, [ring([30, 5], [32, 5], [32, 7])])).toMatchObject({ type: 'islandOutside', ring: 1 })
  expect(refused(outer, [ring([18, 5], [22, 5], [22, 7])])).toMatchObject({
    type: 'selfCrossing',
    rings: [0, 1],
  })
})

test('repeated and closing points go, rings turn the agreed way, and the input stays as it was', () => {
  const outer = ring([0, 0], [0, 10], [0, 10], [10, 10], [10, 0], [0, 0])
  const before = JSON.stringify(outer)
  const checked = checkedPolygon({ outer: Object.freeze(outer), holes: [] })
  expect(JSON.stringify(outer)).toBe(before)
  if (!checked.ok) throw new Error('the square is sound')
  expect(checked.value.outer).toHaveLength(4)
  expect(signedAreaM2(checked.value.outer)).toBe(100)
})

test('area and edge length are the same from any start, turned or moved', () => {
  const green = lShape()
  const elsewhere = moved(green, 33, 400_000, -250_000)
  expect(polygonAreaM2(elsewhere)).toBeCloseTo(420, 4)
  expect(polygonPerimeterM(elsewhere)).toBeCloseTo(100, 6)
  const started = { outer: [...green.outer.slice(3), ...green.outer.slice(0, 3)], holes: [] }
  expect(polygonAreaM2(started)).toBe(420)
})
