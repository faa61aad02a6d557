import { assert, constantFrom, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf, errorOf, numberOf } from './answer-of.ts'
import { loadsOf, sandBandLPerM2 } from './sand-band.ts'

const RATES = [
  ['mm', 'depthMm'],
  ['kg/m2', 'massKgPerM2'],
  ['L/m2', 'litresPerM2'],
  ['ft3/1000ft2', 'ft3Per1000Ft2'],
  ['lb/1000ft2', 'lbPer1000Ft2'],
  ['t/ha', 'tPerHa'],
] as const

const positive = (max: number) => double({ min: 0.001, max, noNaN: true })

describe('a sand rate', () => {
  it('comes back to itself through every unit', () => {
    assert(
      property(positive(40), constantFrom(...RATES), (depthMm, [unit, field]) => {
        const there = answerOf('sand.convertRate', { value: depthMm, unit: 'mm', bulkDensityKgPerM3: 1560 })
        const back = { value: there[field], unit, bulkDensityKgPerM3: 1560 }
        expect(numberOf('sand.convertRate', back, 'depthMm')).toBeCloseTo(depthMm, 9)
      }),
    )
  })

  it('goes by 1500 kg/m3 unless another density is given, and says so', () => {
    expect(answerOf('sand.convertRate', { value: 1, unit: 'mm' })).toMatchObject({
      massKgPerM2: 1.5,
      bulkDensityKgPerM3: 1500,
      tPerHa: 15,
    })
  })

  it('turns 1 lb/1000 ft2 into 4.88 g/m2 (fertiliser arithmetic, common practice)', () => {
    expect(1000 * numberOf('sand.convertRate', { value: 1, unit: 'lb/1000ft2' }, 'massKgPerM2')).toBeCloseTo(
      4.88,
      2,
    )
  })

  it('has mass and depth as each other turned round', () => {
    assert(
      property(positive(100), positive(1000), (depthMm, more) => {
        const bulkDensityKgPerM3 = 1000 + more
        const massKgPerM2 = numberOf('sand.massFromDepth', { depthMm, bulkDensityKgPerM3 }, 'massKgPerM2')
        expect(numberOf('sand.depthFromMass', { massKgPerM2, bulkDensityKgPerM3 }, 'depthMm')).toBeCloseTo(
          depthMm,
          9,
        )
      }),
    )
  })
})

describe('sand for a green', () => {
  const need = {
    areaM2: 500,
    hole: { holeDiameterMm: 13, coreDiameterMm: 9.5, acrossMm: 50, alongMm: 50, depthMm: 75 },
    surfaceMm: 1,
    bulkDensityKgPerM3: 1500,
  }

  it('is a band, and never below nothing, whatever goes in', () => {
    assert(
      property(positive(1), positive(1), positive(20), positive(30), (core, fill, rest, workedBack) => {
        const band = sandBandLPerM2({
          coreVolumeLPerM2: 4 * core,
          holeVolumeLPerM2: 4,
          grooveVolumeLPerM2: rest / 2,
          surfaceMm: rest / 2,
          workedBackLPerM2: workedBack,
          fillFactor: 1.3 * fill,
          lossPercent: 3,
        })
        expect(band.low).toBeGreaterThanOrEqual(0)
        expect(band.likely).toBeGreaterThanOrEqual(band.low)
        expect(band.high).toBeGreaterThanOrEqual(band.likely)
      }),
    )
  })

  it('asks for both diameters of the tine', () => {
    const { coreDiameterMm: _inside, ...onlyOutside } = need.hole
    expect(errorOf('sand.need', { ...need, hole: onlyOutside })).toMatchObject({
      type: 'missing',
      field: 'hole.coreDiameterMm',
      unit: 'mm',
    })
    const { holeDiameterMm: _outside, ...onlyInside } = need.hole
    expect(errorOf('sand.need', { ...need, hole: onlyInside })).toMatchObject({
      type: 'missing',
      field: 'hole.holeDiameterMm',
    })
  })

  it('refuses a core wider than its hole', () => {
    expect(errorOf('sand.need', { ...need, hole: { ...need.hole, coreDiameterMm: 14 } })).toMatchObject({
      type: 'notDefined',
      field: 'hole.coreDiameterMm',
    })
  })

  it('goes with the area, and doubles with it', () => {
    expect(numberOf('sand.need', { ...need, areaM2: 1000 }, 'likelyT')).toBeCloseTo(
      2 * numberOf('sand.need', need, 'likelyT'),
      9,
    )
  })

  it('takes a solid tine as a hole without a core', () => {
    const solid = answerOf('sand.need', { ...need, hole: { ...need.hole, coreDiameterMm: 0 } })
    // By hand: surface alone, 1 mm x 1.5 t/m3 x 500 m2 = 0.75 t.
    expect(solid['lowT']).toBeCloseTo(0.75, 9)
    expect(solid['highT']).toBeCloseTo(numberOf('sand.need', need, 'highT'), 9)
  })

  it('says what is missing for a number of loads', () => {
    expect(answerOf('sand.need', need)).toMatchObject({
      loads: null,
      loadsReason: expect.stringMatching(/hopperT/u) as string,
    })
  })

  it('names a fault of the grooves by where they stand', () => {
    const grooves = { bladeWidthMm: 30, bladeSpacingMm: 20, depthMm: 20, passes: 1, crossed: false }
    expect(errorOf('sand.need', { ...need, grooves })).toMatchObject({ field: 'grooves.bladeWidthMm' })
  })
})

describe('loads', () => {
  it.each([
    [0, 0.9, 0],
    [0.1, 0.9, 1],
    [0.9, 0.9, 1],
    [0.91, 0.9, 2],
    [0.1 + 0.2, 0.1, 3],
  ])('of %d t with %d t a load are %d', (massT, hopperT, loads) => {
    expect(loadsOf(massT, hopperT)).toBe(loads)
  })
})

describe('bulking', () => {
  it('refuses sand that rises when flooded', () => {
    expect(errorOf('sand.bulking', { dampHeightMm: 150, floodedHeightMm: 160 })).toMatchObject({
      type: 'notDefined',
      field: 'floodedHeightMm',
    })
  })

  it('of 20 and 40 % leaves 17 and 29 % less sand in a hopper (notes on bulking of sand)', () => {
    const less = (dampHeightMm: number) =>
      numberOf('sand.bulking', { dampHeightMm, floodedHeightMm: 100 }, 'lessSandInHopperPercent')
    expect(less(120)).toBeCloseTo(17, 0)
    expect(less(140)).toBeCloseTo(29, 0)
  })
})
