import { describe, expect, it } from 'vitest'
import { calculate } from '../catalogue/catalogue.ts'
import { referenceEvapotranspiration, vapourPressureOf, type EtDay } from './evapotranspiration.ts'
import { hargreavesMm, meanSaturationKPa, pressureKPa, psychrometricKPaPerC, windAt2M } from './penman.ts'
import {
  clearSky,
  declinationRad,
  extraterrestrialDayMJ,
  hourAngleRad,
  inverseDistance,
  MM_PER_MJ,
  netLongwaveDayMJ,
  netShortwave,
  radians,
  radiationFromRangeMJ,
  radiationFromSunshineMJ,
  seasonalCorrectionHours,
  sunsetAngleRad,
} from './radiation.ts'
import {
  dewPointC,
  dewPointFromHumidityC,
  humidityPercentOf,
  saturationVapourPressureKPa,
  vapourPressureSlopeKPaPerC,
} from './vapour.ts'

/** Every expected figure here is printed in FAO-56 (Allen and others 1998); the example or table stands in the title. Tolerance: half of the last printed digit. */
const near = (value: number, printed: string, slack = 0) => {
  const digits = printed.split('.')[1]?.length ?? 0
  expect(Math.abs(value - Number(printed)), `${value} for ${printed}`).toBeLessThanOrEqual(
    0.5 * 10 ** -digits + slack + 1e-9,
  )
}

describe('steps of the examples', () => {
  it('example 2 and table 2.1: pressure and psychrometric constant by height', () => {
    near(pressureKPa(1800), '81.8')
    near(psychrometricKPaPerC(1800), '0.054')
    near(pressureKPa(100), '100.1')
    near(pressureKPa(200), '99.0')
    near(pressureKPa(1200), '87.9')
  })

  it('example 3: saturation pressure at 24.5 and 15 degrees, and their mean', () => {
    near(saturationVapourPressureKPa(24.5), '3.075')
    near(saturationVapourPressureKPa(15), '1.705')
    near(meanSaturationKPa(15, 24.5), '2.39')
  })

  it.each([
    [5, '0.872'],
    [10, '1.228'],
    [15, '1.705'],
    [20, '2.338'],
    [25, '3.168'],
    [30, '4.243'],
  ])('table 2.3: saturation pressure at %d degrees is %s kPa', (t, e) => {
    near(saturationVapourPressureKPa(t), e)
  })

  it.each([
    [5, '0.061'],
    [10, '0.082'],
    [15, '0.110'],
    [20, '0.145'],
    [25, '0.189'],
  ])('table 2.4: slope at %d degrees is %s', (t, slope) => {
    near(vapourPressureSlopeKPaPerC(t), slope)
  })

  it('examples 5 and 6: vapour pressure from humidity three ways, and the deficit', () => {
    const ea = vapourPressureOf(18, 25, { minHumidityPercent: 54, maxHumidityPercent: 82 })
    near(ea, '1.70')
    near(vapourPressureOf(18, 25, { meanHumidityPercent: 68 }), '1.78')
    near(vapourPressureOf(18, 25, { maxHumidityPercent: 82 }), '1.69')
    near(meanSaturationKPa(18, 25) - ea, '0.91')
  })

  it('example 7: latitudes in radians', () => {
    near(radians(13 + 44 / 60), '0.240')
    near(radians(-(22 + 54 / 60)), '-0.400')
  })

  it('example 8: distance, declination, sunset angle and Ra in mm, 20 S on 3 September', () => {
    near(inverseDistance(246), '0.985')
    near(declinationRad(246), '0.120')
    near(sunsetAngleRad(radians(-20), declinationRad(246)), '1.527')
    near(MM_PER_MJ * extraterrestrialDayMJ(246, -20), '13.1')
  })

  it('example 10: radiation from 7.1 hours of sunshine', () => {
    // (0.25 + 0.5 x 7.1 / 10.9) x 25.1 is 14.45, which the paper rounds up.
    near(radiationFromSunshineMJ(220 / 31, 10.9, 25.1), '14.5', 0.01)
  })

  it('example 11: long-wave loss', () => {
    near(clearSky(25.1, 0), '18.8')
    near(netLongwaveDayMJ(19.1, 25.1, 2.1, 14.5 / 18.8), '3.5')
  })

  it('example 12: net short-wave', () => {
    // 0.77 x 14.5 is 11.165, which the paper cuts.
    near(netShortwave(14.5), '11.1', 0.02)
  })

  it('example 14 and table 2.9: wind brought down to 2 m', () => {
    near(windAt2M(3.2, 10), '2.4')
    for (const [height, factor] of [
      [1, '1.178'],
      [3, '0.921'],
      [5, '0.838'],
      [7.5, '0.783'],
      [10, '0.748'],
    ] as const)
      near(windAt2M(1, height), factor)
    expect(windAt2M(3, 2)).toBe(3)
  })

  it('examples 15 and 16: radiation from the range of temperature', () => {
    near(radiationFromRangeMJ(26.6 - 14.8, 40.6, 0.16), '22.3')
    near(radiationFromRangeMJ(34.8 - 25.6, extraterrestrialDayMJ(105, 13 + 44 / 60), 0.19), '21.9')
  })

  it('example 19: seasonal correction and hour angles at N’Diaye', () => {
    near(seasonalCorrectionHours(274), '0.1889')
    near(hourAngleRad(274, 15.5, -16.25), '0.682')
  })

  it('example 20: vapour pressure and the two parts for Lyon', () => {
    near(vapourPressureOf(14.8, 26.6, undefined), '1.68')
    near(meanSaturationKPa(14.8, 26.6), '2.58')
    near(hargreavesMm(14.8, 26.6, 20.7, extraterrestrialDayMJ(196, 45.72)), '5.0')
  })

  it('turns humidity and dew point into each other', () => {
    expect(dewPointC(saturationVapourPressureKPa(12.3))).toBeCloseTo(12.3, 10)
    expect(humidityPercentOf(20, dewPointFromHumidityC(20, 60))).toBeCloseTo(60, 10)
  })
})

