import { computed } from '@preact/signals'
import { sandOrder, type SandOrder } from '../compute/sand-order.ts'
import { course } from './course.ts'
import { figures } from './figures.ts'
import { prescription } from './prescription.ts'

const NONE = { lowT: 0, likelyT: 0, highT: 0 }

/** What to order, store by store, for what the prescription takes; null until that is worked out, so that nobody reads an order of nothing. */
export const sandOrders = computed((): readonly SandOrder[] | null => {
  if (prescription.value !== null && figures.value === null) return null
  const totals = figures.value?.totals.sand ?? []
  return (course.value?.stores ?? []).map((store) =>
    sandOrder(store, totals.find((row) => row.kind === store.kind) ?? NONE),
  )
})
