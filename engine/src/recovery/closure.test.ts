import { assert, double, property } from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerOf, errorOf, numberOf } from '../agronomy/answer-of.ts'

const steady = (meanC: number, count: number, more: object = {}) =>
  Array.from({ length: count }, () => ({ meanC, ...more }))

const closing = (more: object = {}) => ({ diameterMm: 12, kind: 'core', days: steady(16, 90), ...more })
const median = (more: object) => numberOf('recovery.closure', closing(more), 'daysMedian')

describe('closing of holes', () => {
  it('takes twice as long at twice the diameter, in steady weather (Landreth 2008: 1/4 in half the time of 1/2 in)', () => {
    assert(
      property(double({ min: 4, max: 20, noNaN: true }), (diameterMm) => {
        expect(median({ diameterMm: 2 * diameterMm })).toBeCloseTo(2 * median({ diameterMm }), 9)
      }),
    )
  })

  // Read in course reports and trade pages (agronomy reference, section 5); the prior must put them inside its range.
  it.each([
    ['3/8 in, May, 13 C', 9.5, 13, 14],
    ['12 mm, April, 9 C', 12, 9, 21],
    ['13 mm, August, 17 C', 13, 17, 14],
    ['9.5 mm, August, 17 C', 9.5, 17, 10],
  ])('holds the read case inside its range: %s', (_what, diameterMm, meanC, read) => {
    const answer = answerOf('recovery.closure', { diameterMm, kind: 'core', days: steady(meanC, 120) })
    expect(Number(answer['daysLow'])).toBeLessThanOrEqual(read)
    expect(Number(answer['daysHigh'])).toBeGreaterThanOrEqual(read)
  })

  it('gives low before median before high, 1.35 and 0.65 times the rate', () => {
    const answer = answerOf('recovery.closure', closing())
    expect(Number(answer['daysLow']) * 1.35).toBeCloseTo(Number(answer['daysMedian']), 9)
    expect(Number(answer['daysHigh']) * 0.65).toBeCloseTo(Number(answer['daysMedian']), 9)
  })

  it('is slower in shade, when dry and when cold, and quicker for a green with a quicker record', () => {
    const plain = median({})
    expect(median({ days: steady(16, 90, { lightShare: 0.6 }) })).toBeGreaterThan(plain)
    expect(median({ days: steady(16, 90, { moistureShare: 0.6 }) })).toBeGreaterThan(plain)
    expect(median({ days: steady(12, 90) })).toBeGreaterThan(plain)
    expect(median({ factor: 2 })).toBeCloseTo(plain / 2, 9)
  })

  it('is quicker for solid holes and slower for grooves than for cores of the same width', () => {
    expect(median({ kind: 'solid' })).toBeLessThan(median({ kind: 'core' }))
    expect(median({ kind: 'groove', diameterMm: 2 })).toBeGreaterThan(median({ kind: 'core', diameterMm: 2 }))
  })

  it('adds up changing weather day by day', () => {
    // By hand, at 20 C the edge goes 0.6 mm a day and at no light none: 5 days, 20 still, 5 more close 6 mm.
    const days = [...steady(20, 5), ...steady(20, 20, { lightShare: 0 }), ...steady(20, 10)]
    expect(median({ days })).toBeCloseTo(30, 9)
  })

  it('has no number of days when the days given are too few, and says so', () => {
    const answer = answerOf('recovery.closure', closing({ days: steady(16, 14) }))
    expect(answer).toMatchObject({
      daysHigh: null,
      reason: expect.stringMatching(/14 days given are too few/u) as string,
    })
    expect(answer['daysLow']).not.toBeNull()
  })

  it('tells the share grown over at the end of each day, never falling, full when closed', () => {
    const answer = answerOf('recovery.closure', closing())
    const cover = answer['coverByDay'] as readonly number[]
    expect(cover).toHaveLength(90)
    expect(cover.every((share, i) => i === 0 || share >= (cover[i - 1] ?? 0))).toBe(true)
    expect(cover.findIndex((share) => share >= 1)).toBe(Math.ceil(Number(answer['daysMedian'])) - 1)
  })

  it('covers a groove by its width and a hole by its area', () => {
    // By hand: half way in, a groove is half closed, a round hole three quarters.
    const half = (kind: string, diameterMm: number, perDayMm: number) => {
      const days = steady(20, 90)
      const cover = answerOf('recovery.closure', {
        diameterMm,
        kind,
        days,
        factor: diameterMm / 4 / perDayMm / 10,
      })
      return (cover['coverByDay'] as readonly number[])[9]
    }
    expect(half('core', 12, 0.6)).toBeCloseTo(0.75, 9)
    expect(half('groove', 3, (0.6 * 3) / 25.4)).toBeCloseTo(0.5, 9)
  })

  it('asks for at least one day', () => {
    expect(errorOf('recovery.closure', closing({ days: [] }))).toMatchObject({
      field: 'days',
      expected: 'a list of at least 1',
    })
  })
})
