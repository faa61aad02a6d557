import {
  OPERATIONS,
  prescriptionSchema,
  type Effect,
  type Operation,
  type PrescriptionGroup,
} from '@swardwright/engine'
import { EFFECT_WORDS, listed, TASK_WORDS } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { Select, Tick } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { withAdded, withMoved, withoutStep, withStep, type Step } from './edit.ts'
import { WORDS } from './words.ts'

const EFFECTS = Object.keys(EFFECT_WORDS) as readonly Effect[]

type Edit = { readonly group: PrescriptionGroup; readonly onGroup: (group: PrescriptionGroup) => void }

const stepWords = (step: Step): string =>
  listed([
    ...(step.passes > 1 ? [`${step.passes} passes`] : []),
    ...step.effects.map((effect) => EFFECT_WORDS[effect]),
    ...(step.drySand === true ? ['sand dry first'] : []),
    ...(step.nextDay === true ? ['on a later day'] : []),
  ])

const StepForm = ({ step, at, group, onGroup }: Edit & { readonly step: Step; readonly at: number }) => {
  const set = (fields: Partial<Step>) => onGroup(withStep(group, at, (one) => ({ ...one, ...fields })))
  return (
    <>
      <div class="fields">
        <Measured
          schema={prescriptionSchema}
          path={['groups', '0', 'chain', '0', 'passes']}
          label={WORDS.passes}
          value={step.passes}
          onValue={(passes) => set({ passes })}
        />
        <Measured
          schema={prescriptionSchema}
          path={['groups', '0', 'chain', '0', 'waitMin']}
          label={WORDS.wait}
          value={step.waitMin ?? 0}
          onValue={(waitMin) => set({ waitMin })}
        />
      </div>
      <div class="fields">
        {EFFECTS.map((effect) => (
          <Tick
            key={effect}
            label={EFFECT_WORDS[effect]}
            checked={step.effects.includes(effect)}
            onValue={(has) =>
              set({ effects: EFFECTS.filter((one) => (one === effect ? has : step.effects.includes(one))) })
            }
          />
        ))}
        <Tick label={WORDS.drySand} checked={step.drySand === true} onValue={(drySand) => set({ drySand })} />
        <Tick label={WORDS.nextDay} checked={step.nextDay === true} onValue={(nextDay) => set({ nextDay })} />
      </div>
      <div class="row">
        <button
          type="button"
          class="thin"
          disabled={at === 0}
          onClick={() => onGroup(withMoved(group, at, -1))}
        >
          {WORDS.up}
        </button>
        <button
          type="button"
          class="thin"
          disabled={at === group.chain.length - 1}
          onClick={() => onGroup(withMoved(group, at, 1))}
        >
          {WORDS.down}
        </button>
        <button
          type="button"
          class="thin"
          disabled={group.chain.length === 1}
          onClick={() => onGroup(withoutStep(group, at))}
        >
          {WORDS.removeStep}
        </button>
      </div>
    </>
  )
}

/** The ordered steps of a group, from the closed set of operations. */
export const ChainEditor = ({ group, onGroup }: Edit) => {
  const [next, setNext] = useState<Operation>('roll')
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.chainLead}</p>
      <ol>
        {group.chain.map((step, at) => (
          <li key={`${at} ${step.operation}`}>
            <Fold
              summary={
                <span>
                  {at + 1}. {TASK_WORDS[step.operation].todo}{' '}
                  <span class="quiet small">{stepWords(step)}</span>
                </span>
              }
            >
              {() => <StepForm step={step} at={at} group={group} onGroup={onGroup} />}
            </Fold>
          </li>
        ))}
      </ol>
      <div class="row" style={{ alignItems: 'end' }}>
        <Select
          label={WORDS.addStep}
          value={next}
          options={OPERATIONS.map((value) => ({ value, label: TASK_WORDS[value].todo }))}
          onValue={setNext}
        />
        <button type="button" onClick={() => onGroup(withAdded(group, next))}>
          {WORDS.addStep}
        </button>
      </div>
    </div>
  )
}
