import { describe, expect, it } from 'vitest'
import { answerOf, errorOf } from './answer-of.ts'
import { atLeast, atMost, type Criterion } from './criterion.ts'
import { LIMITS } from './limits.ts'

const sieve = (sizeMm: number, passingPercent: number) => ({ sizeMm, passingPercent })

/** An invented sand that meets the USGA table to the last class; 0.002 and 0.05 mm by hydrometer. */
const GOOD = [
  sieve(0.002, 1),
  sieve(0.05, 2),
  sieve(0.15, 5),
  sieve(0.25, 20),
  sieve(0.5, 70),
  sieve(1, 95),
  sieve(2, 99),
  sieve(3.4, 100),
]

const compared = (dressing: unknown, rootzone: unknown, standard = 'usga') => {
  const answer = answerOf('sandGrading.compare', {
    dressing: { sieves: dressing },
    rootzone: { sieves: rootzone },
    standard,
  })
  return { pass: answer['pass'], criteria: answer['criteria'] as readonly Criterion[] }
}

describe('a sieve analysis', () => {
  it('does not depend on the order of the sieves', () => {
    expect(answerOf('sandGrading.describe', { sieves: GOOD.toReversed() })).toEqual(
      answerOf('sandGrading.describe', { sieves: GOOD }),
    )
  })

  it('has no number outside the sieves, and says why', () => {
    const answer = answerOf('sandGrading.describe', { sieves: [sieve(0.25, 20), sieve(0.5, 70)] })
    expect(answer).toMatchObject({ d10Mm: null, d90Mm: null, uniformity: null, curvature: null })
    expect(answer['reasons']).toContainEqual({
      field: 'd10Mm',
      reason: 'already 20 % passes the finest sieve of 0.25 mm',
    })
    expect(answer['reasons']).toContainEqual({
      field: 'd90Mm',
      reason: 'only 70 % passes the coarsest sieve of 0.5 mm',
    })
    expect(answer['d50Mm']).toBeCloseTo(0.25 * 2 ** 0.6, 12)
  })

  it('takes a size at a sieve as it is', () => {
    expect(answerOf('sandGrading.describe', { sieves: [sieve(0.1, 10), sieve(1, 90)] })).toMatchObject({
      d10Mm: 0.1,
      d90Mm: 1,
    })
  })

  it('adds up to the whole sample over the size classes', () => {
    const fractions = answerOf('sandGrading.describe', { sieves: GOOD })['fractions'] as readonly {
      percent: number
    }[]
    expect(fractions.reduce((sum, { percent }) => sum + percent, 0)).toBeCloseTo(100, 9)
  })

  it.each([
    [[sieve(0.25, 30), sieve(0.5, 20)], /a coarser sieve passes at least as much/u],
    [[sieve(0.25, 30), sieve(0.25, 30)], /given twice/u],
  ])('is refused when it contradicts itself', (sieves, reason) => {
    expect(errorOf('sandGrading.describe', { sieves })).toMatchObject({
      type: 'notDefined',
      field: 'sieves',
      reason: expect.stringMatching(reason) as string,
    })
  })
})

describe('a dressing sand', () => {
  it('that is the sand of the green and meets the table passes in everything', () => {
    const { pass, criteria } = compared(GOOD, GOOD)
    expect(criteria.filter((c) => c.pass !== true)).toEqual([])
    expect(pass).toBe(true)
  })

  it('shows every criterion with its value, its limit and its source', () => {
    for (const c of compared(GOOD, GOOD).criteria) {
      expect(c.value).not.toBeNull()
      expect(c.limit.min ?? c.limit.max).not.toBeNull()
      expect(c.source).toMatch(/\(\d{4}\)|\(n\.d\.\)/u)
    }
  })

  it('that is half as coarse as the green fails on size', () => {
    const finer = GOOD.map(({ sizeMm, passingPercent }) => sieve(sizeMm / 2, passingPercent))
    const { pass, criteria } = compared(finer, GOOD)
    expect(pass).toBe(false)
    expect(criteria.find((c) => c.name.startsWith('D50'))).toMatchObject({ pass: false })
  })

  it('whose sieves do not reach into silt is not judged there, and not passed as a whole', () => {
    const { pass, criteria } = compared(GOOD.slice(2), GOOD)
    expect(criteria.find((c) => c.name.startsWith('silt'))).toMatchObject({
      pass: null,
      value: null,
      reason: expect.stringMatching(/finer than the finest sieve/u) as string,
    })
    expect(pass).toBeNull()
  })

  it('is held against UK practice when asked, and against nothing but the green otherwise', () => {
    expect(compared(GOOD, GOOD, 'uk').criteria[0]?.name).toMatch(/0\.125 to 0\.710/u)
    expect(compared(GOOD, GOOD, 'none').criteria).toHaveLength(4)
  })
})

