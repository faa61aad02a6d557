import type { Check } from '../catalogue/item.ts'
import { LAYERS_TO_70_MM } from './published-profile.ts'

/** Rows that `organic.profileTotals` must give back. */
export const ORGANIC_PROFILE_TOTALS_CHECKS: readonly Check[] = [
  {
    id: 'CR060',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'mass of 1 m2 x 70 mm profile',
    input: { layers: LAYERS_TO_70_MM },
    output: 'dryMassGPerM2',
    expected: 90429,
    tolerance: 2,
  },
  {
    id: 'CR061',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'OM in it',
    input: { layers: LAYERS_TO_70_MM },
    output: 'organicGPerM2',
    expected: 3082,
    tolerance: 1,
  },
]

/** Rows that `organic.afterCoring` must give back. */
export const ORGANIC_AFTER_CORING_CHECKS: readonly Check[] = [
  {
    id: 'CR063',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'cored, no sand, holes open',
    input: {
      layers: LAYERS_TO_70_MM,
      coreDiameterMm: 12,
      acrossMm: 50,
      alongMm: 50,
      depthMm: 70,
      refill: 'none',
    },
    output: 'organicPercent',
    expected: 3.4,
    tolerance: 0.05,
  },
  {
    id: 'CR064',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'cored, no sand, holes collapse',
    input: {
      layers: LAYERS_TO_70_MM,
      coreDiameterMm: 12,
      acrossMm: 50,
      alongMm: 50,
      depthMm: 70,
      refill: 'collapse',
    },
    output: 'organicPercent',
    expected: 3.318,
    tolerance: 0.002,
  },
  {
    id: 'CR065',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'cored + holes filled',
    input: {
      layers: LAYERS_TO_70_MM,
      coreDiameterMm: 12,
      acrossMm: 50,
      alongMm: 50,
      depthMm: 70,
      refill: 'sand',
    },
    output: 'organicPercent',
    expected: 3.2,
    tolerance: 0.05,
  },
  {
    id: 'CR067',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'top 20 mm, cored+filled',
    input: {
      layers: LAYERS_TO_70_MM,
      coreDiameterMm: 12,
      acrossMm: 50,
      alongMm: 50,
      depthMm: 70,
      refill: 'sand',
    },
    output: 'layers[0].organicPercent',
    expected: 6.3,
    tolerance: 0.05,
  },
]

/** Rows that `organic.afterSand` must give back. */
export const ORGANIC_AFTER_SAND_CHECKS: readonly Check[] = [
  {
    id: 'CR069',
    class: 'published',
    source: 'woodsReduction2021',
    where: 'top 20 mm +2 mm sand',
    input: { organicPercent: 6.7, windowMm: 20, sandMm: 2, method: 'mass' },
    output: 'organicPercent',
    expected: 5.8,
    tolerance: 0.05,
  },
  {
    id: 'CR073',
    class: 'published',
    source: 'woodsDepth2019',
    where: 'quick rule: 8 % +1 mm sand in 20 mm',
    input: { organicPercent: 8, windowMm: 20, sandMm: 1, method: 'volume' },
    output: 'organicPercent',
    expected: 7.6,
    tolerance: 0,
  },
  {
    id: 'CR074',
    class: 'published',
    source: 'woodsDepth2019',
    where: 'quick rule: 10 mm sand on 20 mm halves OM (volume rule)',
    input: { organicPercent: 8, windowMm: 20, sandMm: 10, method: 'volume' },
    output: 'organicPercent',
    factor: 0.125,
    expected: 0.5,
    tolerance: 0,
  },
]

/** Rows that `organic.sandToHold` must give back. */
export const ORGANIC_SAND_TO_HOLD_CHECKS: readonly Check[] = [
  {
    id: 'CR075',
    class: 'derived',
    source: 'woodsRatios2026',
    where: '1 mm sand : 1 L/m2 clippings holds OM constant only at OM%',
    input: { clippingsLPerM2: 1, organicPercent: 9.58 },
    output: 'sandMm',
    factor: 9.58,
    expected: 9.58,
    tolerance: 0.02,
  },
]

/** Rows that `organic.lossOnIgnition` must give back. */
export const ORGANIC_LOSS_ON_IGNITION_CHECKS: readonly Check[] = [
  {
    id: 'CR077',
    class: 'derived',
    source: 'woodsCommonPractice2021',
    where: 'LOI: 50.00 g at 105 C -> 46.65 g [formula]',
    input: { dryMassG: 50, ashMassG: 46.65 },
    output: 'organicPercent',
    expected: 6.7,
    tolerance: 0.001,
  },
]
