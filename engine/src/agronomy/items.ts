import type { Item } from '../catalogue/item.ts'
import { coringRemoval } from './coring.ts'
import { GROWTH_ITEMS } from './growth.ts'
import { SAND_MOISTURE_ITEMS } from './sand-moisture.ts'
import { sandNeed } from './sand-need.ts'
import { SAND_RATE_ITEMS } from './sand-rates.ts'
import { scarifyingRemoval } from './scarifying.ts'
import { tiningMixedBlock } from './tine-block.ts'
import { TINING_ITEMS } from './tining.ts'
import { surfaceYearTotal } from './year-total.ts'

/** Every calculation of the agronomy room, in the order shown to people. */
export const AGRONOMY_ITEMS: readonly Item[] = [
  ...TINING_ITEMS,
  tiningMixedBlock,
  surfaceYearTotal,
  coringRemoval,
  scarifyingRemoval,
  ...SAND_RATE_ITEMS,
  ...SAND_MOISTURE_ITEMS,
  sandNeed,
  ...GROWTH_ITEMS,
]
