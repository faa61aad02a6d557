import { computed } from '@preact/signals'
import { tineNeeds } from '@swardwright/engine'
import { tineOrders, type TineOrder } from '../compute/tine-order.ts'
import { course } from './course.ts'
import { prescription } from './prescription.ts'

/** Tines, kind by kind: what the prescription wears against what is in the stores. */
export const tineRows = computed((): readonly TineOrder[] => {
  const [known, prescribed] = [course.value, prescription.value]
  if (known === null) return []
  return tineOrders(prescribed === null ? [] : tineNeeds(known, prescribed), known.tineSets ?? [])
})
