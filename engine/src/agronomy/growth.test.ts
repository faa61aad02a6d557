import { assert, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf, errorOf, numberOf } from './answer-of.ts'
import { standingOfGrowth } from './growth.ts'
import { LIMITS } from './limits.ts'

const potential = (input: object) => numberOf('growth.potential', { season: 'cool', ...input }, 'potential')

describe('growth potential', () => {
  it('is full at the optimum and the same as far below as above it, for cool-season grass', () => {
    expect(potential({ meanC: 20 })).toBe(1)
    assert(
      property(double({ min: 0, max: 25, noNaN: true }), (offC) => {
        expect(potential({ meanC: 20 - offC })).toBeCloseTo(potential({ meanC: 20 + offC }), 12)
      }),
    )
  })

  it('stays full above the optimum for warm-season grass (Stowell)', () => {
    expect(potential({ season: 'warm', meanC: 31 })).toBe(1)
    expect(potential({ season: 'warm', meanC: 45 })).toBe(1)
    expect(potential({ season: 'warm', meanC: 30 })).toBeLessThan(1)
  })

  it('takes the wider spread of 8.5 for warm-season grass when asked (Woods)', () => {
    // By hand: exp(-0.5 (11 / 8.5)^2) = exp(-0.8374) = 0.4328.
    expect(potential({ season: 'warm', meanC: 20, spreadC: 8.5 })).toBeCloseTo(0.4328, 4)
  })

  it('is half at 13.5 and 26.5 C for cool-season grass (rule of the originators: open greens above half)', () => {
    expect(potential({ meanC: 13.5 })).toBeCloseTo(0.5, 2)
    expect(potential({ meanC: 26.5 })).toBeCloseTo(0.5, 2)
  })

  it.each([
    [LIMITS.growthVeryLow.value, 'extremely limited'],
    [LIMITS.growthVeryLow.value + 0.001, 'limited'],
    [LIMITS.growthForDisruption.value, 'limited'],
    [LIMITS.growthForDisruption.value + 0.001, 'good'],
  ] as const)('of %d stands as %s (CR092, CR093)', (value, standing) => {
    expect(standingOfGrowth(value)).toBe(standing)
  })
})

describe('degree days', () => {
  const day = { minC: 10, maxC: 20 }

  it('never count a day below nothing', () => {
    expect(numberOf('growth.degreeDays', { days: [day], baseC: 16 }, 'degreeDaysC')).toBe(0)
  })

  it('add up: 200 of base 0 C are 360 on the Fahrenheit scale (Soldat 2013)', () => {
    const celsius = numberOf(
      'growth.degreeDays',
      { days: Array.from({ length: 10 }, () => ({ minC: 15, maxC: 25 })), baseC: 0 },
      'degreeDaysC',
    )
    expect(celsius).toBe(200)
    expect(celsius * 1.8).toBe(360)
  })

  it('name the day whose temperatures are the wrong way round', () => {
    expect(errorOf('growth.degreeDays', { days: [day, { minC: 21, maxC: 20 }], baseC: 0 })).toMatchObject({
      field: 'days[1].minC',
      unit: 'C',
    })
  })
})

describe('nitrogen', () => {
  it('of bent is at most 3 g/m2 a month unless another most is given (CR094)', () => {
    expect(numberOf('growth.nitrogenUse', { potential: 1 }, 'nitrogenGPerM2')).toBe(
      LIMITS.bentMonthlyNitrogen.value,
    )
    expect(numberOf('growth.nitrogenUse', { potential: 1, monthlyMaxGPerM2: 4 }, 'nitrogenGPerM2')).toBe(4)
  })

  it('in clippings goes with their volume', () => {
    const at = (clippingsLPer100M2: number) =>
      numberOf('growth.fromClippings', { clippingsLPer100M2 }, 'nitrogenGPerM2')
    expect(at(90)).toBeCloseTo(2 * at(45), 12)
    expect(at(0)).toBe(0)
  })
})

describe('clipping volume', () => {
  it.each([
    [3, 'below'],
    [6, 'inside'],
    [20, 'above'],
  ])('of %d L from 500 m2 stands %s a target of 10 to 20 mL/m2', (clippingsL, standing) => {
    expect(
      answerOf('clippings.volume', { clippingsL, areaM2: 500, target: { low: 10, high: 20 } }),
    ).toMatchObject({
      standing,
    })
  })

  it('stands nowhere without the target of the club', () => {
    expect(answerOf('clippings.volume', { clippingsL: 6, areaM2: 500 })).toMatchObject({
      standing: null,
      standingReason: "the club's own target is not given",
    })
  })
})

describe('seed', () => {
  it('asks for the rate or the mass, not both or none', () => {
    expect(errorOf('seed.rate', { areaM2: 500 })).toMatchObject({ field: 'rateGPerM2' })
    expect(errorOf('seed.rate', { areaM2: 500, rateGPerM2: 8, seedKg: 4 })).toMatchObject({
      field: 'rateGPerM2',
    })
  })

  it('comes back to its rate by the mass', () => {
    const seedKg = numberOf('seed.rate', { areaM2: 512, rateGPerM2: 7.5 }, 'seedKg')
    expect(numberOf('seed.rate', { areaM2: 512, seedKg }, 'rateGPerM2')).toBeCloseTo(7.5, 12)
  })
})
