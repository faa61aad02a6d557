import { expect, test } from 'vitest'
import { seeded } from './fixtures/outlines.ts'
import { checkedPolygon } from './checked-polygon.ts'
import { signedAreaM2 } from './polygon.ts'
import { walkedOutline } from './walked-outline.ts'

/** A walk round a circle, one fix a metre, each off by up to `noiseM` either way. */
const walk = (radius: number, fromDeg: number, toDeg: number, noiseM: number, seed = 5) => {
  const random = seeded(seed)
  const steps = Math.round((((toDeg - fromDeg) / 360) * 2 * Math.PI * radius) / 1)
  return Array.from({ length: steps + 1 }, (_, k) => {
    const angle = ((fromDeg + ((toDeg - fromDeg) * k) / steps) * Math.PI) / 180
    const off = () => (random() * 2 - 1) * noiseM
    return { x: radius * Math.cos(angle) + off(), y: radius * Math.sin(angle) + off() }
  })
}

const outline = (fixes: readonly { x: number; y: number }[]) => {
  const made = walkedOutline(fixes)
  if (!made.ok) throw new Error(made.error.type)
  return made.value
}

test('smoothing does not shrink: a clean walk round radius 12 keeps its area to half a per cent', () => {
  const { ring, closingErrorM } = outline(walk(12, 0, 355, 0))
  expect(Math.abs(Math.abs(signedAreaM2(ring)) / (Math.PI * 144) - 1)).toBeLessThan(0.005)
  // 5 degrees of 12 m are left open.
  expect(closingErrorM).toBeCloseTo(2 * 12 * Math.sin((2.5 * Math.PI) / 180), 6)
})

test('with fixes off by up to 0.6 m the area stays within 2 % and the ring is sound', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const { ring } = outline(walk(12, 0, 352, 0.6, seed))
    expect(Math.abs(Math.abs(signedAreaM2(ring)) / (Math.PI * 144) - 1)).toBeLessThan(0.02)
    expect(checkedPolygon({ outer: ring, holes: [] }).ok).toBe(true)
  }
})

test('a walk that went on past its start is cut there', () => {
  const { ring, walkedM } = outline(walk(12, 0, 400, 0))
  expect(walkedM).toBeLessThan(77)
  expect(Math.abs(Math.abs(signedAreaM2(ring)) / (Math.PI * 144) - 1)).toBeLessThan(0.01)
})

test('a fix that jumps 30 m away is dropped and counted', () => {
  const fixes = walk(12, 0, 355, 0)
  fixes.splice(20, 1, { x: 40, y: 40 })
  const made = outline(fixes)
  expect(made.droppedFixes).toBe(1)
  expect(Math.abs(Math.abs(signedAreaM2(made.ring)) / (Math.PI * 144) - 1)).toBeLessThan(0.01)
})

test('half a walk, or too few fixes, is refused with the figures', () => {
  expect(walkedOutline(walk(12, 0, 180, 0))).toMatchObject({ ok: false, error: { type: 'notClosed' } })
  expect(walkedOutline(walk(12, 0, 20, 0))).toMatchObject({ error: { type: 'tooFewFixes', needed: 8 } })
})
