import { expect, it } from 'vitest'
import * as v from 'valibot'
import { monthStatistics } from './climate-statistics.ts'
import { generateDays } from './generate.ts'
import { climateNormals, climateOfNormals } from './normals.ts'

/** Dublin Airport 1991-2020 rain and wet days (means of the record, Met Éireann, CC BY 4.0); temperatures, wind and sun rounded. */
const DUBLIN = v.parse(climateNormals, {
  latitudeDeg: 53.4,
  longitudeDeg: -6.2,
  altitudeM: 71,
  months: [
    [62, 12.3, 2.5, 8.1, 6.3, 1.9],
    [52, 10.7, 2.5, 8.5, 6.2, 2.8],
    [51, 10.9, 3.0, 10.3, 5.9, 3.8],
    [55, 10.9, 4.1, 12.3, 5.3, 5.4],
    [57, 10.5, 6.6, 15.0, 5.1, 6.2],
    [64, 10.3, 9.2, 17.7, 4.7, 5.9],
    [62, 11.5, 11.2, 19.4, 4.7, 5.3],
    [74, 11.5, 11.0, 19.1, 4.7, 5.1],
    [62, 10.5, 9.3, 17.0, 4.9, 4.3],
    [79, 11.8, 7.0, 13.7, 5.4, 3.3],
    [83, 12.3, 4.4, 10.4, 5.7, 2.4],
    [72, 13.2, 2.9, 8.5, 6.0, 1.7],
  ].map(([rainMm, wetDays, minC, maxC, windMPerS, sunshineHours]) => ({
    rainMm,
    wetDays,
    minC,
    maxC,
    windMPerS,
    sunshineHours,
  })),
})

it('draws weather whose months have the normals they were drawn from', () => {
  const made = monthStatistics(generateDays(climateOfNormals(DUBLIN), 0, 73_050, 4))
  DUBLIN.months.forEach((normal, m) => {
    const month = made[m]
    // A yearly course of two waves smooths the table; 200 years leave 3 % of chance in a month's rain.
    expect(Math.abs((month?.wetDays.mean ?? NaN) / normal.wetDays - 1), `wet days ${m + 1}`).toBeLessThan(
      0.12,
    )
    expect(Math.abs((month?.rainMm.mean ?? NaN) / normal.rainMm - 1), `rain ${m + 1}`).toBeLessThan(0.15)
    expect(Math.abs((month?.maxC ?? NaN) - normal.maxC), `maximum ${m + 1}`).toBeLessThan(0.8)
    expect(Math.abs((month?.minC ?? NaN) - normal.minC), `minimum ${m + 1}`).toBeLessThan(0.8)
  })
})

it('turns the seasons round south of the equator', () => {
  const [january, july] = [climateOfNormals(DUBLIN), climateOfNormals({ ...DUBLIN, latitudeDeg: -40 })].map(
    (c) => c.dry[0]?.spread[1] ?? 0,
  )
  expect(Math.sign(january ?? 0)).toBe(1)
  expect(Math.sign(july ?? 0)).toBe(-1)
})

it('refuses a table of eleven months or of wrong units', () => {
  expect(v.safeParse(climateNormals, { ...DUBLIN, months: DUBLIN.months.slice(1) }).success).toBe(false)
  expect(
    v.safeParse(climateNormals, {
      ...DUBLIN,
      months: DUBLIN.months.map((m) => ({ ...m, maxC: m.maxC * 1.8 + 32 })),
    }).success,
  ).toBe(false)
})
