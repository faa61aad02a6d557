import { sandBar } from '@swardwright/present'
import type { SandOrder } from '../../compute/sand-order.ts'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { isWide } from '../../shell/wide.ts'
import { units } from '../../state/course.ts'

/** Deliveries agreed are lorry loads like those to order; where they are not whole loads they are drawn with what lies there. */
const arriving = (order: SandOrder): { readonly stockT: number; readonly lorries: number } => {
  const agreed = order.comingT / order.store.lorryT
  return Number.isInteger(agreed)
    ? { stockT: order.haveT, lorries: order.lorriesLikely + agreed }
    : { stockT: order.haveT + order.comingT, lorries: order.lorriesLikely }
}

/** Tonnes low, likely, high against bay and lorry loads, drawn as one bar. */
export const SandBar = ({ order }: { readonly order: SandOrder }) => (
  <DrawingView
    drawing={sandBar({
      needT: { low: order.need.lowT, likely: order.need.likelyT, high: order.need.highT },
      ...arriving(order),
      lorryT: order.store.lorryT,
      bayT: order.store.capacityT,
      units: units.value,
      widthPx: isWide.value ? 480 : 358,
      scope: `sand-${order.store.id}`,
    })}
  />
)
