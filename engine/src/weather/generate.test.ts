import { describe, expect, it } from 'vitest'
import { drySpells, monthStatistics, yearRainMm } from './climate-statistics.ts'
import type { DailyRecord } from './daily-record.ts'
import { DUBLIN_STATION, dublinText, NO_DUBLIN, SEATTLE_LAYOUT, seattleText } from './fixtures/records.ts'
import { mixedExponential } from './fit-rain.ts'
import { fitClimate, generateDays } from './generate.ts'
import { chanceOf } from './chance.ts'
import { hoursOfDays } from './hours-of-days.ts'
import { readHistory } from './history.ts'
import { serviceLayout, type Layout } from './history-map.ts'
import { inverse, lowerRoot, times, transposed } from './matrix.ts'

/** Whole days of 200 years. */
const TWO_CENTURIES = 73_050

const recordOf = (text: string, layout: Layout | undefined): DailyRecord => {
  const history = layout === undefined ? undefined : readHistory(text, layout)
  if (history === undefined || !history.ok) throw new Error('record not readable')
  return history.value.record
}

const average = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length

/** What a record and weather generated from it must share, with the largest accepted difference. Fractions of the real figure unless said. */
const compare = (
  real: DailyRecord,
  made: DailyRecord,
  accept: { readonly mean: number; readonly spread: number; readonly degrees: number },
) => {
  const [a, b] = [monthStatistics(real), monthStatistics(made)]
  const ratio = (read: (month: (typeof a)[number]) => number): number =>
    average(b.map(read)) / average(a.map(read))
  const off = (value: number): number => Math.abs(value - 1)
  expect(off(ratio((m) => m.wetDays.mean)), 'wet days').toBeLessThan(accept.mean)
  expect(off(ratio((m) => m.rainMm.mean)), 'monthly rain').toBeLessThan(accept.mean)
  expect(off(drySpells(made).meanDays / drySpells(real).meanDays), 'mean dry spell').toBeLessThan(accept.mean)
  expect(off(ratio((m) => m.wetDays.betweenYears)), 'wet days between years').toBeLessThan(accept.spread)
  expect(off(ratio((m) => m.rainMm.betweenYears)), 'rain between years').toBeLessThan(accept.spread)
  expect(off(ratio((m) => m.meanC.betweenYears)), 'temperature between years').toBeLessThan(accept.spread)
  expect(off(ratio((m) => m.dailySpreadC)), 'temperature from day to day').toBeLessThan(accept.spread)
  a.forEach((month, i) => {
    expect(Math.abs((b[i]?.maxC ?? NaN) - month.maxC), `maximum of month ${i + 1}`).toBeLessThan(
      accept.degrees,
    )
    expect(Math.abs((b[i]?.minC ?? NaN) - month.minC), `minimum of month ${i + 1}`).toBeLessThan(
      accept.degrees,
    )
  })
}

describe('generated weather', () => {
  const real = recordOf(seattleText(), SEATTLE_LAYOUT)
  const climate = fitClimate(real, {
    latitudeDeg: 47.45,
    longitudeDeg: -122.31,
    altitudeM: 130,
    windHeightM: 10,
  })

  it('has the wet days, rain, dry spells and temperatures of Seattle (four years only: how years differ is not fitted)', () => {
    compare(real, generateDays(climate, 0, TWO_CENTURIES, 7), { mean: 0.15, spread: 0.6, degrees: 1.2 })
  })

  it('knows only what the record knows', () => {
    expect(climate.variables).toEqual(['meanC', 'logRange', 'logWind'])
    expect(generateDays(climate, 0, 3, 1).columns.radiationMJPerM2).toEqual(new Float64Array(3).fill(NaN))
  })

  it('is the same for the same seed, another for another', () => {
    const rain = (seed: number) => [...generateDays(climate, 0, 200, seed).columns.rainMm]
    expect(rain(1)).toEqual(rain(1))
    expect(rain(1)).not.toEqual(rain(2))
  })

  it('is fitted, and 30 years of its hours are made, in under five seconds', () => {
    // Time of the processor, not of the clock: other work on the machine must not fail it.
    const begun = process.cpuUsage()
    const station = { latitudeDeg: 47.45, longitudeDeg: -122.31, altitudeM: 130, windHeightM: 10 }
    const thirty = generateDays(fitClimate(real, station), 0, 10_957, 1)
    const hours = hoursOfDays(thirty, station, { fromDay: 0, days: 10_957, seed: 1 })
    expect(hours.hours).toBe(262_968)
    expect(process.cpuUsage(begun).user / 1e6).toBeLessThan(5)
  })

  it('never has a minimum over its maximum, rain below nought or wind below nought', () => {
    const { minC, maxC, rainMm, windMPerS } = generateDays(climate, 0, 20_000, 3).columns
    expect(minC.every((low, i) => low < (maxC[i] ?? NaN))).toBe(true)
    expect(rainMm.every((mm) => mm >= 0)).toBe(true)
    expect(windMPerS.every((wind) => wind >= 0)).toBe(true)
  })
})

