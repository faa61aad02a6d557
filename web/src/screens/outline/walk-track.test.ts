import { describe, expect, it } from 'vitest'
import { endOfWalk, lengthsOf, NO_WALK, withFix, type Walk } from './walk-track.ts'

/** A walk of a fix each 2 m round a circle of 12 m. */
const round = (share: number): Walk => {
  const count = Math.round(share * 38)
  return Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / 38).reduce(
    (walk, angle) =>
      withFix(walk, { point: { x: 12 * Math.cos(angle), y: 12 * Math.sin(angle) }, accuracyM: 4 }),
    NO_WALK,
  )
}

const areaM2 = (ring: readonly { readonly x: number; readonly y: number }[]): number =>
  Math.abs(
    ring.reduce((sum, a, k) => {
      const b = ring[(k + 1) % ring.length] ?? a
      return sum + a.x * b.y - b.x * a.y
    }, 0),
  ) / 2

describe('a walk', () => {
  it('leaves out fixes that are too rough and steps that are none, and tells the accuracy all the same', () => {
    const walk = withFix(round(0.2), { point: { x: 50, y: 50 }, accuracyM: 35 })
    expect(walk).toMatchObject({ accuracyM: 35, rough: 1 })
    expect(walk.fixes).toHaveLength(8)
    const still = withFix(NO_WALK, { point: { x: 0, y: 0 }, accuracyM: 3 })
    expect(withFix(still, { point: { x: 0.3, y: 0 }, accuracyM: 3 }).fixes).toHaveLength(1)
  })

  it('tells what was walked and how far it is back', () => {
    // Half round: 19 steps less one of the chord 24 sin(pi / 38) = 1.9817 m each; back across nearly the whole circle.
    const { walkedM, toStartM } = lengthsOf(round(0.5))
    expect(walkedM).toBeCloseTo(18 * 24 * Math.sin(Math.PI / 38), 6)
    expect(toStartM).toBeCloseTo(24 * Math.sin((18 * Math.PI) / 38), 6)
  })

  it('closes to an outline of the same area within 2 % and few enough corners to drag', () => {
    const end = endOfWalk(round(1).fixes)
    if (!end.ok) throw new Error(end.error.type)
    // Circle of radius 12 m: pi x 144 = 452.4 m2; from the last fix to the first is one step.
    expect(Math.abs(areaM2(end.ring) / 452.4 - 1)).toBeLessThan(0.02)
    expect(end.closingErrorM).toBeCloseTo(24 * Math.sin(Math.PI / 38), 6)
    expect(end.ring.length).toBeLessThan(45)
  })

  it('that is not back at its start is refused', () => {
    expect(endOfWalk(round(0.5).fixes)).toMatchObject({ ok: false, error: { type: 'notClosed' } })
  })
})
