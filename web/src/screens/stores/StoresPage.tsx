import type { Course } from '@swardwright/engine'
import { Fold } from '../../parts/Fold.tsx'
import { newId } from '../../parts/new-id.ts'
import { Page, Part } from '../../parts/Page.tsx'
import { useCourse } from '../../state/course.ts'
import { sandOrders } from '../../state/sand-orders.ts'
import { usualStart } from '../../state/plan.ts'
import { changeCourse } from '../../state/record.ts'
import { SandOrderCard } from './SandOrderCard.tsx'
import { StoreForm } from './StoreForm.tsx'
import { TinesPart } from './TinesPart.tsx'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'
import { decides } from '../../state/access.ts'

const AddStore = ({ course }: { readonly course: Course }) => {
  const bay = course.places.find((place) => place.kind === 'sandBay')
  if (bay === undefined) return <p>{WORDS.noBay}</p>
  const taken = course.stores.map((store) => store.id)
  const kind = course.stores.some((store) => store.kind === 'damp') ? 'kilnDried' : 'damp'
  const value = {
    id: newId(`${kind} sand`, taken),
    place: bay.id,
    kind,
    stockT: 0,
    capacityT: 40,
    lorryT: 20,
    deliveries: [],
  } as const
  return (
    <button
      type="button"
      onClick={() => void changeCourse({ part: 'stores', do: 'put', value: { ...value, deliveries: [] } })}
    >
      {WORDS.add}
    </button>
  )
}

/** Sand and tines: what is there, what it takes, what to order. */
export const StoresPage = () => {
  const course = useCourse()
  return (
    <Page title={WORDS.title} lead={WORDS.lead}>
      <div class="wide">
        {course.stores.length === 0 ? <p>{WORDS.none}</p> : null}
        <div class="columns">
          {sandOrders.value.map((order) => (
            <Part key={order.store.id} title={`${WORDS.kinds[order.store.kind]} sand`} class="capital">
              <SandOrderCard order={order} clubName={course.name} byDate={usualStart.value} />
              <Fold summary={WORDS.facts}>
                {() => (
                  <Deciding>
                    <StoreForm store={order.store} />
                    <button
                      type="button"
                      class="thin"
                      onClick={() => void changeCourse({ part: 'stores', do: 'remove', id: order.store.id })}
                    >
                      {WORDS.remove}
                    </button>
                  </Deciding>
                )}
              </Fold>
            </Part>
          ))}
        </div>
        {decides.value ? <AddStore course={course} /> : null}
        <Deciding>
          <TinesPart />
        </Deciding>
      </div>
    </Page>
  )
}
