import type { SourceId } from '../catalogue/sources.ts'

/** A figure of a standard or a published guide that something is held against. */
export type Limit = {
  /** Number of the row in the reference list. */
  readonly id: string
  readonly value: number
  readonly unit: string
  readonly source: SourceId
  /** What is held against it. */
  readonly meaning: string
}

const limit = (id: string, value: number, unit: string, source: SourceId, meaning: string): Limit => ({
  id,
  value,
  unit,
  source,
  meaning,
})

/** Published limits, each read in the source named. Gradings are in percent by mass, shares of surface in percent a year. */
export const LIMITS = {
  yearShareLow: limit(
    'CR028',
    15,
    '%',
    'woodsCoreOrNot2019',
    'surface opened in a year, lower end of the guide',
  ),
  yearShareHigh: limit(
    'CR029',
    20,
    '%',
    'woodsCoreOrNot2019',
    'surface opened in a year, upper end of the guide',
  ),
  growthForDisruption: limit(
    'CR092',
    0.5,
    '1',
    'growthPotentials',
    'growth potential above which greens are opened up',
  ),
  growthVeryLow: limit(
    'CR093',
    0.1,
    '1',
    'growthPotentials',
    'growth potential at or below which growth is extremely limited',
  ),
  bentMonthlyNitrogen: limit(
    'CR094',
    3,
    'g/m2',
    'woodsAnnualN2015',
    'most nitrogen that bent uses in a month',
  ),
  usgaCoarserThan1: limit('CR106', 10, '%', 'usgaRootzone', '1.0 to 3.4 mm, at most'),
  usgaGravel: limit('CR107', 3, '%', 'usgaRootzone', '2.0 to 3.4 mm, at most'),
  usgaMediumAndCoarse: limit('CR108', 60, '%', 'usgaRootzone', '0.25 to 1.0 mm, at least'),
  usgaFine: limit('CR109', 20, '%', 'usgaRootzone', '0.15 to 0.25 mm, at most'),
  usgaVeryFine: limit('CR110', 5, '%', 'usgaRootzone', '0.05 to 0.15 mm, at most'),
  usgaSilt: limit('CR111', 5, '%', 'usgaRootzone', 'silt, 0.002 to 0.05 mm, at most'),
  usgaClay: limit('CR112', 3, '%', 'usgaRootzone', 'clay, under 0.002 mm, at most'),
  usgaFines: limit('CR113', 10, '%', 'usgaRootzone', 'very fine sand, silt and clay together, at most'),
  gravelBridging: limit('CR114', 8, '1', 'usgaGravel', 'D15 of the gravel over D85 of the rootzone, at most'),
  gravelPermeability: limit(
    'CR115',
    5,
    '1',
    'usgaGravel',
    'D15 of the gravel over D15 of the rootzone, at least',
  ),
  gravelUniformity: limit('CR116', 3, '1', 'usgaGravel', 'D90 over D15 of the gravel, at most'),
  gravelUnder2: limit('CR117', 10, '%', 'usgaGravel', 'gravel finer than 2 mm, at most'),
  gravelUnder1: limit('CR117', 5, '%', 'usgaGravel', 'gravel finer than 1 mm, at most'),
  gravelLargest: limit('agronomy 7', 12, 'mm', 'usgaGravel', 'largest stone in the gravel, at most'),
} as const satisfies Record<string, Limit>
