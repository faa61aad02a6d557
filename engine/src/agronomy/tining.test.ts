import { assert, double, integer, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf, errorOf, numberOf } from './answer-of.ts'
import { unionOfPasses, unionShare } from './holes.ts'
import { LIMITS } from './limits.ts'
import { standingOfYear } from './year-total.ts'

const GRID = { acrossMm: 50, alongMm: 50 }
const MM_PER_IN = 25.4

describe('surface opened by tines', () => {
  it('is the same from the two distances and from the count they make', () => {
    const byDistance = answerOf('tining.areaShare', { holeDiameterMm: 12, ...GRID, passes: 2 })
    expect(answerOf('tining.areaShare', { holeDiameterMm: 12, holesPerM2: 400, passes: 2 })).toEqual(
      byDistance,
    )
  })

  it('is the same in inches as printed and in millimetres: 5/8 in on 1.5 in, 13.63 % (association forum 2013)', () => {
    const inches = { d: 0.625, s: 1.5 }
    const percent = (100 * Math.PI * inches.d ** 2) / (4 * inches.s ** 2)
    const metric = { holeDiameterMm: 0.625 * MM_PER_IN, acrossMm: 1.5 * MM_PER_IN, alongMm: 1.5 * MM_PER_IN }
    expect(100 * numberOf('tining.areaShare', metric, 'areaShareOnePass')).toBeCloseTo(percent, 9)
    expect(percent).toBeCloseTo(13.63, 1)
  })

  it('shows both the sum and the union, and the union is never more', () => {
    assert(
      property(
        double({ min: 1, max: 25, noNaN: true }),
        integer({ min: 1, max: 20 }),
        (holeDiameterMm, passes) => {
          const a = answerOf('tining.areaShare', { holeDiameterMm, ...GRID, passes })
          expect(Number(a['areaShareUnion'])).toBeLessThanOrEqual(Number(a['areaShareSummed']) + 1e-12)
          expect(Number(a['areaShareUnion'])).toBeLessThanOrEqual(1)
        },
      ),
    )
  })

  it('refuses holes that overlap, naming the diameter', () => {
    expect(errorOf('tining.areaShare', { holeDiameterMm: 30, acrossMm: 20, alongMm: 20 })).toMatchObject({
      type: 'notDefined',
      field: 'holeDiameterMm',
      unit: 'mm',
    })
  })

  it.each([
    [{ holeDiameterMm: 12 }, 'acrossMm'],
    [{ holeDiameterMm: 12, acrossMm: 50 }, 'alongMm'],
    [{ holeDiameterMm: 12, ...GRID, holesPerM2: 400 }, 'holesPerM2'],
  ])('asks for one way of spacing, not none, half or two: %j', (input, field) => {
    expect(errorOf('tining.areaShare', input)).toMatchObject({ type: 'notDefined', field })
  })
})

describe('the union of passes', () => {
  it('of one share many times is that of a list of it', () => {
    expect(unionOfPasses(0.0984, 3)).toBeCloseTo(unionShare([0.0984, 0.0984, 0.0984]), 12)
  })

  it('does not depend on the order', () => {
    expect(unionShare([0.05, 0.1, 0.2])).toBeCloseTo(unionShare([0.2, 0.05, 0.1]), 12)
  })
})

describe('room in the holes', () => {
  it('grows with depth, and litres a square metre are millimetres of sand', () => {
    const at = (depthMm: number) =>
      numberOf('tining.holeVolume', { holeDiameterMm: 12, ...GRID, depthMm }, 'volumeLPerM2')
    expect(at(140)).toBeCloseTo(2 * at(70), 12)
    // Woods 2021: 3.167 mm of sand fill these holes to 70 mm.
    expect(at(70)).toBeCloseTo(3.167, 3)
  })
})

describe('a block of mixed tines', () => {
  it('opens what its tines would open one by one', () => {
    const block = (tines: unknown) => ({ tines, blockWidthMm: 200, stepMm: 50, depthMm: 50 })
    const mixed = numberOf(
      'tining.mixedBlock',
      block([
        { holeDiameterMm: 12, count: 3 },
        { holeDiameterMm: 6, count: 4 },
      ]),
      'areaShareOnePass',
    )
    const apart =
      numberOf('tining.mixedBlock', block([{ holeDiameterMm: 12, count: 3 }]), 'areaShareOnePass') +
      numberOf('tining.mixedBlock', block([{ holeDiameterMm: 6, count: 4 }]), 'areaShareOnePass')
    expect(mixed).toBeCloseTo(apart, 12)
  })

  it('refuses tines that open more than the block owns', () => {
    const input = { tines: [{ holeDiameterMm: 50, count: 10 }], blockWidthMm: 100, stepMm: 50, depthMm: 50 }
    expect(errorOf('tining.mixedBlock', input)).toMatchObject({ type: 'notDefined', field: 'tines' })
  })
})

describe('surface opened in a year', () => {
  it('is nothing without work', () => {
    expect(answerOf('surface.yearTotal', { tining: [], scarifying: [] })).toMatchObject({
      areaShareSummed: 0,
      areaShareUnion: 0,
      guide: 'below',
    })
  })

  it.each([
    [LIMITS.yearShareLow.value - 0.01, 'below'],
    [LIMITS.yearShareLow.value, 'inside'],
    [LIMITS.yearShareHigh.value, 'inside'],
    [LIMITS.yearShareHigh.value + 0.01, 'above'],
  ] as const)('stands at %d % against the guide as %s (CR028, CR029)', (percent, standing) => {
    expect(standingOfYear(percent / 100)).toBe(standing)
  })

  it('names the entry that is wrong', () => {
    const scarifying = [{ bladeWidthMm: 30, bladeSpacingMm: 25, passes: 1 }]
    expect(errorOf('surface.yearTotal', { tining: [], scarifying })).toMatchObject({
      field: 'scarifying[0].bladeWidthMm',
    })
    const tining = [{ holeDiameterMm: 12, holesPerM2: 400 }, { holeDiameterMm: 12 }]
    expect(errorOf('surface.yearTotal', { tining, scarifying: [] })).toMatchObject({
      field: 'tining[1].acrossMm',
    })
  })
})

describe('wear of a set of tines', () => {
  const set = { newLengthMm: 150, presentLengthMm: 150, wornOutLengthMm: 100, greensDone: 3 }

  it('gives no number of greens while nothing is worn, and says why', () => {
    expect(answerOf('tines.wear', set)).toMatchObject({
      greensLeft: null,
      greensLeftReason: expect.stringMatching(/not lost/u) as string,
    })
  })

  it('has no greens left in a set worn out', () => {
    expect(numberOf('tines.wear', { ...set, presentLengthMm: 95 }, 'greensLeft')).toBe(0)
  })

  it('tells how far the depth falls short of the setting', () => {
    expect(numberOf('tines.wear', { ...set, setDepthMm: 75, measuredDepthMm: 62 }, 'shortMm')).toBe(13)
  })

  it('refuses a tine that has grown', () => {
    expect(errorOf('tines.wear', { ...set, presentLengthMm: 151 })).toMatchObject({
      field: 'presentLengthMm',
    })
  })
})