describe('AgriMet Fallon, 1 July 2015 (WSWUP/RefET tests, checked there against Ref-ET v4.2)', () => {
  it('agrees within what ASCE and FAO constants differ', () => {
    const c = (f: number) => ((f - 32) * 5) / 9
    const day = referenceEvapotranspiration({
      dayOfYear: 182,
      latitudeDeg: 39.4575,
      altitudeM: 1208.5,
      minC: c(66.65),
      maxC: c(102.8),
      moisture: { vapourPressureKPa: 1.22067 },
      windMPerS: 4.8 * 0.44704,
      windHeightM: 3,
      sun: { radiationMJPerM2: 674.07 * 0.041868 },
    })
    expect(Math.abs(day.extraterrestrialMJPerM2 - 41.676)).toBeLessThan(0.05)
    // Their clear-sky radiation comes from the full method (31.57 against 32.2 here), which makes the long-wave loss 3 % larger: 0.06 mm.
    expect(Math.abs(day.etMm - 7.942)).toBeLessThan(0.06)
  })
})

describe('the fall-backs are named', () => {
  const day: EtDay = { dayOfYear: 187, latitudeDeg: 50.8, altitudeM: 100, minC: 12, maxC: 22 }
  const assumed = (more: Partial<EtDay>) => referenceEvapotranspiration({ ...day, ...more }).assumed

  it('each by itself, and none when all is measured', () => {
    expect(assumed({})).toEqual([
      'dewPointIsMinimum',
      'windTwoMetresPerSecond',
      'radiationFromTemperatureRange',
    ])
    const all = { moisture: { dewPointC: 11 }, windMPerS: 2, sun: { sunshineHours: 8 } } as const
    expect(assumed(all)).toEqual([])
    expect(assumed({ ...all, windMPerS: 0.1 })).toEqual(['windHeldAtHalfMetrePerSecond'])
    expect(assumed({ ...all, moisture: { maxHumidityPercent: 90 } })).toEqual(['humidityFromMaximumAlone'])
    expect(assumed({ ...all, moisture: { dewPointC: 30 } })).toEqual(['humidityHeldAtSaturation'])
    expect(assumed({ ...all, latitudeDeg: 89, dayOfYear: 1 })).toEqual(['clearnessUnknown'])
  })

  it('is never below nought and grows with sun and wind', () => {
    const et = (more: Partial<EtDay>) =>
      referenceEvapotranspiration({ ...day, moisture: { dewPointC: 9 }, ...more }).etMm
    expect(
      et({ minC: -5, maxC: 0, moisture: { vapourPressureKPa: 0.6 }, sun: { radiationMJPerM2: 0 } }),
    ).toBe(0)
    expect(et({ sun: { radiationMJPerM2: 25 } })).toBeGreaterThan(et({ sun: { radiationMJPerM2: 10 } }))
    expect(et({ windMPerS: 5 })).toBeGreaterThan(et({ windMPerS: 1 }))
  })
})

describe('weather.referenceEvapotranspiration refuses', () => {
  const good = { date: '2023-07-06', latitudeDeg: 50.8, altitudeM: 100, minC: 12, maxC: 22 }
  it.each([
    [{ minC: 30 }, { type: 'notDefined', field: 'minC', unit: 'degC' }],
    [
      { dewPointC: 10, vapourPressureKPa: 1 },
      { type: 'notDefined', field: 'dewPointC' },
    ],
    [{ minHumidityPercent: 50 }, { type: 'notDefined', field: 'maxHumidityPercent' }],
    [{ radiationMJPerM2: 48 }, { type: 'notDefined', field: 'radiationMJPerM2', unit: 'MJ/m2' }],
    [{ radiationMJPerM2: 2300 }, { type: 'outOfRange', field: 'radiationMJPerM2', max: 50 }],
    [{ sunshineHours: 20 }, { type: 'notDefined', field: 'sunshineHours', unit: 'h' }],
    [
      { radiationMJPerM2: 20, sunshineHours: 8 },
      { type: 'notDefined', field: 'sunshineHours' },
    ],
    [{ latitudeDeg: 91 }, { type: 'outOfRange', field: 'latitudeDeg', unit: 'deg', min: -90, max: 90 }],
    [{ maxC: undefined }, { type: 'missing', field: 'maxC', unit: 'degC' }],
    [{ windMPerS: 'calm' }, { type: 'wrongType', field: 'windMPerS', unit: 'm/s' }],
    [{ date: '2023-02-29' }, { type: 'wrongType', field: 'date' }],
  ])('%j', (more, error) => {
    expect(calculate('weather.referenceEvapotranspiration', { ...good, ...more })).toMatchObject({
      ok: false,
      error,
    })
  })

  it('an hour without any moisture', () => {
    expect(
      calculate('weather.referenceEvapotranspirationHourly', {
        date: '2023-07-06',
        hour: 12,
        utcOffsetMinutes: 0,
        latitudeDeg: 50,
        longitudeDeg: 0,
        altitudeM: 0,
        meanC: 20,
        radiationMJPerM2: 2,
      }),
    ).toMatchObject({ ok: false, error: { type: 'missing', field: 'meanHumidityPercent' } })
  })
})
