import { assert, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf, errorOf, numberOf } from './answer-of.ts'

const number = (min: number, max: number) => double({ min, max, noNaN: true })

describe('nutrients of a fertiliser', () => {
  const label = { nPercent: 12, p2o5Percent: 4, k2oPercent: 6 }

  it('are the same from grams a square metre and kilograms a hectare', () => {
    const grams = answerOf('nutrition.applied', { ...label, rate: { value: 35, unit: 'g/m2' } })
    expect(answerOf('nutrition.applied', { ...label, rate: { value: 350, unit: 'kg/ha' } })).toEqual(grams)
  })

  it('differ by label: 12-4-6 at 1.18 gives 8.5 by mass and 7.2 by volume from 60 L/ha (fertiliser arithmetic)', () => {
    const rate = { value: 60, unit: 'L/ha' }
    const byMass = { ...label, rate, specificGravity: 1.18 }
    expect(numberOf('nutrition.applied', byMass, 'nKgPerHa')).toBeCloseTo(8.5, 1)
    expect(numberOf('nutrition.applied', { ...label, rate, basis: 'w/v' }, 'nKgPerHa')).toBeCloseTo(7.2, 9)
  })

  it('ask for the specific gravity of a liquid by mass, and leave the mass of one by volume open', () => {
    const liquid = { ...label, rate: { value: 60, unit: 'L/ha' } }
    expect(errorOf('nutrition.applied', liquid)).toMatchObject({ field: 'specificGravity', unit: 'kg/L' })
    expect(answerOf('nutrition.applied', { ...liquid, basis: 'w/v' })).toMatchObject({
      productKgPerHa: null,
      productReason: 'specificGravity is not given',
    })
  })

  it('refuse a label of more than everything, and a solid by volume', () => {
    const rate = { value: 35, unit: 'g/m2' }
    expect(errorOf('nutrition.applied', { ...label, nPercent: 95, rate })).toMatchObject({
      field: 'nPercent',
    })
    expect(errorOf('nutrition.applied', { ...label, rate, basis: 'w/v' })).toMatchObject({ field: 'basis' })
  })

  it('come back to the nitrogen wanted', () => {
    assert(
      property(number(0.1, 100), number(1, 46), (nKgPerHa, nPercent) => {
        const value = numberOf('nutrition.productFor', { nKgPerHa, nPercent }, 'productKgPerHa')
        const applied = { nPercent, p2o5Percent: 0, k2oPercent: 0, rate: { value, unit: 'kg/ha' } }
        expect(numberOf('nutrition.applied', applied, 'nKgPerHa')).toBeCloseTo(nKgPerHa, 9)
      }),
    )
  })
})

describe('a compost heap', () => {
  it('mixed as worked out has the moisture wanted', () => {
    assert(
      property(number(60, 90), number(10, 40), number(45, 58), (wet, dry, wanted) => {
        const have = { massKg: 10, moisturePercent: wet }
        const add = { moisturePercent: dry }
        const massKg = numberOf('compost.massForMoisture', { have, add, moisturePercent: wanted }, 'massKg')
        const mix = { materials: [have, { massKg, ...add }] }
        expect(numberOf('compost.mix', mix, 'moisturePercent')).toBeCloseTo(wanted, 9)
      }),
    )
  })

  it('mixed as worked out has the carbon to nitrogen wanted', () => {
    assert(
      property(number(20, 60), number(10, 80), (carbonToNitrogen, moisturePercent) => {
        const have = { massKg: 10, moisturePercent: 77, carbonPercent: 45, nitrogenPercent: 2.4 }
        const add = { moisturePercent, carbonPercent: 50, nitrogenPercent: 0.75 }
        const massKg = numberOf('compost.massForRatio', { have, add, carbonToNitrogen }, 'massKg')
        const mix = { materials: [have, { massKg, ...add }] }
        expect(numberOf('compost.mix', mix, 'carbonToNitrogen')).toBeCloseTo(carbonToNitrogen, 6)
      }),
    )
  })

  it.each([80, 30])('cannot be brought to %d % from 77 and 35', (moisturePercent) => {
    const input = { have: { massKg: 10, moisturePercent: 77 }, add: { moisturePercent: 35 }, moisturePercent }
    expect(errorOf('compost.massForMoisture', input)).toMatchObject({
      type: 'notDefined',
      field: 'moisturePercent',
    })
  })

  it('cannot be brought to a ratio outside both materials', () => {
    const have = { massKg: 10, moisturePercent: 77, carbonPercent: 45, nitrogenPercent: 2.4 }
    const add = { moisturePercent: 35, carbonPercent: 50, nitrogenPercent: 0.75 }
    expect(errorOf('compost.massForRatio', { have, add, carbonToNitrogen: 70 })).toMatchObject({
      field: 'carbonToNitrogen',
    })
  })

  it('has no carbon to nitrogen where a material does not state it, and says which', () => {
    const materials = [{ massKg: 10, moisturePercent: 77 }]
    expect(answerOf('compost.mix', { materials })).toMatchObject({
      carbonToNitrogen: null,
      carbonToNitrogenReason: 'material 1 has no carbonPercent or nitrogenPercent',
    })
  })

  it('refuses a heap of nothing, and a sample that gains by drying', () => {
    expect(errorOf('compost.mix', { materials: [{ massKg: 0, moisturePercent: 50 }] })).toMatchObject({
      field: 'materials',
    })
    expect(errorOf('compost.moisture', { wetMassG: 10, dryMassG: 11 })).toMatchObject({ field: 'dryMassG' })
  })
})

