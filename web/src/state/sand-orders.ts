import { computed } from '@preact/signals'
import { sandOrder, type SandOrder } from '../compute/sand-order.ts'
import { course } from './course.ts'
import { figures } from './figures.ts'

const NONE = { lowT: 0, likelyT: 0, highT: 0 }

/** What to order, store by store, for what the prescription takes. */
export const sandOrders = computed((): readonly SandOrder[] => {
  const totals = figures.value?.totals.sand ?? []
  return (course.value?.stores ?? []).map((store) =>
    sandOrder(store, totals.find((row) => row.kind === store.kind) ?? NONE),
  )
})
