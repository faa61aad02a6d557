import { describe, expect, it } from 'vitest'
import { courseTotals } from './totals.ts'
import { latestTest, workingProfile } from './from-catalogue.ts'
import type { GreenFigures } from './figures.ts'
import type { Course, Green } from '@swardwright/engine'

const test = (date: string, percent: number) => ({
  date,
  layers: [
    { fromMm: 0, toMm: 20, organicPercent: percent },
    { fromMm: 20, toMm: 40, organicPercent: 3 },
  ],
})

const green: Green = {
  id: 'g01',
  name: 'Gatepost',
  hole: 1,
  areaM2: 500,
  at: [0, 54],
  rootzone: { kind: 'sand', goodDepthMm: 250 },
  drainage: 'well',
  shade: 'open',
  weak: false,
  organicTests: [test('2026-06-16', 6), test('2025-06-17', 5)],
  services: [],
  servicesChecked: true,
}

describe('workingProfile', () => {
  it('takes the latest test whatever the order in the file', () => {
    expect(latestTest(green)?.layers[0]?.organicPercent).toBe(6)
  })

  it('carries the deepest layer on below the tests and says from where', () => {
    const profile = workingProfile(green, 75)
    expect(profile?.notTestedBelowMm).toBe(40)
    expect(profile?.layers.at(-1)).toEqual({ fromMm: 40, toMm: 75, organicPercent: 3 })
  })

  it('leaves the tests as they are where they reach deep enough', () => {
    expect(workingProfile(green, 40)?.layers).toHaveLength(2)
  })

  it('says nothing of a green that was never tested', () => {
    expect(workingProfile({ ...green, organicTests: [] }, 40)).toBeNull()
  })
})

const figures = (
  id: string,
  areaM2: number,
  share: number,
  coreMin: number,
  cutMin: number,
): GreenFigures => ({
  green: id,
  group: 'usual',
  areaM2,
  shareSummed: share,
  shareTouched: share,
  coresL: 1000,
  out: null,
  sand: { lowT: 1, likelyT: 2, highT: 3, loads: 2 },
  steps: [
    { operation: 'core', pass: 1, load: null, minutes: coreMin, machineKind: 'corer' },
    { operation: 'cut', pass: 1, load: null, minutes: cutMin, machineKind: 'mower' },
  ],
  workMin: coreMin + cutMin,
  waitMin: 0,
  from: { share: null, sand: null, coresOut: null, groovesOut: null },
})

describe('courseTotals', () => {
  const machine = { id: 'm', kind: 'mower' }
  const course = {
    machines: [{ id: 'c', kind: 'corer' }, machine, { ...machine, id: 'm2' }],
  } as unknown as Course
  const totals = courseTotals(
    course,
    [figures('a', 300, 0.1, 20, 30), figures('b', 100, 0.02, 20, 30)],
    new Map([['usual', 'damp']]),
  )

  it('weighs the opened share by area: (300 x 10 % + 100 x 2 %) / 400 is 8 %', () => {
    expect(totals.shareSummed).toBeCloseTo(0.08, 12)
  })

  it('adds up the band of sand and the loads', () => {
    expect(totals.sand).toEqual([{ kind: 'damp', lowT: 2, likelyT: 4, highT: 6, loads: 4, greens: 2 }])
  })

  it('marks the kind whose machines work longest each: one corer 40 min against two mowers 30 min each', () => {
    expect(
      totals.machineHours.map(({ kind, minutesEach, bottleneck }) => [kind, minutesEach, bottleneck]),
    ).toEqual([
      ['corer', 40, true],
      ['mower', 30, false],
    ])
  })

  it('counts greens without a test apart instead of taking them as nothing', () => {
    expect(totals.untested).toBe(2)
  })
})
