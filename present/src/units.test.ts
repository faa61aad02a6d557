import { describe, expect, it } from 'vitest'
import {
  bandWords,
  bothUnits,
  figureOf,
  fromWantedUnit,
  IMPERIAL,
  inWantedUnit,
  METRIC,
  quantityWords,
  type QuantityKind,
} from './units.ts'

describe('units', () => {
  it('turn by the exact factors of the 1959 agreement', () => {
    // NIST SP 811 appendix B.8: inch 25.4 mm, yard 0.9144 m, square foot 9.290304e-2 m2, short ton 9.071847e2 kg (rounded), all exact but the last.
    expect(fromWantedUnit('tine', 1, IMPERIAL)).toBe(25.4)
    expect(fromWantedUnit('distance', 100, IMPERIAL)).toBeCloseTo(91.44, 12)
    expect(fromWantedUnit('area', 1000, IMPERIAL)).toBeCloseTo(92.90304, 12)
    expect(fromWantedUnit('sand', 1, IMPERIAL)).toBeCloseTo(0.9071847, 7)
    // Short ton = 2,000 lb, pound 0.45359237 kg exactly (NIST SP 811, B.8).
    expect(fromWantedUnit('sand', 1, IMPERIAL)).toBe((2000 * 0.45359237) / 1000)
  })

  it('turn degrees at the fixed points', () => {
    // Water freezes at 32 F and boils at 212 F; -40 is the same on both.
    expect(inWantedUnit('temperature', 0, IMPERIAL)).toBe(32)
    expect(inWantedUnit('temperature', 100, IMPERIAL)).toBe(212)
    expect(inWantedUnit('temperature', -40, IMPERIAL)).toBe(-40)
  })

  it.each(Object.keys(METRIC) as QuantityKind[])('of %s come back to what was typed', (kind) => {
    for (const units of [METRIC, IMPERIAL])
      expect(inWantedUnit(kind, fromWantedUnit(kind, 17.25, units), units)).toBeCloseTo(17.25, 10)
  })

  it('stand behind a figure of sensible length', () => {
    // 12.7 mm is half an inch; 60 mm is 2.362 in; 450 m2 is 4,843.76 ft2; worked with the factors above.
    expect(quantityWords('tine', 12.7, IMPERIAL)).toBe('0.5 in')
    expect(quantityWords('depth', 60, METRIC)).toBe('60 mm')
    expect(quantityWords('area', 450, IMPERIAL)).toBe('4,844 ft\u00b2')
    expect(quantityWords('sand', 2.28, METRIC)).toBe('2.3 t')
    expect(quantityWords('sand', 0.90718474, IMPERIAL)).toBe('1 short ton')
    expect(figureOf('rain', 0.24, METRIC)).toBe('0.2')
  })

  it('stand side by side, the club\u2019s own first', () => {
    // 13 / 25.4 = 0.5118; 60 / 25.4 = 2.3622.
    expect(bothUnits('tine', 13, METRIC)).toBe('13 mm (0.51 in)')
    expect(bothUnits('depth', 60, IMPERIAL)).toBe('2.36 in (60 mm)')
  })

  it('take each quantity by itself', () => {
    const mixed = { ...METRIC, depth: 'in' } as const
    expect(quantityWords('tine', 13, mixed)).toBe('13 mm')
    expect(quantityWords('depth', 76.2, mixed)).toBe('3 in')
  })
})

describe('a band', () => {
  it('reads low to high, then the likely figure', () => {
    expect(bandWords('sand', { low: 40.2, likely: 51.8, high: 61.1 }, METRIC)).toBe('40 to 61 t, likely 52 t')
    expect(bandWords('sand', { low: 1.84, likely: 2.31, high: 2.69 }, METRIC)).toBe(
      '1.8 to 2.7 t, likely 2.3 t',
    )
  })

  it('is one figure when the ends read alike', () => {
    expect(bandWords('sand', { low: 2.31, likely: 2.32, high: 2.33 }, METRIC)).toBe('2.3 t')
  })

  it('turns into short tons, never long ones', () => {
    // 40 t / 0.90718474 = 44.09; 52 -> 57.32; 61 -> 67.24.
    expect(bandWords('sand', { low: 40, likely: 52, high: 61 }, IMPERIAL)).toBe(
      '44 to 67 short tons, likely 57 short tons',
    )
  })
})
