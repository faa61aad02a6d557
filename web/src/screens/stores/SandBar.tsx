import { sandBar } from '@swardwright/present'
import type { SandOrder } from '../../compute/sand-order.ts'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { isWide } from '../../shell/wide.ts'
import { units } from '../../state/course.ts'

/** Tonnes low, likely, high against bay and lorry loads, drawn as one bar. */
export const SandBar = ({ order }: { readonly order: SandOrder }) => (
  <DrawingView
    drawing={sandBar({
      needT: { low: order.need.lowT, likely: order.need.likelyT, high: order.need.highT },
      stockT: order.haveT + order.comingT,
      lorryT: order.store.lorryT,
      lorries: order.lorriesLikely,
      bayT: order.store.capacityT,
      units: units.value,
      widthPx: isWide.value ? 480 : 358,
      scope: `sand-${order.store.id}`,
    })}
  />
)
