import { expect, test } from 'vitest'
import { bestHeading } from './best-heading.ts'
import { checkedPolygon } from './checked-polygon.ts'
import { clippedCoverage, coverageOf } from './coverage.ts'
import { randomOutline, seeded } from './fixtures/outlines.ts'
import { planPasses } from './passes.ts'
import type { PassSettings } from './pass-settings.ts'
import { polygonAreaM2 } from './polygon.ts'

const OUTLINES = 5_000

const at = (x: number, y: number) => ({ x, y })

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
      // Clipped one and all, so that what the runs cover is measured here and not concluded.
      const areas = clippedCoverage(checked.value, settings, passes)
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

test('areas summed along the strips agree with areas clipped, on 500 random outlines and any overlap', () => {
  let plain = 0
  for (let seed = 1; seed <= 500; seed++) {
    const checked = checkedPolygon(randomOutline(seed))
    if (!checked.ok) continue
    const random = seeded(seed + 2_000_000)
    const settings: PassSettings = {
      widthM: 0.6 + random() * 2,
      overlapM: seed % 5 === 0 ? 0 : random() * 0.5,
      speedMPerS: 1,
      turnRadiusM: 0,
      turnStyle: 'lift',
      laps: 0,
      order: seed % 2 === 0 ? 'backAndForth' : 'skip',
    }
    const passes = planPasses(checked.value, settings, random() * 360)
    const areas = coverageOf(checked.value, settings, passes)
    const clipped = clippedCoverage(checked.value, settings, passes)
    const areaM2 = polygonAreaM2(checked.value)
    if (areas.missedM2 === 0) plain += 1
    expect(Math.abs(areas.coveredM2 - clipped.coveredM2) / areaM2, `seed ${seed}`).toBeLessThan(2e-4)
    expect(Math.abs(areas.coveredTwiceM2 - clipped.coveredTwiceM2) / areaM2, `seed ${seed}`).toBeLessThan(
      2e-4,
    )
  }
  expect(plain).toBeGreaterThan(100)
})

test('runs that stop short are found out: the area is then clipped, and something is missed', () => {
  const square = { outer: [at(0, 0), at(10, 0), at(10, 10), at(0, 10)], holes: [] }
  const settings: PassSettings = {
    widthM: 1,
    overlapM: 0,
    speedMPerS: 1,
    turnRadiusM: 0,
    turnStyle: 'lift',
    laps: 0,
    order: 'backAndForth',
  }
  const passes = planPasses(square, settings, 0)
  const runs = passes.runs.map((run, k) => (k === 3 ? { ...run, to: { ...run.to, y: 5 }, lengthM: 5 } : run))
  // Run 4 of ten goes up or down; either way half of its 10 m2 is left.
  expect(passes.runs[3]?.from.y).toBe(10)
  expect(coverageOf(square, settings, { ...passes, runs }).missedM2).toBeCloseTo(5, 2)
  expect(coverageOf(square, settings, { ...passes, runs: passes.runs.slice(1) }).missedM2).toBeCloseTo(10, 2)
})

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
