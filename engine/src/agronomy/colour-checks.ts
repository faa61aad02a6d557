import type { Check } from '../catalogue/item.ts'

/** Rows that `turfColour.darkGreenIndex` must give back. */
export const TURF_COLOUR_DARK_GREEN_INDEX_CHECKS: readonly Check[] = [
  {
    id: 'CR101',
    class: 'memory',
    source: 'rorie2011',
    where: 'DGCI of HSB 66,88 %,100 % (yellow disc)',
    input: { hueDeg: 66, saturation: 0.88, brightness: 1 },
    output: 'index',
    expected: 0.0733,
    tolerance: 0.0001,
  },
  {
    id: 'CR102',
    class: 'memory',
    source: 'rorie2011',
    where: 'DGCI of HSB 91,38 %,42 % (green disc)',
    input: { hueDeg: 91, saturation: 0.38, brightness: 0.42 },
    output: 'index',
    expected: 0.5722,
    tolerance: 0.0001,
  },
  {
    id: 'CR103',
    class: 'derived',
    source: 'karcherRichardson2003',
    where: 'DGCI of HSB 120,0,0',
    input: { hueDeg: 120, saturation: 0, brightness: 0 },
    output: 'index',
    expected: 1,
    tolerance: 0,
  },
]
