import { counted, dayWords, decimal, figureOf, quantityWords, unitMark } from '@swardwright/present'
import type { SandOrder } from '../../compute/sand-order.ts'
import { CopyText } from '../../parts/CopyText.tsx'
import { Fact, Figure } from '../../parts/Figure.tsx'
import { sandBand } from '../../parts/quantity-words.ts'
import { units } from '../../state/course.ts'
import { SandBar } from './SandBar.tsx'
import { WORDS } from './words.ts'

const tonnes = (massT: number): string => quantityWords('sand', massT, units.value)

/** The sentence for the merchant. */
export const orderText = (order: SandOrder, clubName: string, byDate: string): string =>
  `${clubName}: please deliver ${decimal(order.lorriesLikely * order.store.lorryT, 1)} t of ${WORDS.kinds[order.store.kind]} top-dressing sand (${counted(order.lorriesLikely, 'lorry', 'lorries')} of ${decimal(order.store.lorryT, 1)} t), to be in our bay by ${dayWords(byDate)}. The bay takes ${decimal(order.roomT, 1)} t at once.`

/** One kind of sand: low, likely, high against the bay and whole lorry loads. */
export const SandOrderCard = (props: {
  readonly order: SandOrder
  readonly clubName: string
  readonly byDate: string
}) => {
  const { order, byDate } = props
  return (
    <div class="stack">
      <div class="figures">
        <Figure
          label={`${WORDS.need}, ${WORDS.kinds[order.store.kind]}`}
          value={figureOf('sand', order.need.likelyT, units.value)}
          unit={unitMark('sand', units.value)}
          range={sandBand(order.need)}
        />
        <Figure
          label={WORDS.order}
          value={String(order.lorriesLikely)}
          unit={order.lorriesLikely === 1 ? 'lorry' : 'lorries'}
          range={
            order.lorriesHigh === order.lorriesLikely
              ? `of ${tonnes(order.store.lorryT)}`
              : `of ${tonnes(order.store.lorryT)}; ${order.lorriesHigh} if it turns out high`
          }
        />
      </div>
      <SandBar order={order} />
      <dl class="facts">
        <Fact word={WORDS.have}>{tonnes(order.haveT)}</Fact>
        <Fact word={WORDS.coming}>{tonnes(order.comingT)}</Fact>
        <Fact word={WORDS.room}>{tonnes(order.roomT)}</Fact>
        {order.lorriesLikely === 0 ? null : <Fact word={WORDS.by}>{dayWords(byDate)}</Fact>}
      </dl>
      {order.lorriesLikely > 0 ? (
        <CopyText text={orderText(order, props.clubName, byDate)} />
      ) : (
        <p class={order.lorriesHigh > 0 ? 'ochre' : 'leaf'}>
          {order.lorriesHigh > 0 ? WORDS.maybe : WORDS.nothing}
        </p>
      )}
    </div>
  )
}
