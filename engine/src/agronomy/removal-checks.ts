import type { Check } from '../catalogue/item.ts'
import { LAYERS_TO_80_MM } from './published-profile.ts'

/** Rows that `coring.removal` must give back. */
export const CORING_REMOVAL_CHECKS: readonly Check[] = [
  {
    id: 'CR033',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'core mass removed',
    input: { coreDiameterMm: 12, acrossMm: 50, alongMm: 50, depthMm: 70, layers: LAYERS_TO_80_MM },
    output: 'dryMassGPerM2',
    expected: 4092,
    tolerance: 2,
  },
]

/** Rows that `scarifying.removal` must give back. */
export const SCARIFYING_REMOVAL_CHECKS: readonly Check[] = [
  {
    id: 'CR056',
    class: 'derived',
    source: 'geometry',
    where: '3 mm blade at 25.4 mm [geometry; consistent with CR023]',
    input: {
      bladeWidthMm: 3,
      bladeSpacingMm: 25.4,
      depthMm: 19,
      passes: 1,
      crossed: false,
      layers: LAYERS_TO_80_MM,
    },
    output: 'areaShareSummed',
    factor: 100,
    expected: 11.81,
    tolerance: 0.01,
  },
  {
    id: 'CR057',
    class: 'derived',
    source: 'ervinNichols2010',
    where: '3 mm, 25.4 mm, 19 mm deep volume',
    input: {
      bladeWidthMm: 3,
      bladeSpacingMm: 25.4,
      depthMm: 19,
      passes: 1,
      crossed: false,
      layers: LAYERS_TO_80_MM,
    },
    output: 'volumeLPerM2',
    expected: 2.25,
    tolerance: 0.01,
  },
  {
    id: 'CR059',
    class: 'derived',
    source: 'geometry',
    where: 'crossed two passes, union',
    input: {
      bladeWidthMm: 3,
      bladeSpacingMm: 25.4,
      depthMm: 19,
      passes: 2,
      crossed: true,
      layers: LAYERS_TO_80_MM,
    },
    output: 'areaShareUnion',
    factor: 100,
    expected: 22.23,
    tolerance: 0.02,
  },
]
