import type { Plan } from '@swardwright/engine'
import { assumedSentences } from '@swardwright/present'
import { NumberField } from '../../parts/NumberField.tsx'
import { TextField } from '../../parts/fields.tsx'
import { greenNames, useCourse } from '../../state/course.ts'
import { planChoices, planNow } from '../../state/plan.ts'
import { WORDS } from './words.ts'

/** Start, horizon, seed and effort of the planning, and what it takes for granted. */
export const HowPlanned = ({ plan }: { readonly plan: Plan }) => {
  const { timeZone } = useCourse()
  const choices = planChoices.value
  const set = (fields: Partial<typeof choices>) => {
    planChoices.value = { ...planChoices.value, ...fields }
  }
  const assumed = assumedSentences(plan.assumed, { timeZone, greenNames: greenNames.value })
  return (
    <>
      <div class="fields">
        <TextField
          label={WORDS.start}
          type="date"
          hint={WORDS.startHint}
          value={choices.start ?? ''}
          onValue={(date) => set({ start: date === '' ? null : date })}
        />
        <NumberField
          label={WORDS.days}
          unit=""
          value={choices.days}
          min={1}
          max={60}
          whole
          onValue={(days) => set({ days })}
        />
        <NumberField
          label={WORDS.seed}
          unit=""
          hint={WORDS.seedHint}
          value={choices.seed}
          min={0}
          max={1_000_000}
          whole
          onValue={(seed) => set({ seed })}
        />
        <NumberField
          label={WORDS.schedules}
          unit=""
          value={choices.schedules}
          min={1}
          max={100_000}
          whole
          onValue={(schedules) => set({ schedules })}
        />
      </div>
      <button type="button" class="thin" onClick={() => void planNow()}>
        {WORDS.again}
      </button>
      {assumed.length === 0 ? null : (
        <div class="tight">
          <h3>{WORDS.assumed}</h3>
          <ul>
            {assumed.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      )}
    </>
  )
}
