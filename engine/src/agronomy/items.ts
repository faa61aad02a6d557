import type { Item } from '../catalogue/item.ts'
import { RECOVERY_ITEMS } from '../recovery/closure.ts'
import { clippingsVolume } from './clippings.ts'
import { COMPOST_ITEMS } from './compost.ts'
import { coringRemoval } from './coring.ts'
import { sandGradingCompare, sandGradingGravel } from './grading-compare.ts'
import { GROWTH_NITROGEN_ITEMS } from './growth-nitrogen.ts'
import { GROWTH_ITEMS } from './growth.ts'
import { NUTRITION_ITEMS } from './nutrition.ts'
import { ORGANIC_CORING_ITEMS } from './organic-coring.ts'
import { ORGANIC_SAND_ITEMS } from './organic-sand.ts'
import { ORGANIC_STATE_ITEMS } from './organic.ts'
import { READING_ITEMS } from './readings.ts'
import { sandGradingDescribe } from './sand-grading.ts'
import { SAND_MOISTURE_ITEMS } from './sand-moisture.ts'
import { sandNeed } from './sand-need.ts'
import { SAND_RATE_ITEMS } from './sand-rates.ts'
import { scarifyingRemoval } from './scarifying.ts'
import { seedRate } from './seed.ts'
import { tiningMixedBlock } from './tine-block.ts'
import { tinesWear } from './tine-wear.ts'
import { TINING_ITEMS } from './tining.ts'
import { TURF_COLOUR_ITEMS } from './turf-colour.ts'
import { surfaceYearTotal } from './year-total.ts'

/** Every calculation of the agronomy and recovery rooms, in the order shown to people. */
export const AGRONOMY_ITEMS: readonly Item[] = [
  ...TINING_ITEMS,
  tiningMixedBlock,
  surfaceYearTotal,
  tinesWear,
  coringRemoval,
  scarifyingRemoval,
  ...ORGANIC_STATE_ITEMS,
  ...ORGANIC_SAND_ITEMS,
  ...ORGANIC_CORING_ITEMS,
  ...SAND_RATE_ITEMS,
  ...SAND_MOISTURE_ITEMS,
  sandNeed,
  sandGradingDescribe,
  sandGradingCompare,
  sandGradingGravel,
  ...GROWTH_ITEMS,
  ...GROWTH_NITROGEN_ITEMS,
  clippingsVolume,
  ...RECOVERY_ITEMS,
  ...TURF_COLOUR_ITEMS,
  ...NUTRITION_ITEMS,
  ...COMPOST_ITEMS,
  seedRate,
  ...READING_ITEMS,
]
