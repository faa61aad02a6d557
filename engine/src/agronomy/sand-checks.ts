import type { Check } from '../catalogue/item.ts'

/** Rows that `sand.massFromDepth` must give back. */
export const SAND_MASS_FROM_DEPTH_CHECKS: readonly Check[] = [
  {
    id: 'CR035',
    class: 'derived',
    source: 'woodsReduction2021',
    where: 'sand mass to fill at 1.56',
    input: { depthMm: 3.16673, bulkDensityKgPerM3: 1560 },
    output: 'massKgPerM2',
    factor: 1000,
    expected: 4940,
    tolerance: 5,
  },
]

/** Rows that `sand.depthFromMass` must give back. */
export const SAND_DEPTH_FROM_MASS_CHECKS: readonly Check[] = [
  {
    id: 'CR041',
    class: 'published',
    source: 'woodsExactDepth2020',
    where: '400 g sand on 2000 cm2 at 1.5 g/cm3',
    input: { massKgPerM2: 2, bulkDensityKgPerM3: 1500 },
    output: 'depthMm',
    expected: 1.3,
    tolerance: 0.05,
  },
]

/** Rows that `sand.convertRate` must give back. */
export const SAND_CONVERT_RATE_CHECKS: readonly Check[] = [
  {
    id: 'CR042',
    class: 'published',
    source: 'woodsSandGrowth2017',
    where: '1 mm over 1 m2',
    input: { value: 1, unit: 'mm', bulkDensityKgPerM3: 1500 },
    output: 'litresPerM2',
    expected: 1,
    tolerance: 0,
  },
  {
    id: 'CR043',
    class: 'published',
    source: 'woodsSandGrowth2017',
    where: '1 mm at 1.5 g/cm3',
    input: { value: 1, unit: 'mm', bulkDensityKgPerM3: 1500 },
    output: 'massKgPerM2',
    expected: 1.5,
    tolerance: 0,
  },
  {
    id: 'CR044',
    class: 'published',
    source: 'woodsSandGrowth2017',
    where: '75 kg/100 m2 at 1.5',
    input: { value: 0.75, unit: 'kg/m2', bulkDensityKgPerM3: 1500 },
    output: 'depthMm',
    expected: 0.5,
    tolerance: 0.005,
  },
  {
    id: 'CR046',
    class: 'published',
    source: 'woodsExactDepth2020',
    where: '115 ft3/1000 ft2',
    input: { value: 115, unit: 'ft3/1000ft2' },
    output: 'depthMm',
    expected: 35,
    tolerance: 0.1,
  },
  {
    id: 'CR047',
    class: 'published',
    source: 'woodsCoreOrNot2019',
    where: '40 ft3/1000 ft2',
    input: { value: 40, unit: 'ft3/1000ft2' },
    output: 'depthMm',
    expected: 12,
    tolerance: 0.3,
  },
  {
    id: 'CR048',
    class: 'published',
    source: 'woodsCoreOrNot2019',
    where: '50 ft3/1000 ft2',
    input: { value: 50, unit: 'ft3/1000ft2' },
    output: 'depthMm',
    expected: 15,
    tolerance: 0.3,
  },
]

/** Rows that `sand.bulking` must give back. */
export const SAND_BULKING_CHECKS: readonly Check[] = [
  {
    id: 'CR054',
    class: 'published',
    source: 'bulkingNotes',
    where: 'bulking test 200 mm damp -> 160 mm flooded',
    input: { dampHeightMm: 200, floodedHeightMm: 160 },
    output: 'bulkingPercent',
    expected: 25,
    tolerance: 0,
  },
]
