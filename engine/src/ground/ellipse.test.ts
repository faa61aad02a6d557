import { expect, test } from 'vitest'
import { equivalentEllipse, isPolygon, polygonOf } from './ellipse.ts'
import { rectangle } from './fixtures/outlines.ts'
import { polygonAreaM2 } from './polygon.ts'

const spansOf = (outer: readonly { x: number; y: number }[]) => ({
  eastM: Math.max(...outer.map((p) => p.x)) - Math.min(...outer.map((p) => p.x)),
  northM: Math.max(...outer.map((p) => p.y)) - Math.min(...outer.map((p) => p.y)),
})

test('the ellipse has the area told, exactly, and the ratio of the spans given, in either order', () => {
  for (const spansM of [
    [28, 20],
    [20, 28],
  ] as const) {
    const { outer } = equivalentEllipse({ areaM2: 450, spansM })
    expect(polygonAreaM2({ outer, holes: [] })).toBeCloseTo(450, 9)
    expect(spansOf(outer).northM / spansOf(outer).eastM).toBeCloseTo(1.4, 9)
  }
})

test('axes by hand: 450 m2 at 1.4 has a short axis of 2 sqrt(450 / (1.4 pi)) = 20.23 m', () => {
  const { outer } = equivalentEllipse({ areaM2: 450, spansM: [28, 20] })
  expect(Math.abs(spansOf(outer).eastM - 20.23)).toBeLessThan(0.03)
})

test('an outline stays what it is', () => {
  const green = rectangle(10, 20)
  expect(polygonOf(green)).toBe(green)
  expect(isPolygon({ areaM2: 450 })).toBe(false)
})
