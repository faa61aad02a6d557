import { describe, expect, it } from 'vitest'
import { driedAtMin, dryingCurve, dryingNeedMm } from './drying.ts'
import { MIDDLE_ENGLAND, plainDays, withRain, type PlainDay } from './fixtures/plain-days.ts'

const AUGUST_SUN: PlainDay = {
  date: '2026-08-10',
  minC: 12,
  maxC: 23,
  dewPointC: 12,
  windMPerS: 3,
  clearness: 0.75,
}
const AUGUST_DULL: PlainDay = {
  ...AUGUST_SUN,
  minC: 13,
  maxC: 17,
  dewPointC: 13,
  windMPerS: 4,
  clearness: 0.25,
}
const SEPTEMBER: PlainDay = {
  date: '2026-09-25',
  minC: 9,
  maxC: 16,
  dewPointC: 10,
  windMPerS: 4,
  clearness: 0.5,
}
const SEPTEMBER_DULL: PlainDay = { ...SEPTEMBER, minC: 10, maxC: 14, dewPointC: 10.5, clearness: 0.25 }

/** 3 mm of washed sand at 6 % moisture and 1.55 t/m3: 3 * 1.55 * 0.06 = 0.279 mm of water, by hand. */
const THREE_MM = dryingNeedMm({ sandMm: 3, kind: 'damp', moisturePercent: 6, bulkDensityKgPerM3: 1550 })

const hoursToDry = (day: PlainDay, startHour: number, needMm: number): number => {
  const at = driedAtMin(dryingCurve(plainDays(day), MIDDLE_ENGLAND), startHour * 60, needMm)
  return at === null ? Infinity : at / 60 - startHour
}

describe('water in lying sand', () => {
  it('is depth times density times moisture, and none in kiln-dried sand', () => {
    expect(THREE_MM).toBeCloseTo(0.279, 10)
    // By hand at 1.55 t/m3: 1 x 1.55 x 0.05 = 0.0775 mm, 5 x 1.55 x 0.08 = 0.62 mm.
    const mm = (sandMm: number, moisturePercent: number) =>
      dryingNeedMm({ sandMm, kind: 'damp', moisturePercent, bulkDensityKgPerM3: 1550 })
    expect(mm(1, 5)).toBeCloseTo(0.0775, 10)
    expect(mm(5, 8)).toBeCloseTo(0.62, 3)
    expect(dryingNeedMm({ sandMm: 3, kind: 'kilnDried', moisturePercent: 6, bulkDensityKgPerM3: 1550 })).toBe(
      0,
    )
  })
})

describe('drying on the green (bands of common practice, no source)', () => {
  it.each([10, 11, 12, 13])('takes 1.5 to 3 hours in August sun from %i UTC', (from) => {
    expect(hoursToDry(AUGUST_SUN, from, THREE_MM)).toBeGreaterThanOrEqual(1.5)
    expect(hoursToDry(AUGUST_SUN, from, THREE_MM)).toBeLessThanOrEqual(3)
  })

  it.each([9, 10, 11])('takes 4 to 6 hours on a dull August day from %i UTC', (from) => {
    expect(hoursToDry(AUGUST_DULL, from, THREE_MM)).toBeGreaterThanOrEqual(4)
    expect(hoursToDry(AUGUST_DULL, from, THREE_MM)).toBeLessThanOrEqual(6)
  })

  it('takes four hours to tomorrow in late September', () => {
    expect(hoursToDry(SEPTEMBER, 11, THREE_MM)).toBeGreaterThanOrEqual(4)
    expect(hoursToDry(SEPTEMBER, 13, THREE_MM)).toBeGreaterThan(16)
    expect(hoursToDry(SEPTEMBER_DULL, 11, THREE_MM)).toBeGreaterThan(16)
  })

  it('takes 30 to 90 minutes for a thin layer in August sun', () => {
    expect(hoursToDry(AUGUST_SUN, 11, THREE_MM / 3)).toBeGreaterThanOrEqual(0.5)
    expect(hoursToDry(AUGUST_SUN, 11, THREE_MM / 3)).toBeLessThanOrEqual(1.5)
  })

  it('takes longer for more sand and shorter in more sun', () => {
    expect(hoursToDry(AUGUST_SUN, 10, 2 * THREE_MM)).toBeGreaterThan(hoursToDry(AUGUST_SUN, 10, THREE_MM))
    expect(hoursToDry(AUGUST_DULL, 10, THREE_MM)).toBeGreaterThan(hoursToDry(AUGUST_SUN, 10, THREE_MM))
  })
})

