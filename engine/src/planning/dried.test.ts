import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dryFrom } from './dried.ts'
import { NEVER } from './spans.ts'

// 0.3 mm leaves in the second hour, 0.6 mm in the third, nothing in the first and the fourth.
const CURVE = Float64Array.from([0, 0, 0.3, 0.9, 0.9])

/** Water gone by a minute: straight between full hours, flat past the last. */
const driedAt = (curve: Float64Array, minute: number): number => {
  const hour = Math.min(Math.floor(minute / 60), curve.length - 1)
  const [left = 0, right = left] = [curve[hour], curve[hour + 1]]
  return left + ((right - left) * (minute - hour * 60)) / 60
}

describe('drying of lying sand', () => {
  it('tells the first whole minute by which the water has left', () => {
    // From 01:00: 0.3 mm by 02:00, then 0.01 mm a minute, so 0.4 mm at 02:10.
    expect(dryFrom(CURVE, 60, 0.4)).toBe(130)
    // From 00:00 the first hour gives nothing.
    expect(dryFrom(CURVE, 0, 0.15)).toBe(90)
  })

  it('needs no time for dry sand, and says never when the horizon is too short', () => {
    expect(dryFrom(CURVE, 200, 0)).toBe(200)
    expect(dryFrom(CURVE, 0, 1)).toBe(NEVER)
  })

  it('is neither a minute early nor a minute late', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 12 }),
        fc.nat(700),
        fc.integer({ min: 1, max: 100 }),
        (steps, from, need) => {
          const curve = Float64Array.from([
            0,
            ...steps.map((_, i) => steps.slice(0, i + 1).reduce((a, b) => a + b, 0) / 100),
          ])
          const at = dryFrom(curve, from, need / 100)
          const target = driedAt(curve, from) + need / 100
          if (at === NEVER) expect(curve.at(-1)).toBeLessThan(target - 1e-12)
          else {
            expect(driedAt(curve, at)).toBeGreaterThanOrEqual(target - 1e-9)
            if (at > from) expect(driedAt(curve, at - 1)).toBeLessThan(target)
          }
        },
      ),
      { seed: 4713, numRuns: 500 },
    )
  })
})
