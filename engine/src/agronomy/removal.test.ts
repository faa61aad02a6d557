import { assert, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf, errorOf, numberOf } from './answer-of.ts'
import { LAYERS_TO_80_MM } from './published-profile.ts'

const CORES = { coreDiameterMm: 12, acrossMm: 50, alongMm: 50, depthMm: 70, layers: LAYERS_TO_80_MM }
const BLADES = {
  bladeWidthMm: 3,
  bladeSpacingMm: 25.4,
  depthMm: 19,
  passes: 2,
  crossed: true,
  layers: LAYERS_TO_80_MM,
}

describe('what the cores take out', () => {
  it('says so when the cores go deeper than the layers', () => {
    expect(errorOf('coring.removal', { ...CORES, depthMm: 90 })).toEqual({
      type: 'notDefined',
      field: 'depthMm',
      unit: 'mm',
      reason: 'depthMm is 90 mm but the layers end at 80 mm; give layers to at least that depth',
    })
  })

  it('reaches exactly to the last layer', () => {
    expect(numberOf('coring.removal', { ...CORES, depthMm: 80 }, 'dryMassGPerM2')).toBeGreaterThan(0)
  })

  it.each([
    [[{ fromMm: 5, toMm: 80, organicPercent: 3 }], 'layers[0].fromMm', /start at 0 mm/u],
    [
      [
        { fromMm: 0, toMm: 20, organicPercent: 3 },
        { fromMm: 25, toMm: 80, organicPercent: 3 },
      ],
      'layers[1].fromMm',
      /without gap or overlap/u,
    ],
    [
      [
        { fromMm: 0, toMm: 40, organicPercent: 3 },
        { fromMm: 20, toMm: 80, organicPercent: 3 },
      ],
      'layers[1].fromMm',
      /without gap or overlap/u,
    ],
    [
      [
        { fromMm: 0, toMm: 0.1, organicPercent: 3 },
        { fromMm: 0.1, toMm: 0.1, organicPercent: 3 },
      ],
      'layers[1].toMm',
      /deeper than it starts/u,
    ],
  ])('refuses layers that are not one profile: %j', (layers, field, reason) => {
    expect(errorOf('coring.removal', { ...CORES, layers })).toMatchObject({
      type: 'notDefined',
      field,
      reason: expect.stringMatching(reason) as string,
    })
  })

  it('does not depend on how finely a layer is cut', () => {
    const halves = LAYERS_TO_80_MM.flatMap(({ fromMm, toMm, organicPercent }) => {
      const middle = (fromMm + toMm) / 2
      return [
        { fromMm, toMm: middle, organicPercent },
        { fromMm: middle, toMm, organicPercent },
      ]
    })
    expect(numberOf('coring.removal', { ...CORES, layers: halves }, 'organicGPerM2')).toBeCloseTo(
      numberOf('coring.removal', CORES, 'organicGPerM2'),
      9,
    )
  })

  it('gives tonnes for a green only when the area is given', () => {
    expect(answerOf('coring.removal', CORES)).not.toHaveProperty('massPerGreenT')
    expect(answerOf('coring.removal', { ...CORES, areaM2: 500 })).toHaveProperty('massPerGreenT')
  })

  it('never speaks of a lower percentage: what is taken out is grams, and the notes say what that is not', () => {
    expect(Object.keys(answerOf('coring.removal', CORES)).filter((key) => key.includes('Percent'))).toEqual(
      [],
    )
    expect(
      Object.keys(answerOf('scarifying.removal', BLADES)).filter((key) => key.includes('Percent')),
    ).toEqual([])
  })
})

describe('what the scarifier takes out', () => {
  it('goes by the union when crossed and by the passes in new lines, and says which', () => {
    const crossed = answerOf('scarifying.removal', BLADES)
    const lines = answerOf('scarifying.removal', { ...BLADES, crossed: false })
    expect(crossed['removalBy']).toBe('union')
    expect(lines['removalBy']).toBe('passes')
    // Both show the same two shares: by hand 2 x 3 / 25.4 = 23.622 %, and 1 - (1 - 0.11811)^2 = 22.227 %.
    for (const answer of [crossed, lines]) {
      expect(answer['areaShareSummed']).toBeCloseTo(0.23622, 5)
      expect(answer['areaShareUnion']).toBeCloseTo(0.22227, 5)
    }
    expect(Number(crossed['volumeLPerM2'])).toBeCloseTo(19 * 0.22227, 3)
    expect(Number(lines['volumeLPerM2'])).toBeCloseTo(19 * 0.23622, 3)
  })

  it('is the same for one pass whether crossed or not', () => {
    const one = { ...BLADES, passes: 1 }
    expect(numberOf('scarifying.removal', one, 'organicGPerM2')).toBeCloseTo(
      numberOf('scarifying.removal', { ...one, crossed: false }, 'organicGPerM2'),
      12,
    )
  })

  it('refuses blades wider than their spacing, and more passes in new lines than the green has room for', () => {
    expect(errorOf('scarifying.removal', { ...BLADES, bladeWidthMm: 30 })).toMatchObject({
      field: 'bladeWidthMm',
    })
    expect(errorOf('scarifying.removal', { ...BLADES, crossed: false, passes: 9 })).toMatchObject({
      field: 'passes',
    })
  })

  it('takes out more with every millimetre of depth', () => {
    assert(
      property(double({ min: 1, max: 39, noNaN: true }), (depthMm) => {
        const at = (mm: number) => numberOf('scarifying.removal', { ...BLADES, depthMm: mm }, 'organicGPerM2')
        expect(at(depthMm + 1)).toBeGreaterThan(at(depthMm))
      }),
    )
  })
})
