import { describe, expect, it } from 'vitest'
import { forecastOfTruth } from './back-test.ts'
import { rainChance, windowChance } from './ensemble.ts'
import { DUBLIN_STATION, SEATTLE_LAYOUT, seattleText } from './fixtures/records.ts'
import { unknownHours } from './hand-typed.ts'
import { readHistory } from './history.ts'
import { hoursOfDays } from './hours-of-days.ts'

const four = (rainMm: readonly number[]) => ({
  ...unknownHours(0, 3),
  members: 4,
  rainMm: Float64Array.from(rainMm),
})

describe('chances from an ensemble', () => {
  // Four members, three hours, by hand.
  const weather = four([0, 0.2, 1, 0, 0, NaN, 0, 0.5, 0, 0.1, 0, 0])

  it('of rain in an hour are the share of members that have it', () => {
    expect([...rainChance(weather, 0.2)]).toEqual([0, 0.5, 1 / 3])
    expect([...rainChance(four(Array.from({ length: 12 }, () => NaN)), 0.2)]).toEqual([NaN, NaN, NaN])
  })

  it('of a window are the share of members in which all its hours can be worked', () => {
    const workable = [
      [1, 1, 0],
      [1, 1, 1],
      [0, 1, 1],
      [1, 0, 1],
    ].map((row) => Uint8Array.from(row))
    const chance = (length: number) => [
      ...windowChance(weather, length, (m) => workable[m] ?? new Uint8Array(3)),
    ]
    expect(chance(1)).toEqual([0.75, 0.75, 0.75])
    expect(chance(2)).toEqual([0.5, 0.5, NaN])
    expect(chance(3)).toEqual([0.25, NaN, NaN])
  })
})

describe('a forecast made from a true record', () => {
  const history = readHistory(seattleText(), SEATTLE_LAYOUT)
  if (!history.ok) throw new Error('record not readable')
  const { record } = history.value
  const station = { ...DUBLIN_STATION, latitudeDeg: 47.45, longitudeDeg: -122.31, altitudeM: 130 }
  const DAYS = 10

  /** Chance of a wet day (1 mm) by lead day, with what came, for 70 issue days of the last three years. */
  const pairs = Array.from({ length: 70 }, (_, k) => {
    const issuedDay = record.startDay + 400 + k * 14
    const forecast = forecastOfTruth(record, station, {
      issuedDay,
      days: DAYS,
      members: 20,
      seed: 5,
      truthSeed: 1,
    })
    const truth = hoursOfDays(record, station, { fromDay: issuedDay, days: DAYS, seed: 1 })
    const sum = (column: Float64Array, at: number) => column.subarray(at, at + 24).reduce((a, b) => a + b, 0)
    return Array.from({ length: DAYS }, (_, d) => {
      const wet = Array.from({ length: 20 }, (_, m) =>
        sum(forecast.rainMm, m * forecast.hours + d * 24) >= 1 ? 1 : 0,
      )
      return {
        chance: wet.reduce<number>((a, b) => a + b, 0) / 20,
        came: sum(truth.rainMm, d * 24) >= 1 ? 1 : 0,
      }
    })
  })
  const brier = (day: number): number =>
    pairs.reduce((s, row) => s + ((row[day]?.chance ?? NaN) - (row[day]?.came ?? NaN)) ** 2, 0) / pairs.length

  it('is good for tomorrow and worth no more than the climate after nine days', () => {
    const wet = pairs.flat().reduce((s, { came }) => s + came, 0) / pairs.flat().length
    const climate = wet * (1 - wet)
    expect(brier(0)).toBeLessThan(0.5 * climate)
    expect(brier(0)).toBeLessThan(brier(4))
    expect(brier(9)).toBeGreaterThan(0.8 * climate)
  })

  it('means what it says: of days given a 10 to 40 or a 60 to 90 % chance, about so many are wet', () => {
    const within = (low: number, high: number) => {
      const chosen = pairs.flat().filter(({ chance }) => chance >= low && chance <= high)
      const mean = (read: (p: (typeof chosen)[number]) => number) =>
        chosen.reduce((s, p) => s + read(p), 0) / chosen.length
      expect(chosen.length).toBeGreaterThan(40)
      return mean(({ came }) => came) - mean(({ chance }) => chance)
    }
    expect(Math.abs(within(0.1, 0.4))).toBeLessThan(0.15)
    expect(Math.abs(within(0.6, 0.9))).toBeLessThan(0.15)
  })

  it('is the same for the same seed', () => {
    const rain = (seed: number) => [
      ...forecastOfTruth(record, station, {
        issuedDay: record.startDay + 800,
        days: 5,
        members: 3,
        seed,
        truthSeed: 1,
      }).rainMm,
    ]
    expect(rain(1)).toEqual(rain(1))
    expect(rain(1)).not.toEqual(rain(2))
  })
})
