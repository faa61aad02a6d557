import type { Course, TineStore } from '@swardwright/engine'
import { counted, decimal, setsWords, tineName } from '@swardwright/present'
import type { TineOrder } from '../../compute/tine-order.ts'
import { Fact, Figure } from '../../parts/Figure.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { newId } from '../../parts/new-id.ts'
import { Part } from '../../parts/Page.tsx'
import { units, useCourse } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { tineRows } from '../../state/tine-orders.ts'
import { TineForm } from './TineForm.tsx'
import { WORDS } from './words.ts'

type Tine = Pick<TineStore, 'holeDiameterMm' | 'coreDiameterMm'>

/** Takes a kind of tine into the stores, with none in stock yet. */
const countTines = (course: Course, { holeDiameterMm, coreDiameterMm }: Tine): void => {
  const taken = [...course.stores, ...(course.tineSets ?? [])].map(({ id }) => id)
  const id = newId(`tines ${holeDiameterMm} ${coreDiameterMm}`, taken)
  const value = { id, holeDiameterMm, coreDiameterMm, sets: 0, deliveries: [] }
  void changeCourse({ part: 'tineSets', do: 'put', value })
}

const Counted = ({ row }: { readonly row: TineOrder }) => (
  <>
    <dl class="facts">
      <Fact word={WORDS.inStock}>{setsWords(row.haveSets)}</Fact>
      <Fact word={WORDS.coming}>{setsWords(row.comingSets)}</Fact>
    </dl>
    <p class={row.orderSets > 0 ? 'ochre' : 'leaf'}>
      {row.orderSets > 0 ? WORDS.tinesShort : WORDS.tinesEnough}
    </p>
    <Fold summary={WORDS.tineFacts}>
      {() => row.stores.map((store) => <TineForm key={store.id} store={store} />)}
    </Fold>
  </>
)

const Uncounted = ({ row, course }: { readonly row: TineOrder; readonly course: Course }) => (
  <>
    <p class="quiet">{WORDS.tinesUncounted}</p>
    <button type="button" onClick={() => countTines(course, row)}>
      {WORDS.countThese}
    </button>
  </>
)

const TineRow = ({ row, course }: { readonly row: TineOrder; readonly course: Course }) => (
  <Part title={tineName(row, units.value)}>
    <div class="stack">
      <div class="figures">
        <Figure
          label={WORDS.worn}
          value={decimal(row.needSets, 1)}
          unit={WORDS.sets.toLowerCase()}
          range={row.greens === 0 ? WORDS.notAsked : `on ${counted(row.greens, 'green', 'greens')}`}
        />
        {row.stores.length === 0 ? null : (
          <Figure
            label={WORDS.order}
            value={String(row.orderSets)}
            unit={row.orderSets === 1 ? 'set' : 'sets'}
            range={row.orderSets === 0 ? '' : WORDS.wholeSets}
          />
        )}
      </div>
      {row.stores.length === 0 ? <Uncounted row={row} course={course} /> : <Counted row={row} />}
    </div>
  </Part>
)

/** Tine sets: what the prescription wears, what is there, what to order. */
export const TinesPart = () => {
  const course = useCourse()
  const rows = tineRows.value
  return (
    <section class="wide" aria-label={WORDS.tines}>
      <h2>{WORDS.tines}</h2>
      <p class="small quiet">{WORDS.tinesLead}</p>
      <div class="columns">
        {rows.map((row) => (
          <TineRow key={`${row.holeDiameterMm}/${row.coreDiameterMm}`} row={row} course={course} />
        ))}
      </div>
      <button type="button" onClick={() => countTines(course, { holeDiameterMm: 12, coreDiameterMm: 9 })}>
        {WORDS.addTines}
      </button>
    </section>
  )
}
