import { assert, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf, errorOf, numberOf } from './answer-of.ts'
import type { Layer } from './layers.ts'
import { LAYERS_TO_70_MM } from './published-profile.ts'

const CORING = {
  layers: LAYERS_TO_70_MM,
  coreDiameterMm: 12,
  acrossMm: 50,
  alongMm: 50,
  depthMm: 70,
}

const percents = (answer: Readonly<Record<string, unknown>>): readonly number[] =>
  (answer['layers'] as readonly Layer[]).map((layer) => layer.organicPercent)

const number = (min: number, max: number) => double({ min, max, noNaN: true })

describe('sand for a target', () => {
  it('brings the window exactly to the target when it is put on', () => {
    assert(
      property(number(3, 20), number(0.3, 0.99), number(5, 100), (fromPercent, part, windowMm) => {
        const toPercent = fromPercent * part
        const sandMm = numberOf('organic.sandToReach', { fromPercent, toPercent, windowMm }, 'sandMm')
        expect(
          numberOf('organic.afterSand', { organicPercent: fromPercent, windowMm, sandMm }, 'organicPercent'),
        ).toBeCloseTo(toPercent, 9)
      }),
    )
  })

  it('is none where the target is met, and refused where it lies above', () => {
    const input = { fromPercent: 5, toPercent: 5, windowMm: 20 }
    expect(numberOf('organic.sandToReach', input, 'sandMm')).toBe(0)
    expect(errorOf('organic.sandToReach', { ...input, toPercent: 6 })).toMatchObject({
      field: 'toPercent',
      unit: '%',
    })
  })
})

describe('organic matter after dressing', () => {
  it('falls further by mass than by the quick rule, at high organic matter (8 %: 7.42 against 7.6, Woods 2019 and 2021)', () => {
    const input = { organicPercent: 8, windowMm: 20, sandMm: 1 }
    expect(numberOf('organic.afterSand', input, 'organicPercent')).toBeCloseTo(7.42, 2)
    expect(numberOf('organic.afterSand', { ...input, method: 'volume' }, 'organicPercent')).toBeCloseTo(
      7.6,
      12,
    )
  })

  it('never rises with more sand', () => {
    assert(
      property(number(0, 60), number(0, 18), (organicPercent, sandMm) => {
        const at = (mm: number) =>
          numberOf('organic.afterSand', { organicPercent, windowMm: 20, sandMm: mm }, 'organicPercent')
        expect(at(sandMm + 1)).toBeLessThanOrEqual(at(sandMm))
      }),
    )
  })

  it('is that of sand alone when the sand fills the window, and refused beyond', () => {
    const input = { organicPercent: 8, windowMm: 20, sandMm: 20 }
    expect(numberOf('organic.afterSand', input, 'organicPercent')).toBe(0)
    expect(errorOf('organic.afterSand', { ...input, sandMm: 21 })).toMatchObject({
      field: 'sandMm',
      unit: 'mm',
    })
  })
})

describe('organic matter after coring', () => {
  it('stays as it was in every layer when the holes stay open', () => {
    const open = percents(answerOf('organic.afterCoring', { ...CORING, refill: 'none' }))
    for (const [i, layer] of LAYERS_TO_70_MM.entries()) expect(open[i]).toBeCloseTo(layer.organicPercent, 9)
  })

  it('falls in every cored layer with sand, and only there', () => {
    const filled = percents(answerOf('organic.afterCoring', { ...CORING, depthMm: 40, refill: 'sand' }))
    expect(filled[0]).toBeLessThan(6.7)
    expect(filled[1]).toBeLessThan(3.1)
    expect(filled[2]).toBeCloseTo(2, 9)
    expect(filled[3]).toBeCloseTo(1.6, 9)
  })

  it('falls less by collapse than by sand: 3.318 against 3.2 from 3.4 % (Woods 2021)', () => {
    const whole = (refill: string) => numberOf('organic.afterCoring', { ...CORING, refill }, 'organicPercent')
    expect(whole('sand')).toBeLessThan(whole('collapse'))
    expect(whole('collapse')).toBeLessThan(whole('none'))
  })

  it('collapses a profile of one kind into the same profile', () => {
    const layers = [{ fromMm: 0, toMm: 80, organicPercent: 4 }]
    const after = answerOf('organic.afterCoring', { ...CORING, layers, refill: 'collapse' })
    expect(after['organicPercent']).toBeCloseTo(4, 9)
  })

  it('refuses cores deeper than the layers', () => {
    expect(errorOf('organic.afterCoring', { ...CORING, depthMm: 71, refill: 'sand' })).toMatchObject({
      type: 'notDefined',
      field: 'depthMm',
    })
  })

  it('gives 3.312 % by solid tines and sand, more than cores and sand (Woods 2021)', () => {
    const { coreDiameterMm, ...pattern } = CORING
    const solid = numberOf(
      'organic.afterSolidTines',
      { ...pattern, holeDiameterMm: coreDiameterMm },
      'organicPercent',
    )
    expect(solid).toBeCloseTo(3.312, 2)
    expect(solid).toBeGreaterThan(
      numberOf('organic.afterCoring', { ...CORING, refill: 'sand' }, 'organicPercent'),
    )
  })
})

describe('sand that keeps up with growth', () => {
  it('is less where more organic matter is accepted, and goes with the clippings', () => {
    const at = (organicPercent: number, clippingsLPerM2 = 1) =>
      numberOf('organic.sandToHold', { clippingsLPerM2, organicPercent }, 'sandMm')
    // Woods 2026 gives the ratio; worked by hand: 1.66 at 6 % and 1.35 at 7.3 %.
    expect(at(6)).toBeCloseTo(1.66, 2)
    expect(at(7.3)).toBeCloseTo(1.35, 2)
    expect(at(6, 3)).toBeCloseTo(3 * at(6), 12)
  })
})

describe('loss on ignition', () => {
  it('refuses ash heavier than the sample', () => {
    expect(errorOf('organic.lossOnIgnition', { dryMassG: 50, ashMassG: 51 })).toMatchObject({
      field: 'ashMassG',
      unit: 'g',
    })
  })
})

describe('bulk density', () => {
  it('falls with every percent of organic matter, between sand and organic matter alone', () => {
    assert(
      property(number(0, 99), (organicPercent) => {
        const at = (percent: number) =>
          numberOf('organic.bulkDensity', { organicPercent: percent }, 'bulkDensityKgPerM3')
        expect(at(organicPercent + 1)).toBeLessThan(at(organicPercent))
        expect(at(organicPercent)).toBeLessThanOrEqual(1560 + 1e-9)
        expect(at(organicPercent)).toBeGreaterThanOrEqual(220)
      }),
    )
  })
})
