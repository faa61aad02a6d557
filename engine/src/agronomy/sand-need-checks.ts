import type { Check } from '../catalogue/item.ts'

const PLAIN = {
  areaM2: 450,
  hole: { holeDiameterMm: 12, coreDiameterMm: 12, acrossMm: 50, alongMm: 50, depthMm: 75 },
  surfaceMm: 0,
  bulkDensityKgPerM3: 1500,
}

/**
 * Worked by hand, 500 m2: 400 holes/m2; hole 13 mm: 132.732 mm2 -> 5.30929 % x 75 = 3.98197 L/m2; core 9.5 mm: 70.8822 mm2 ->
 * 2.83529 % x 75 = 2.12647 L/m2; grooves 2/30 crossed twice: 1 - (28/30)^2 = 12.8889 % x 20 = 2.57778 L/m2; surface 1, worked back 1.
 * likely 0.85 x 3.98197 + 2.57778 = 5.96245 L/m2; x 1500 x 500 / 10^6 = 4.47184 t; + 3 % = 4.60599 t; + 5 % water = 4.83629 t.
 * low 2.12647 + 2.57778 = 4.70424 -> 3.52818 -> 3.63403 t. high 3.98197 + 2.57778 = 6.55975 -> 4.91981 -> 5.06740 t.
 */
const WHOLE = {
  areaM2: 500,
  hole: { holeDiameterMm: 13, coreDiameterMm: 9.5, acrossMm: 50, alongMm: 50, depthMm: 75 },
  grooves: { bladeWidthMm: 2, bladeSpacingMm: 30, depthMm: 20, passes: 2, crossed: true },
  surfaceMm: 1,
  workedBackLPerM2: 1,
  lossPercent: 3,
  bulkDensityKgPerM3: 1500,
  moisturePercentDryBasis: 5,
  hopperT: 0.9,
}

const row = (id: string, where: string, input: unknown, output: string, expected: number): Check => ({
  id,
  class: 'derived',
  source: 'geometry',
  where,
  input,
  output,
  expected,
  tolerance: 0.0005,
})

/** Rows that `sand.need` must give back, worked by hand from the geometry. */
export const SAND_NEED_CHECKS: readonly Check[] = [
  {
    ...row(
      'need-table',
      'trade table: 12 mm, 50 x 50, 75 mm deep, 450 m2, 1.5 t/m3: 2.29 t',
      PLAIN,
      'highT',
      2.29,
    ),
    tolerance: 0.005,
  },
  row('need-low', 'cores 2.12647 + grooves 2.57778 L/m2', WHOLE, 'lowT', 3.63403),
  row('need-likely', '0.85 x 3.98197 + 2.57778 L/m2', WHOLE, 'likelyT', 4.60599),
  row('need-high', 'holes 3.98197 + grooves 2.57778 L/m2', WHOLE, 'highT', 5.0674),
  row('need-wet', '4.60599 t with 5 % water', WHOLE, 'wetLikelyT', 4.83629),
  row('need-loads', '4.836 t in loads of 0.9 t is 5.37, so 6', WHOLE, 'loads', 6),
  row(
    'need-never-negative',
    'worked back more than the holes take: nothing',
    { ...PLAIN, workedBackLPerM2: 20 },
    'highT',
    0,
  ),
]
