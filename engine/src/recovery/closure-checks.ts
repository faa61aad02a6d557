import type { Check } from '../catalogue/item.ts'

const steady = (meanC: number, days: number) => Array.from({ length: days }, () => ({ meanC }))

/**
 * Worked by hand: days = (d / 2) / (0.6 sqrt(GP)). GP at 17 C 0.8618, root 0.92832; 14 C 0.5515, 0.74263; 9 C 0.1353, 0.36788;
 * 20 C 1.
 */
export const CLOSURE_CHECKS: readonly Check[] = [
  {
    id: 'august-common-practice',
    class: 'published',
    source: 'commonPractice',
    where: 'small holes in growing weather, August: 7 to 10 days (9.5 mm at 17 C)',
    input: { diameterMm: 9.5, kind: 'core', days: steady(17, 30) },
    output: 'daysMedian',
    expected: 8.5,
    tolerance: 1.5,
  },
  {
    id: 'october-half-inch',
    class: 'published',
    source: 'commonPractice',
    where: 'read in course reports: 1/2 in at 14 C in October took 14 to 21 days',
    input: { diameterMm: 12.7, kind: 'core', days: steady(14, 60) },
    output: 'daysMedian',
    expected: 17.5,
    tolerance: 3.5,
  },
  {
    id: 'half-inch-twice-quarter-inch',
    class: 'derived',
    source: 'landreth2008',
    where: '1/2 in takes twice 1/4 in: at 20 C (6.35 / 2) / 0.6 = 5.2917 and (12.7 / 2) / 0.6 = 10.5833 days',
    input: { diameterMm: 12.7, kind: 'core', days: steady(20, 30) },
    output: 'daysMedian',
    expected: 10.5833,
    tolerance: 0.0001,
  },
  {
    id: 'deep-verticut-twice-half-inch',
    class: 'derived',
    source: 'landreth2008',
    where: 'a deep verticut (3 mm) takes twice the 1/2 in core: 2 x 10.5833 = 21.1667 days at 20 C',
    input: { diameterMm: 3, kind: 'groove', days: steady(20, 60) },
    output: 'daysMedian',
    expected: 21.1667,
    tolerance: 0.0001,
  },
  {
    id: 'by-hand-17',
    class: 'derived',
    source: 'ownAssumption',
    where: 'by hand: 4.75 / (0.6 x 0.92832) = 8.528 days',
    input: { diameterMm: 9.5, kind: 'core', days: steady(17, 30) },
    output: 'daysMedian',
    expected: 8.528,
    tolerance: 0.001,
  },
  {
    id: 'cover-half-way',
    class: 'derived',
    source: 'geometry',
    where:
      'by hand: 12 mm at 20 C, after 5 days the edges have gone 3 of 6 mm: 1 - 0.5^2 = 0.75 of the area is closed',
    input: { diameterMm: 12, kind: 'core', days: steady(20, 30) },
    output: 'coverByDay[4]',
    expected: 0.75,
    tolerance: 1e-9,
  },
]
