import { assert, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bandOf,
  dressed,
  organicPercentOf,
  profileOf,
  profileThicknessMm,
  sampledAs,
  thicknessMm,
} from './profile-state.ts'
import { LAYERS_TO_80_MM } from './published-profile.ts'

const BANDS = [
  { fromMm: 0, toMm: 20 },
  { fromMm: 20, toMm: 40 },
  { fromMm: 40, toMm: 60 },
]

const profile = profileOf(LAYERS_TO_80_MM, 40)

describe('the state of a profile', () => {
  it('is as thick as the layers it was made from', () => {
    expect(profileThicknessMm(profile)).toBeCloseTo(80, 9)
  })

  it('is found again by a laboratory that samples the same layers', () => {
    const found = sampledAs(profile, LAYERS_TO_80_MM).map((layer) => layer.organicPercent)
    for (const [i, percent] of [6.7, 3.1, 2, 1.6].entries()) expect(found[i]).toBeCloseTo(percent, 9)
  })

  it('holds the masses printed for 70 mm: 90,429 g with 3,082 g organic (Woods 2021)', () => {
    const band = bandOf(profile, { fromMm: 0, toMm: 70 })
    expect(band.sandGPerM2 + band.mineralGPerM2 + band.organicGPerM2).toBeCloseTo(90_429, -1)
    expect(band.organicGPerM2).toBeCloseTo(3082, -0.3)
  })

  it('counts mineral matter as sand to the depth given and as the own rootzone below', () => {
    expect(profile.map((layer) => layer.mineralGPerM2 === 0)).toEqual([true, true, false, false])
    expect(profile.map((layer) => layer.sandGPerM2 === 0)).toEqual([false, false, true, true])
  })

  it('gives 6.2 and 5.8 % in the top 20 mm after 1 and 2 mm of sand, as printed (Woods 2021)', () => {
    const after = (sandMm: number) => sampledAs(dressed(profile, sandMm * 1560), BANDS)[0]?.organicPercent
    expect(after(1)).toBeCloseTo(6.2, 1)
    expect(after(2)).toBeCloseTo(5.8, 1)
  })

  it('grows by the depth of the sand laid on it, and no sand changes nothing', () => {
    expect(profileThicknessMm(dressed(profile, 1560))).toBeCloseTo(81, 9)
    expect(dressed(profile, 0)).toBe(profile)
  })

  it('keeps every gram when it is cut into bands', () => {
    assert(
      property(double({ min: 1, max: 79, noNaN: true }), (cutMm) => {
        const parts = [
          bandOf(profile, { fromMm: 0, toMm: cutMm }),
          bandOf(profile, { fromMm: cutMm, toMm: 80 }),
        ]
        const organic = parts.reduce((sum, part) => sum + part.organicGPerM2, 0)
        const whole = profile.reduce((sum, layer) => sum + layer.organicGPerM2, 0)
        expect(organic).toBeCloseTo(whole, 6)
        expect(thicknessMm(parts[0] ?? bandOf(profile, BANDS[0]!))).toBeCloseTo(cutMm, 6)
      }),
    )
  })

  it('has no organic matter where there is no mass', () => {
    expect(organicPercentOf(bandOf(profile, { fromMm: 100, toMm: 120 }))).toBe(0)
  })
})
