import { IMPERIAL, METRIC, type QuantityKind } from '@swardwright/present'
import { Choice } from '../../parts/fields.tsx'
import { units } from '../../state/course.ts'
import { changeCourse } from '../../state/record.ts'
import { QUANTITY_WORDS, UNIT_WORDS, WORDS } from './words.ts'

const KINDS = Object.keys(METRIC) as readonly QuantityKind[]

/** One choice per quantity: trades mix systems, so there is no single switch. */
export const UnitChoices = () => (
  <div class="stack">
    <p class="small quiet">{WORDS.unitsLead}</p>
    {KINDS.map((kind) => (
      <Choice
        key={kind}
        label={QUANTITY_WORDS[kind]}
        value={units.value[kind]}
        options={[METRIC[kind], IMPERIAL[kind]].map((value) => ({ value, label: UNIT_WORDS[value] }))}
        onValue={(unit) => void changeCourse({ part: 'units', do: 'set', fields: { [kind]: unit } })}
      />
    ))}
  </div>
)
