import type { Check } from '../catalogue/item.ts'

/**
 * An invented sand on the usual sieves; its D-values are worked by hand in the rows below.
 */
const SAND = [
  { sizeMm: 0.05, passingPercent: 1 },
  { sizeMm: 0.15, passingPercent: 5 },
  { sizeMm: 0.25, passingPercent: 20 },
  { sizeMm: 0.5, passingPercent: 70 },
  { sizeMm: 1, passingPercent: 95 },
  { sizeMm: 2, passingPercent: 100 },
]

const COARSER = SAND.map(({ sizeMm, passingPercent }) => ({ sizeMm: sizeMm * 2, passingPercent }))

const row = (
  id: string,
  where: string,
  input: unknown,
  output: string,
  expected: number,
  tolerance: number,
): Check => ({
  id,
  class: 'derived',
  source: 'geometry',
  where,
  input,
  output,
  expected,
  tolerance,
})

/** Rows that `sandGrading.describe` must give back, worked by hand on the logarithm of the size. */
export const DESCRIBE_CHECKS: readonly Check[] = [
  row(
    'd10',
    '5 of 15 points from 0.15 to 0.25 mm: 0.15 x 1.66667^(1/3) = 0.17784',
    { sieves: SAND },
    'd10Mm',
    0.17784,
    0.00002,
  ),
  row('d15', '10 of 15 points: 0.15 x 1.66667^(2/3) = 0.21086', { sieves: SAND }, 'd15Mm', 0.21086, 0.00002),
  row(
    'd30',
    '10 of 50 points from 0.25 to 0.5 mm: 0.25 x 2^0.2 = 0.28717',
    { sieves: SAND },
    'd30Mm',
    0.28717,
    0.00002,
  ),
  row('d50', '30 of 50 points: 0.25 x 2^0.6 = 0.37893', { sieves: SAND }, 'd50Mm', 0.37893, 0.00002),
  row('d60', '40 of 50 points: 0.25 x 2^0.8 = 0.43528', { sieves: SAND }, 'd60Mm', 0.43528, 0.00002),
  row(
    'd85',
    '15 of 25 points from 0.5 to 1 mm: 0.5 x 2^0.6 = 0.75786',
    { sieves: SAND },
    'd85Mm',
    0.75786,
    0.00002,
  ),
  row('d90', '20 of 25 points: 0.5 x 2^0.8 = 0.87055', { sieves: SAND }, 'd90Mm', 0.87055, 0.00002),
  row('uniformity', '0.43528 / 0.17784 = 2.4475', { sieves: SAND }, 'uniformity', 2.4475, 0.0005),
  row('curvature', '0.28717^2 / (0.43528 x 0.17784) = 1.0653', { sieves: SAND }, 'curvature', 1.0653, 0.0005),
  row('medium', 'medium sand, 0.25 to 0.5 mm: 70 - 20', { sieves: SAND }, 'fractions[3].percent', 50, 1e-9),
]

const both = { dressing: { sieves: SAND }, rootzone: { sieves: COARSER }, standard: 'usga' }

/** Rows that `sandGrading.compare` must give back. */
export const COMPARE_CHECKS: readonly Check[] = [
  row('usga-coarse', '1.0 mm and coarser: 100 - 95 = 5 %', both, 'criteria[0].value', 5, 1e-9),
  {
    ...row('usga-limit-CR106', 'limit 10 %', both, 'criteria[0].limit.max', 10, 0),
    class: 'published',
    source: 'usgaRootzone',
  },
  row('usga-medium-coarse', '0.25 to 1.0 mm: 95 - 20 = 75 %', both, 'criteria[2].value', 75, 1e-9),
  {
    ...row('usga-limit-CR108', 'limit 60 %', both, 'criteria[2].limit.min', 60, 0),
    class: 'published',
    source: 'usgaRootzone',
  },
  row('match-d50', 'every size of the rootzone is twice: ratio 0.5', both, 'criteria[8].value', 0.5, 1e-9),
  row('match-bridging', '2 x 0.21086 / 0.75786 = 0.55646', both, 'criteria[10].value', 0.55646, 0.0001),
]

const gravel = { rootzoneD85Mm: 0.8, rootzoneD15Mm: 0.25, gravelD15Mm: 4.8, gravelD90Mm: 9.6 }

/** Rows that `sandGrading.gravel` must give back. */
export const GRAVEL_CHECKS: readonly Check[] = [
  row('gravel-bridging', '4.8 / 0.8 = 6, at most 8', gravel, 'criteria[0].value', 6, 1e-9),
  {
    ...row('gravel-limit-CR114', 'limit 8', gravel, 'criteria[0].limit.max', 8, 0),
    class: 'published',
    source: 'usgaGravel',
  },
  row('gravel-permeability', '4.8 / 0.25 = 19.2, at least 5', gravel, 'criteria[1].value', 19.2, 1e-9),
  {
    ...row('gravel-limit-CR115', 'limit 5', gravel, 'criteria[1].limit.min', 5, 0),
    class: 'published',
    source: 'usgaGravel',
  },
  row('gravel-uniformity', '9.6 / 4.8 = 2, at most 3', gravel, 'criteria[2].value', 2, 1e-9),
  {
    ...row('gravel-limit-CR116', 'limit 3', gravel, 'criteria[2].limit.max', 3, 0),
    class: 'published',
    source: 'usgaGravel',
  },
]
