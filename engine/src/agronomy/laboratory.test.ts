import { describe, expect, it } from 'vitest'
import { compareResults, samplingDepthMm, type LaboratoryResult } from './laboratory.ts'

const result = (date: string, top: number, more: Partial<LaboratoryResult> = {}): LaboratoryResult => ({
  date,
  laboratory: 'Laboratory A',
  burnC: 440,
  verdure: 'in',
  layers: [
    { fromMm: 0, toMm: 20, organicPercent: top },
    { fromMm: 20, toMm: 40, organicPercent: 3.1 },
  ],
  ...more,
})

const before = result('2025-07-01', 7.3)

describe('two laboratory results of one green', () => {
  it('are set side by side when the method is the same', () => {
    const compared = compareResults(before, result('2026-07-01', 6.8))
    expect(compared).toMatchObject({
      ok: true,
      value: {
        days: 365,
        anotherLaboratory: false,
        layers: [{ fromMm: 0, toMm: 20, earlierPercent: 7.3, laterPercent: 6.8 }, {}],
      },
    })
    expect(compared.ok && compared.value.layers[0]?.changePoints).toBeCloseTo(-0.5, 12)
  })

  it.each([
    ['burnC', { burnC: 360 }, '440 C', '360 C'],
    ['verdure', { verdure: 'out' }, 'in', 'out'],
    ['layers', { layers: [{ fromMm: 0, toMm: 25, organicPercent: 6 }] }, '0-20, 20-40 mm', '0-25 mm'],
    ['burnC', { burnC: undefined }, '440 C', 'not stated'],
  ] as const)('are refused when %s differs', (what, more, earlier, later) => {
    expect(compareResults(before, result('2026-07-01', 6.8, more))).toEqual({
      ok: false,
      error: { type: 'differentMethod', differences: [{ what, earlier, later }] },
    })
  })

  it('are refused when neither states its method', () => {
    const bare = { burnC: undefined, verdure: undefined }
    const compared = compareResults(result('2025-07-01', 7, bare), result('2026-07-01', 7, bare))
    expect(compared).toMatchObject({
      ok: false,
      error: { differences: [{ what: 'burnC' }, { what: 'verdure' }] },
    })
  })

  it('are compared between laboratories of one method, and it says so', () => {
    const compared = compareResults(before, result('2026-07-01', 6.8, { laboratory: 'Laboratory B' }))
    expect(compared).toMatchObject({ ok: true, value: { anotherLaboratory: true } })
  })

  it.each(['2025-07-01', '2024-07-01', 'in summer'])('are refused when the later one is of %s', (date) => {
    expect(compareResults(before, result(date, 6.8))).toMatchObject({
      ok: false,
      error: { type: 'datesOutOfOrder' },
    })
  })

  it('are refused when layers leave a gap', () => {
    const gap = result('2026-07-01', 6, {
      layers: [
        { fromMm: 0, toMm: 20, organicPercent: 6 },
        { fromMm: 30, toMm: 40, organicPercent: 3 },
      ],
    })
    expect(compareResults(before, gap)).toMatchObject({
      ok: false,
      error: { type: 'badLayers', which: 'later' },
    })
  })

  it('end at their sampling depth', () => {
    expect(samplingDepthMm(before)).toBe(40)
  })
})
