import { LIMITS } from './limits.ts'
import { atLeast, atMost, criterion, ratioOf, type Criterion } from './criterion.ts'
import { betweenPercent, sieveReads, type Read, type SieveCurve } from './sieve-curve.ts'
import { USGA_SIZE_CLASSES } from './size-classes.ts'

/** Standards that a dressing sand can be held against. */
export const STANDARDS = ['usga', 'uk', 'none'] as const

/** One of the standards; 'none' compares the two sands only. */
export type Standard = (typeof STANDARDS)[number]

/** USGA rootzone particle sizes (edition before 2018): rows CR106 to CR113. */
export const usgaCriteria = (sand: SieveCurve): readonly Criterion[] => [
  atMost(LIMITS.usgaCoarserThan1, betweenPercent(sand, 1, 3.4)),
  atMost(LIMITS.usgaGravel, betweenPercent(sand, 2, 3.4)),
  atLeast(LIMITS.usgaMediumAndCoarse, betweenPercent(sand, 0.25, 1)),
  atMost(LIMITS.usgaFine, betweenPercent(sand, 0.15, 0.25)),
  atMost(LIMITS.usgaVeryFine, betweenPercent(sand, 0.05, 0.15)),
  atMost(LIMITS.usgaSilt, betweenPercent(sand, 0.002, 0.05)),
  atMost(LIMITS.usgaClay, betweenPercent(sand, 0, 0.002)),
  atMost(LIMITS.usgaFines, betweenPercent(sand, 0, 0.15)),
]

/** Largest of several readings; no number when one is missing. */
const largestOf = (reads: readonly Read[]): Read => {
  const gap = reads.find((read) => read.value === null)
  return gap ?? { value: Math.max(...reads.map((read) => read.value ?? 0)) }
}

/** UK practice: sand within 0.125 to 0.710 mm, medium sand the largest class (trade magazine; 90 % is our reading of 'within'). */
export const ukCriteria = (sand: SieveCurve): readonly Criterion[] => {
  const { medium, fine, coarse } = USGA_SIZE_CLASSES
  const share = ({ fromMm, toMm }: { readonly fromMm: number; readonly toMm: number }) =>
    betweenPercent(sand, fromMm, toMm)
  return [
    criterion(
      { name: '0.125 to 0.710 mm, at least', unit: '%', source: 'ukSand', limit: { min: 90, max: null } },
      betweenPercent(sand, 0.125, 0.71),
    ),
    criterion(
      {
        name: 'medium sand (0.25 to 0.5 mm) over the larger of fine and coarse, at least',
        unit: '1',
        source: 'ukSand',
        limit: { min: 1, max: null },
      },
      ratioOf(share(medium), largestOf([share(fine), share(coarse)])),
    ),
  ]
}

/** Widest gap between two sands in one size class, points of percent. */
const widestGap = (a: SieveCurve, b: SieveCurve): Read =>
  largestOf(
    Object.values(USGA_SIZE_CLASSES)
      .filter(({ fromMm }) => fromMm >= 0.05)
      .map(({ fromMm, toMm }): Read => {
        const [one, other] = [betweenPercent(a, fromMm, toMm), betweenPercent(b, fromMm, toMm)]
        if (one.value === null) return one
        return other.value === null ? other : { value: Math.abs(one.value - other.value) }
      }),
  )

/**
 * How a dressing sand suits the layer it lies on. No published tolerance was found: size ratio and gap are our own placeholders;
 * bridging borrows the published gravel criterion for the same question, whether fine grains stay on top of coarse ones.
 */
export const matchCriteria = (dressing: SieveCurve, rootzone: SieveCurve): readonly Criterion[] => {
  const [on, under] = [sieveReads(dressing), sieveReads(rootzone)]
  const own = 'ownAssumption' as const
  return [
    criterion(
      {
        name: 'D50 of the dressing over D50 of the rootzone',
        unit: '1',
        source: own,
        limit: { min: 0.8, max: 1.25 },
      },
      ratioOf(on.d50Mm, under.d50Mm),
    ),
    criterion(
      {
        name: 'widest gap in one size class (0.05 to 3.4 mm), at most',
        unit: '%',
        source: own,
        limit: { min: null, max: 10 },
      },
      widestGap(dressing, rootzone),
    ),
    criterion(
      {
        name: 'bridging: D15 of the rootzone over D85 of the dressing, at most',
        unit: '1',
        source: LIMITS.gravelBridging.source,
        limit: { min: null, max: LIMITS.gravelBridging.value },
      },
      ratioOf(under.d15Mm, on.d85Mm),
    ),
    criterion(
      {
        name: 'permeability: D15 of the dressing over D15 of the rootzone, at least',
        unit: '1',
        source: own,
        limit: { min: 0.8, max: null },
      },
      ratioOf(on.d15Mm, under.d15Mm),
    ),
  ]
}

/** The criteria of a standard for one sand. */
export const standardCriteria = (standard: Standard, sand: SieveCurve): readonly Criterion[] => {
  if (standard === 'usga') return usgaCriteria(sand)
  return standard === 'uk' ? ukCriteria(sand) : []
}
