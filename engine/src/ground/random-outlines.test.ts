import { expect, test } from 'vitest'
import { bestHeading } from './best-heading.ts'
import { checkedPolygon } from './checked-polygon.ts'
import { coverageOf } from './coverage.ts'
import { randomOutline, seeded } from './fixtures/outlines.ts'
import { planPasses } from './passes.ts'
import type { PassSettings } from './pass-settings.ts'
import { polygonAreaM2 } from './polygon.ts'

const OUTLINES = 5_000

test(
  '5,000 random outlines: none crashes, every one sound is covered but for 0.1 %, and areas add up',
  { timeout: 120_000 },
  () => {
    const faults: number[] = []
    let worked = 0
    for (let seed = 1; seed <= OUTLINES; seed++) {
      const checked = checkedPolygon(randomOutline(seed))
      if (!checked.ok) continue
      const random = seeded(seed + 1_000_000)
      const widthM = 0.6 + random() * 2
      const settings: PassSettings = {
        widthM,
        overlapM: random() * 0.2 * widthM,
        speedMPerS: 1,
        turnS: 10,
        turnRadiusM: random() * 2,
        turnStyle: random() < 0.5 ? 'lift' : 'keyhole',
        laps: 0,
        order: random() < 0.5 ? 'backAndForth' : 'skip',
      }
      const best = seed % 10 === 0 ? bestHeading(checked.value, settings) : undefined
      const headingDeg = best?.ok ? best.value.headingDeg : random() * 360
      const passes = planPasses(checked.value, settings, headingDeg)
      const areas = coverageOf(checked.value, settings, passes)
      const areaM2 = polygonAreaM2(checked.value)
      const isSound =
        Math.abs(areas.coveredM2 - areaM2) / areaM2 < 0.001 &&
        areas.coveredTwiceM2 <= areas.coveredM2 + 1e-6 &&
        passes.runLengthM * widthM > areas.coveredM2 - 1e-3
      if (!isSound) faults.push(seed)
      worked += 1
    }
    expect(faults).toEqual([])
    expect(worked).toBeGreaterThan(OUTLINES * 0.95)
  },
)

test('200 random outlines with laps: none crashes and nothing beyond a thousandth is missed', () => {
  for (let seed = 1; seed <= 200; seed++) {
    const checked = checkedPolygon(randomOutline(seed))
    if (!checked.ok) continue
    const settings: PassSettings = {
      widthM: 1.1,
      overlapM: 0.1,
      speedMPerS: 1,
      turnRadiusM: 0,
      turnStyle: 'lift',
      laps: 1 + (seed % 3),
      order: 'backAndForth',
    }
    const areas = coverageOf(checked.value, settings, planPasses(checked.value, settings, seed))
    const areaM2 = polygonAreaM2(checked.value)
    expect(areas.missedM2 / areaM2, `seed ${seed}`).toBeLessThan(0.001)
  }
})
