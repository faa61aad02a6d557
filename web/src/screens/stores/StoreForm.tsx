import { sandStoreSchema, type SandStore } from '@swardwright/engine'
import { Choice, TextField } from '../../parts/fields.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { today } from '../../state/clock.ts'
import { changeCourse } from '../../state/record.ts'
import { WORDS } from './words.ts'

type StoreFields = Partial<Omit<SandStore, 'id'>>
type Delivery = SandStore['deliveries'][number]

const Deliveries = (props: {
  readonly store: SandStore
  readonly onDeliveries: (deliveries: Delivery[]) => void
}) => {
  const { deliveries, lorryT } = props.store
  const change = (at: number, fields: Partial<Delivery>) =>
    props.onDeliveries(deliveries.map((one, index) => (index === at ? { ...one, ...fields } : one)))
  return (
    <fieldset class="stack">
      <legend>{WORDS.deliveries}</legend>
      {deliveries.map((delivery, at) => (
        <div class="fields" key={at}>
          <TextField
            label={WORDS.date}
            type="date"
            value={delivery.date}
            onValue={(date) => date !== '' && change(at, { date })}
          />
          <TextField
            label={WORDS.time}
            type="time"
            value={delivery.time}
            onValue={(time) => time !== '' && change(at, { time })}
          />
          <Measured
            schema={sandStoreSchema}
            path={['deliveries', '0', 'massT']}
            label={WORDS.mass}
            kind="sand"
            value={delivery.massT}
            onValue={(massT) => change(at, { massT })}
          />
          <button
            type="button"
            class="thin"
            style={{ alignSelf: 'center' }}
            onClick={() => props.onDeliveries(deliveries.filter((_, index) => index !== at))}
          >
            {WORDS.removeDelivery}
          </button>
        </div>
      ))}
      <button
        type="button"
        class="thin"
        onClick={() =>
          props.onDeliveries([...deliveries, { date: today.value, time: '09:00', massT: lorryT }])
        }
      >
        {WORDS.addDelivery}
      </button>
    </fieldset>
  )
}

/** All facts of one store. */
export const StoreForm = ({ store }: { readonly store: SandStore }) => {
  const set = (fields: StoreFields) => changeCourse({ part: 'stores', do: 'set', id: store.id, fields })
  const field = (name: 'stockT' | 'capacityT' | 'lorryT', label: string) => (
    <Measured
      schema={sandStoreSchema}
      path={[name]}
      label={label}
      kind="sand"
      value={store[name]}
      onValue={(value) => void set({ [name]: value })}
    />
  )
  return (
    <>
      <Choice
        label={WORDS.kind}
        value={store.kind}
        options={[
          { value: 'damp', label: WORDS.kinds.damp },
          { value: 'kilnDried', label: WORDS.kinds.kilnDried },
        ]}
        onValue={(kind) => void set({ kind })}
      />
      <div class="fields">
        {field('stockT', WORDS.stock)}
        {field('capacityT', WORDS.capacity)}
        {field('lorryT', WORDS.lorry)}
      </div>
      <Deliveries store={store} onDeliveries={(deliveries) => void set({ deliveries })} />
    </>
  )
}
