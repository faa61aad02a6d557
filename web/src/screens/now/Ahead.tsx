import { Part } from '../../parts/Page.tsx'
import { useCourse } from '../../state/course.ts'
import { usualStart } from '../../state/plan.ts'
import { prescription } from '../../state/prescription.ts'
import { sandOrders } from '../../state/sand-orders.ts'
import { SandOrderCard } from '../stores/SandOrderCard.tsx'
import { WORDS as STORE_WORDS } from '../stores/words.ts'
import { WORDS } from './words.ts'

/** Before the work: the sand order. */
export const Ahead = () => {
  const course = useCourse()
  if (prescription.value === null)
    return (
      <p>
        {WORDS.noPrescription} <a href="/prescription">{WORDS.toPrescription}</a>
      </p>
    )
  const orders = sandOrders.value?.filter((order) => order.need.highT > 0) ?? null
  return (
    <div class="wide">
      <p class="quiet">{WORDS.aheadLead}</p>
      {orders === null ? (
        <p role="status">{WORDS.working}</p>
      ) : orders.length === 0 ? (
        <p>
          {WORDS.noStores} <a href="/stores">{WORDS.toStores}</a>
        </p>
      ) : null}
      <div class="columns">
        {orders?.map((order) => (
          <Part key={order.store.id} title={`${STORE_WORDS.kinds[order.store.kind]} sand`} class="capital">
            <SandOrderCard order={order} clubName={course.name} byDate={usualStart.value} />
          </Part>
        ))}
      </div>
      <div class="row">
        <a href="/plan">{WORDS.toPlan}</a>
        <a href="/weeks">{WORDS.toWeeks}</a>
      </div>
    </div>
  )
}
