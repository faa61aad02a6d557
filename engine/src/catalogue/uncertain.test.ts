import { describe, expect, it } from 'vitest'
import { calculate } from './catalogue.ts'
import { percentileOf } from './spread.ts'
import { triangleAt, type ThreePoint } from './three-point.ts'

const valueOf = (name: string, input: unknown, options = {}): Record<string, unknown> => {
  const outcome = calculate(name, input, options)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.error))
  return outcome.value as Record<string, unknown>
}

const spreadOf = (name: string, input: unknown, field: string, options = {}): ThreePoint =>
  valueOf(name, input, options)[field] as ThreePoint

const sand = (depthMm: unknown) => ({ depthMm, bulkDensityKgPerM3: 1500 })
const DEPTH = { low: 2, typical: 3, high: 4 }

describe('a number given as low, typical and high', () => {
  it('makes every number of the answer low, typical and high', () => {
    const answer = valueOf('tining.areaShare', {
      holeDiameterMm: { low: 10, typical: 12, high: 13 },
      acrossMm: 50,
      alongMm: 50,
    })
    for (const value of Object.values(answer))
      expect(Object.keys(value as object)).toEqual(['low', 'typical', 'high'])
  })

  it('gives the percentiles of the triangle: of 2, 3, 4 mm the tenth at 2 + sqrt(0.2), the middle at 3, the ninetieth at 4 - sqrt(0.2)', () => {
    // Triangular distribution, inverse of F(x) = (x - 2)^2 / 2 below 3: F = 0.1 at 2 + sqrt(0.2) = 2.4472; times 1.5 kg/m2 a mm.
    const mass = spreadOf('sand.massFromDepth', sand(DEPTH), 'massKgPerM2', { draws: 100_000 })
    expect(mass.low).toBeCloseTo(1.5 * 2.4472, 1)
    expect(mass.typical).toBeCloseTo(1.5 * 3, 1)
    expect(mass.high).toBeCloseTo(1.5 * 3.5528, 1)
  })

  it('gives the plain answer three times when low, typical and high are one', () => {
    expect(spreadOf('sand.massFromDepth', sand({ low: 3, typical: 3, high: 3 }), 'massKgPerM2')).toEqual({
      low: 4.5,
      typical: 4.5,
      high: 4.5,
    })
  })

  it('is the same for the same seed and differs for another', () => {
    const one = spreadOf('sand.massFromDepth', sand(DEPTH), 'massKgPerM2', { seed: 7 })
    expect(spreadOf('sand.massFromDepth', sand(DEPTH), 'massKgPerM2', { seed: 7 })).toEqual(one)
    expect(spreadOf('sand.massFromDepth', sand(DEPTH), 'massKgPerM2', { seed: 8 })).not.toEqual(one)
  })

  it('does not depend on the order in which fields are written', () => {
    const density = { low: 1400, typical: 1500, high: 1600 }
    const one = valueOf('sand.massFromDepth', { depthMm: DEPTH, bulkDensityKgPerM3: density })
    expect(valueOf('sand.massFromDepth', { bulkDensityKgPerM3: density, depthMm: DEPTH })).toEqual(one)
  })

  it('widens the answer when the range is wider', () => {
    const width = ({ low, high }: ThreePoint) => high - low
    const narrow = spreadOf('sand.massFromDepth', sand(DEPTH), 'massKgPerM2')
    const wide = spreadOf('sand.massFromDepth', sand({ low: 1, typical: 3, high: 5 }), 'massKgPerM2')
    expect(width(wide)).toBeGreaterThan(1.9 * width(narrow))
  })

  it('works inside lists, and keeps words as they are', () => {
    const answer = valueOf('recovery.closure', {
      diameterMm: 12,
      kind: 'core',
      days: Array.from({ length: 40 }, () => ({ meanC: { low: 12, typical: 15, high: 18 } })),
    })
    expect(answer['reason']).toBeNull()
    expect((answer['coverByDay'] as unknown[]).length).toBe(40)
    expect((answer['daysMedian'] as ThreePoint).low).toBeLessThan((answer['daysMedian'] as ThreePoint).high)
  })

  it('draws whole numbers for counts', () => {
    const summed = spreadOf(
      'tining.areaShare',
      { holeDiameterMm: 12, acrossMm: 50, alongMm: 50, passes: { low: 1, typical: 2, high: 3 } },
      'areaShareSummed',
    )
    // One pass is pi 12^2 / 4 / 2500 = 4.5239 %: two passes 9.0478 %.
    expect(summed.typical).toBeCloseTo(0.090478, 6)
  })

  it('is null, with the reason, where some draws give no number', () => {
    const days = Array.from({ length: 14 }, () => ({ meanC: 15 }))
    const answer = valueOf('recovery.closure', {
      diameterMm: { low: 10, typical: 12, high: 16 },
      kind: 'core',
      days,
    })
    expect(answer['daysHigh']).toBeNull()
    expect(answer['reason']).toMatch(/too few/u)
  })
})

describe('what is wrong with a low, typical and high', () => {
  it('names the one that is outside the range', () => {
    expect(calculate('sand.massFromDepth', sand({ low: -1, typical: 3, high: 4 }))).toEqual({
      ok: false,
      error: { type: 'outOfRange', field: 'depthMm.low', unit: 'mm', min: 0, max: 1000, received: -1 },
    })
  })

  it('says so when they fall', () => {
    expect(calculate('sand.massFromDepth', sand({ low: 4, typical: 3, high: 2 }))).toMatchObject({
      ok: false,
      error: { type: 'notDefined', field: 'depthMm', unit: 'mm' },
    })
  })

  it('says that a part of the range is at fault when the item is not defined there', () => {
    const layers = [{ fromMm: 0, toMm: 80, organicPercent: 4 }]
    const outcome = calculate('coring.removal', {
      coreDiameterMm: 10,
      acrossMm: 50,
      alongMm: 50,
      depthMm: { low: 60, typical: 70, high: 90 },
      layers,
    })
    expect(outcome).toMatchObject({
      ok: false,
      error: {
        reason: expect.stringContaining(
          'in part of the ranges given, depthMm is 90 mm but the layers end at 80 mm',
        ) as string,
      },
    })
  })

  it.each([99, 100_001, 1.5, Number.NaN])('refuses %d draws', (draws) => {
    expect(calculate('sand.massFromDepth', sand(DEPTH), { draws })).toMatchObject({
      ok: false,
      error: { type: 'outOfRange', field: 'draws' },
    })
  })
})

describe('the inverse of the triangle', () => {
  it('goes from low to high through typical', () => {
    const skewed = { low: 0, typical: 1, high: 4 }
    expect(triangleAt(skewed, 0)).toBe(0)
    // F(1) = 1 / 4 for this triangle.
    expect(triangleAt(skewed, 0.25)).toBeCloseTo(1, 12)
    expect(triangleAt(skewed, 0.999999)).toBeLessThanOrEqual(4)
  })

  it('takes triangles whose typical is one of the ends', () => {
    expect(triangleAt({ low: 0, typical: 0, high: 2 }, 0.75)).toBeCloseTo(1, 12)
    expect(triangleAt({ low: 0, typical: 2, high: 2 }, 0.25)).toBeCloseTo(1, 12)
  })
})

describe('a percentile', () => {
  it('lies straight between its neighbours', () => {
    // Rank 0.1 x 4 = 0.4 between 10 and 20.
    expect(percentileOf([10, 20, 30, 40, 50], 10)).toBeCloseTo(14, 12)
    expect(percentileOf([10, 20, 30, 40, 50], 50)).toBe(30)
  })
})