describe('the curve', () => {
  it('never falls, and lies flat at night and in rain', () => {
    const curve = dryingCurve(withRain(plainDays(AUGUST_SUN), { 12: 0.2, 13: 4 }), MIDDLE_ENGLAND)
    const gain = (h: number) => (curve[h + 1] ?? NaN) - (curve[h] ?? NaN)
    expect(curve).toHaveLength(49)
    for (let h = 0; h < 48; h++) expect(gain(h)).toBeGreaterThanOrEqual(0)
    expect([gain(0), gain(2), gain(12), gain(13), gain(22)]).toEqual([0, 0, 0, 0, 0])
    expect(gain(14)).toBeGreaterThan(0)
  })

  it('takes drizzle off the hour it falls in, and what is left over off the next', () => {
    const dry = dryingCurve(plainDays(AUGUST_SUN), MIDDLE_ENGLAND)
    const gainOf = (curve: Float64Array, h: number) => (curve[h + 1] ?? NaN) - (curve[h] ?? NaN)
    const [noon, one, two] = [12, 13, 14].map((h) => gainOf(dry, h)) as [number, number, number]
    const after = (rain: Readonly<Record<number, number>>) => {
      const curve = dryingCurve(withRain(plainDays(AUGUST_SUN), rain), MIDDLE_ENGLAND)
      return [12, 13, 14].map((h) => gainOf(curve, h))
    }
    // Less than the hour dries: that much less.
    expect(after({ 12: 0.05 })).toEqual([noon - 0.05, one, two].map((mm) => expect.closeTo(mm, 9)))
    // Two hours of 0.19 mm dry nothing and leave 0.38 less what both hours dry, which the third must still lose.
    const owed = 0.38 - noon - one
    expect(owed).toBeGreaterThan(0.02)
    expect(after({ 12: 0.19, 13: 0.19 })).toEqual([0, 0, two - owed].map((mm) => expect.closeTo(mm, 9)))
  })

  it('forgets the drizzle of the night by sunrise', () => {
    const dry = dryingCurve(plainDays(AUGUST_SUN), MIDDLE_ENGLAND)
    const wet = dryingCurve(withRain(plainDays(AUGUST_SUN), { 0: 0.15, 1: 0.15, 2: 0.15 }), MIDDLE_ENGLAND)
    expect(wet.at(24)).toBeCloseTo(dry.at(24) ?? NaN, 9)
  })

  it('goes on past the forecast as the season has it', () => {
    const weather = plainDays({ ...AUGUST_SUN, days: 1 })
    const curve = dryingCurve(weather, MIDDLE_ENGLAND, { span: { startMs: weather.startMs, hours: 72 } })
    const day = (d: number) => (curve[(d + 1) * 24] ?? NaN) - (curve[d * 24] ?? NaN)
    // Mean reference evapotranspiration on 10 August by the record is near 2.5 mm at 53.4 N (Dublin Airport, means of 1991-2020: July 2.75, August 2.31), of which 0.33.
    expect(day(1)).toBeGreaterThan(0.33 * 2.2)
    expect(day(1)).toBeLessThan(0.33 * 3.1)
    expect(day(2)).toBeCloseTo(day(1), 1)
  })

  it('falls back on the season where the forecast has only rain', () => {
    const weather = plainDays(AUGUST_SUN)
    const nothing = new Float64Array(weather.hours).fill(NaN)
    const bare = {
      ...weather,
      temperatureC: nothing,
      dewPointC: nothing,
      windMPerS: nothing,
      radiationWPerM2: nothing,
    }
    const total = dryingCurve(bare, MIDDLE_ENGLAND).at(-1) ?? NaN
    expect(total).toBeGreaterThan(0.33 * 2 * 2.2)
    expect(total).toBeLessThan(0.33 * 2 * 3.1)
  })
})

describe('the minute at which sand is dry', () => {
  // By hand: 0.1 mm in the first hour, 0.2 in the second, none in the third, 0.3 in the fourth.
  const curve = Float64Array.from([0, 0.1, 0.3, 0.3, 0.6])

  it('is read between the hours', () => {
    expect(driedAtMin(curve, 0, 0.2)).toBe(90)
    expect(driedAtMin(curve, 30, 0.05)).toBe(60)
    expect(driedAtMin(curve, 60, 0.25)).toBe(190)
    expect(driedAtMin(curve, 75, 0)).toBe(75)
  })

  it('is none when the sand does not dry in time', () => {
    expect(driedAtMin(curve, 0, 0.7)).toBeNull()
    expect(driedAtMin(curve, 240, 0.1)).toBeNull()
  })
})
