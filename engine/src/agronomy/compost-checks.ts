import type { Check } from '../catalogue/item.ts'

/** Rows that `compost.moisture` must give back. */
export const COMPOST_MOISTURE_CHECKS: readonly Check[] = [
  {
    id: 'CR128',
    class: 'published',
    source: 'cornellMoisture',
    where: 'moisture of clippings 10 g -> 2.3 g dry',
    input: { wetMassG: 10, dryMassG: 2.3 },
    output: 'moisturePercent',
    expected: 77,
    tolerance: 0,
  },
]

/** Rows that `compost.mix` must give back. */
export const COMPOST_MIX_CHECKS: readonly Check[] = [
  {
    id: 'CR130',
    class: 'memory',
    source: 'cornellRatio',
    where: 'C:N of that mix (2.4 % N,45 % C; 0.75 % N,50 % C)',
    input: {
      materials: [
        { massKg: 10, moisturePercent: 77, carbonPercent: 45, nitrogenPercent: 2.4 },
        { massKg: 6.8, moisturePercent: 35, carbonPercent: 50, nitrogenPercent: 0.75 },
      ],
    },
    output: 'carbonToNitrogen',
    expected: 37,
    tolerance: 0.5,
  },
]

/** Rows that `compost.massForRatio` must give back. */
export const COMPOST_MASS_FOR_RATIO_CHECKS: readonly Check[] = [
  {
    id: 'CR131',
    class: 'memory',
    source: 'cornellRatio',
    where: 'leaves for C:N 30 (same data)',
    input: {
      have: { massKg: 10, moisturePercent: 77, carbonPercent: 45, nitrogenPercent: 2.4 },
      add: { moisturePercent: 35, carbonPercent: 50, nitrogenPercent: 0.75 },
      carbonToNitrogen: 30,
    },
    output: 'massKg',
    expected: 3.5,
    tolerance: 0.05,
  },
]
