import { sandStoreSchema, type SandStore } from '@swardwright/engine'
import { Choice } from '../../parts/fields.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { today } from '../../state/clock.ts'
import { changeCourse } from '../../state/record.ts'
import { Deliveries } from './Deliveries.tsx'
import { WORDS } from './words.ts'

type StoreFields = Partial<Omit<SandStore, 'id'>>
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
      <Deliveries
        deliveries={store.deliveries}
        next={{ date: today.value, time: '09:00', massT: store.lorryT }}
        amount={({ massT }, change) => (
          <Measured
            schema={sandStoreSchema}
            path={['deliveries', '0', 'massT']}
            label={WORDS.mass}
            kind="sand"
            value={massT}
            onValue={(value) => change({ massT: value })}
          />
        )}
        onDeliveries={(deliveries) => void set({ deliveries })}
      />
    </>
  )
}