describe('the limits of the USGA table', () => {
  const atMostRows = [
    'usgaCoarserThan1',
    'usgaGravel',
    'usgaFine',
    'usgaVeryFine',
    'usgaSilt',
    'usgaClay',
    'usgaFines',
  ] as const

  it.each(atMostRows)('%s passes at the limit and fails above it', (key) => {
    const limit = LIMITS[key]
    expect(atMost(limit, { value: limit.value }).pass).toBe(true)
    expect(atMost(limit, { value: limit.value + 0.01 }).pass).toBe(false)
  })

  it('usgaMediumAndCoarse passes at the limit and fails below it', () => {
    const limit = LIMITS.usgaMediumAndCoarse
    expect(atLeast(limit, { value: limit.value }).pass).toBe(true)
    expect(atLeast(limit, { value: limit.value - 0.01 }).pass).toBe(false)
  })

  // Each sand breaks one class by one point: [finer than 2 um, 0.05, 0.15, 0.25, 0.5, 1, 2, 3.4 mm].
  it.each([
    ['clay', [4, 4.5, 6, 20, 70, 95, 99, 100], 'usgaClay'],
    ['silt', [1, 7, 9, 20, 70, 95, 99, 100], 'usgaSilt'],
    ['very fine sand', [1, 2, 8, 20, 70, 95, 99, 100], 'usgaVeryFine'],
    ['fines together', [2.5, 6.5, 11, 20, 70, 95, 99, 100], 'usgaFines'],
    ['fine sand', [1, 2, 5, 26, 70, 95, 99, 100], 'usgaFine'],
    ['medium and coarse sand', [1, 2, 9, 29, 70, 88, 97, 100], 'usgaMediumAndCoarse'],
    ['very coarse sand and gravel', [1, 2, 5, 20, 70, 89, 99, 100], 'usgaCoarserThan1'],
    ['gravel', [1, 2, 5, 20, 70, 95, 96, 100], 'usgaGravel'],
  ] as const)('find too much or too little %s', (_what, passing, key) => {
    const sizes = [0.002, 0.05, 0.15, 0.25, 0.5, 1, 2, 3.4]
    const { criteria } = compared(
      sizes.map((size, i) => sieve(size, passing[i] ?? 0)),
      GOOD,
    )
    expect(criteria.find((c) => c.name === LIMITS[key].meaning)?.pass).toBe(false)
  })
})

describe('gravel under the rootzone', () => {
  const fine = { rootzoneD85Mm: 1, rootzoneD15Mm: 0.25, gravelD15Mm: 8, gravelD90Mm: 24 }
  const gravel = (more: object) => {
    const answer = answerOf('sandGrading.gravel', { ...fine, ...more })
    return { pass: answer['pass'], criteria: answer['criteria'] as readonly Criterion[] }
  }

  it('passes at its limits', () => {
    const all = { gravelLargestMm: 12, gravelUnder2MmPercent: 10, gravelUnder1MmPercent: 5 }
    expect(gravel(all).criteria.map((c) => c.pass)).toEqual([true, true, true, true, true, true])
  })

  it.each([
    [{ gravelD15Mm: 8.1 }, 0],
    [{ rootzoneD15Mm: 1.7 }, 1],
    [{ gravelD90Mm: 24.1 }, 2],
    [{ gravelLargestMm: 12.1 }, 3],
    [{ gravelUnder2MmPercent: 10.1 }, 3],
    [{ gravelUnder1MmPercent: 5.1 }, 3],
  ])('fails just beyond a limit: %j (CR114 to CR117)', (more, which) => {
    const { pass, criteria } = gravel(more)
    expect(criteria[which]?.pass).toBe(false)
    expect(pass).toBe(false)
  })
})