describe('colour of turf', () => {
  it('goes outside 0 to 1 with a hue outside 60 to 120, unclamped', () => {
    // By hand: (300 / 60 - 1 + 0 + 0) / 3 = 4 / 3 at hue 300, full saturation and brightness.
    const at = (hueDeg: number) =>
      numberOf('turfColour.darkGreenIndex', { hueDeg, saturation: 1, brightness: 1 }, 'index')
    expect(at(300)).toBeCloseTo(4 / 3, 12)
    expect(at(0)).toBeCloseTo(-1 / 3, 12)
  })

  it('counts by the bounds of the site when they are given', () => {
    const colour = { hueDeg: 50, saturation: 0.4, brightness: 0.5 }
    expect(answerOf('turfColour.isGreen', colour)['green']).toBe(false)
    expect(answerOf('turfColour.isGreen', { ...colour, thresholds: { hueMinDeg: 45 } })['green']).toBe(true)
    expect(
      answerOf('turfColour.isGreen', { ...colour, thresholds: { hueMinDeg: 45, saturationMin: 0.5 } })[
        'green'
      ],
    ).toBe(false)
  })

  it('refuses bounds the wrong way round', () => {
    const thresholds = { hueMinDeg: 120, hueMaxDeg: 60 }
    expect(
      errorOf('turfColour.isGreen', { hueDeg: 90, saturation: 0.4, brightness: 0.5, thresholds }),
    ).toMatchObject({
      field: 'thresholds.hueMinDeg',
    })
  })
})

describe('rounds of readings', () => {
  it('free the speed from slope: never above the plain mean, and the same uphill first or downhill first', () => {
    assert(
      property(number(0.5, 6), number(0.5, 6), (forwardM, backM) => {
        const mean = (a: number, b: number) =>
          numberOf('speed.summary', { readings: [{ forwardM: a, backM: b }] }, 'mean')
        expect(mean(forwardM, backM)).toBeCloseTo(mean(backM, forwardM), 12)
        expect(mean(forwardM, backM)).toBeLessThanOrEqual((forwardM + backM) / 2 + 1e-12)
      }),
    )
  })

  it('have no spread with one reading', () => {
    expect(answerOf('firmness.summary', { readingsGravities: [88] })).toMatchObject({
      deviation: 0,
      count: 1,
    })
  })

  it.each([
    [[10, 12], 'below'],
    [[20, 22], 'inside'],
    [[30, 40], 'above'],
  ])('of moisture %j stand %s a target of 15 to 25 %', (readingsPercent, standing) => {
    expect(answerOf('moisture.summary', { readingsPercent, target: { low: 15, high: 25 } })).toMatchObject({
      standing,
    })
  })

  it('want no water where no spot is dry', () => {
    const input = { readingsPercent: [22], target: { low: 15, high: 25 }, depthMm: 60 }
    expect(numberOf('moisture.summary', input, 'waterMm')).toBe(0)
  })

  it('refuse a target the wrong way round, and no readings at all', () => {
    const target = { low: 25, high: 15 }
    expect(errorOf('moisture.summary', { readingsPercent: [20], target })).toMatchObject({
      field: 'target.low',
    })
    expect(errorOf('firmness.summary', { readingsGravities: [] })).toMatchObject({
      field: 'readingsGravities',
    })
  })
})