const dublin = dublinText()

describe.skipIf(dublin === undefined)(
  dublin === undefined ? NO_DUBLIN : 'weather generated from 45 years of Dublin Airport',
  () => {
    it('has its wet days, rain, dry spells, temperatures, and how all of these vary between years', () => {
      const real = recordOf(dublin ?? '', serviceLayout(dublin ?? ''))
      const made = generateDays(fitClimate(real, DUBLIN_STATION), 0, TWO_CENTURIES, 1)
      compare(real, made, { mean: 0.05, spread: 0.15, degrees: 0.6 })
      expect(
        Math.abs(drySpells(made).threeOrMorePerYear / drySpells(real).threeOrMorePerYear - 1),
      ).toBeLessThan(0.1)
      expect(Math.abs(drySpells(made).longDays - drySpells(real).longDays)).toBeLessThanOrEqual(1)
      expect(Math.abs(yearRainMm(made).betweenYears / yearRainMm(real).betweenYears - 1)).toBeLessThan(0.2)
    })
  },
)

describe('the parts of it', () => {
  it('finds the two exponentials that amounts were drawn from', () => {
    const chance = chanceOf(5)
    const amounts = Array.from(
      { length: 40_000 },
      () => (chance.uniform() < 0.6 ? 1 : 8) * chance.exponential(),
    )
    const { share, lightMm, heavyMm } = mixedExponential(amounts)
    expect(Math.abs(share - 0.6)).toBeLessThan(0.03)
    expect(Math.abs(lightMm - 1)).toBeLessThan(0.1)
    expect(Math.abs(heavyMm - 8)).toBeLessThan(0.4)
  })

  it('draws normals of mean 0 and spread 1, exponentials of mean 1', () => {
    const chance = chanceOf(11)
    const normals = Array.from({ length: 50_000 }, () => chance.normal())
    expect(Math.abs(average(normals))).toBeLessThan(0.015)
    expect(Math.abs(average(normals.map((x) => x * x)) - 1)).toBeLessThan(0.03)
    expect(Math.abs(average(Array.from({ length: 50_000 }, () => chance.exponential())) - 1)).toBeLessThan(
      0.02,
    )
  })

  it('inverts a matrix and takes its root (by hand: [[4,2],[2,3]] has root [[2,0],[1,sqrt 2]])', () => {
    const a = [
      [4, 2],
      [2, 3],
    ]
    expect(lowerRoot(a)).toEqual([
      [2, 0],
      [1, Math.sqrt(2)],
    ])
    const root = lowerRoot(a)
    times(root, transposed(root)).forEach((row, i) =>
      row.forEach((x, j) => expect(x).toBeCloseTo(a[i]?.[j] ?? NaN, 12)),
    )
    times(
      [
        [0, 1],
        [2, 3],
      ],
      inverse([
        [0, 1],
        [2, 3],
      ]),
    ).forEach((row, i) => row.forEach((x, j) => expect(x).toBeCloseTo(i === j ? 1 : 0, 12)))
  })
})
