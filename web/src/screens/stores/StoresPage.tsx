import type { Course } from '@swardwright/engine'
import { Fold } from '../../parts/Fold.tsx'
import { newId } from '../../parts/new-id.ts'
import { Page, Part } from '../../parts/Page.tsx'
import { useCourse } from '../../state/course.ts'
import { planErrorSentence } from '../../state/error-words.ts'
import { figuresError } from '../../state/figures.ts'
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

const Order = ({ store }: { readonly store: string }) => {
  const { name } = useCourse()
  const order = sandOrders.value?.find((one) => one.store.id === store)
  if (order !== undefined) return <SandOrderCard order={order} clubName={name} byDate={usualStart.value} />
  return figuresError.value === null ? (
    <p role="status">{WORDS.working}</p>
  ) : (
    <p class="wrong">{planErrorSentence(figuresError.value)}</p>
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
          {course.stores.map((store) => (
            <Part key={store.id} title={`${WORDS.kinds[store.kind]} sand`} class="capital">
              <Order store={store.id} />
              <Fold summary={WORDS.facts}>
                {() => (
                  <Deciding>
                    <StoreForm store={store} />
                    <button
                      type="button"
                      class="thin"
                      onClick={() => void changeCourse({ part: 'stores', do: 'remove', id: store.id })}
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
