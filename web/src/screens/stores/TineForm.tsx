import { tineStoreSchema, type TineStore } from '@swardwright/engine'
import { Measured } from '../../parts/Measured.tsx'
import { Note } from '../../parts/Note.tsx'
import { today } from '../../state/clock.ts'
import { changeCourse } from '../../state/record.ts'
import { Deliveries } from './Deliveries.tsx'
import { WORDS } from './words.ts'

type TineFields = Partial<Omit<TineStore, 'id'>>

/** All facts of one entry of tine sets. */
export const TineForm = ({ store }: { readonly store: TineStore }) => {
  const set = (fields: TineFields) => changeCourse({ part: 'tineSets', do: 'set', id: store.id, fields })
  const field = (
    name: 'holeDiameterMm' | 'coreDiameterMm' | 'sets',
    label: string,
    extra: { readonly kind?: 'tine'; readonly hint?: string } = {},
  ) => (
    <Measured
      schema={tineStoreSchema}
      path={[name]}
      label={label}
      value={store[name]}
      onValue={(value) => void set({ [name]: value })}
      {...extra}
    />
  )
  return (
    <div class="stack">
      <div class="fields">
        {field('sets', WORDS.setsNow, { hint: WORDS.setsHint })}
        {field('holeDiameterMm', WORDS.hole, { kind: 'tine' })}
        {field('coreDiameterMm', WORDS.core, { kind: 'tine', hint: WORDS.coreHint })}
      </div>
      {store.coreDiameterMm < store.holeDiameterMm ? null : (
        <Note kind="rust" word="No:" live>
          {WORDS.coreTooWide}
        </Note>
      )}
      <Deliveries
        deliveries={store.deliveries}
        next={{ date: today.value, time: '09:00', sets: 1 }}
        amount={({ sets }, change) => (
          <Measured
            schema={tineStoreSchema}
            path={['deliveries', '0', 'sets']}
            label={WORDS.sets}
            value={sets}
            onValue={(value) => change({ sets: value })}
          />
        )}
        onDeliveries={(deliveries) => void set({ deliveries })}
      />
      <button
        type="button"
        class="thin"
        onClick={() => void changeCourse({ part: 'tineSets', do: 'remove', id: store.id })}
      >
        {WORDS.removeTines}
      </button>
    </div>
  )
}
