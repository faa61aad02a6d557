import { BREAK_REASONS } from '@swardwright/present'
import { useId } from 'preact/hooks'
import type { PaperStop, StopFault } from '../../compute/paper-stops.ts'
import { Select } from '../../parts/fields.tsx'
import { FAULTS, WORDS } from './words.ts'

const REASONS = [
  { value: '', label: WORDS.pickWhy },
  ...BREAK_REASONS.map(({ id, name }) => ({ value: id, label: name })),
]

/** One step broken off: which, when, why, and in words where there are some. */
export const StopLine = (props: {
  readonly stop: PaperStop
  readonly steps: readonly { readonly key: string; readonly name: string }[]
  readonly fault: StopFault | null
  readonly onStop: (stop: PaperStop) => void
}) => {
  const { stop, fault, onStop } = props
  const id = useId()
  const steps = [
    { value: '', label: WORDS.pickStep },
    ...props.steps.map(({ key, name }) => ({ value: key, label: name })),
  ]
  const isTimeWrong = fault === 'noClock' || fault === 'afterNow' || fault === 'afterFinished'
  return (
    <li class="paper-stop">
      <Select
        label={WORDS.step}
        value={stop.step}
        options={steps}
        onValue={(step) => onStop({ ...stop, step })}
      />
      <div class="field">
        <label for={`${id}-at`}>{WORDS.brokenAt}</label>
        <input
          type="text"
          id={`${id}-at`}
          placeholder="HH:MM"
          autoComplete="off"
          aria-invalid={isTimeWrong}
          aria-describedby={`${id}-fault`}
          value={stop.time}
          onInput={(event) => onStop({ ...stop, time: event.currentTarget.value })}
        />
      </div>
      <Select
        label={WORDS.why}
        value={stop.why}
        options={REASONS}
        onValue={(why) => onStop({ ...stop, why })}
      />
      <div class="field">
        <label for={`${id}-words`}>{WORDS.inWords}</label>
        <input
          type="text"
          id={`${id}-words`}
          autoComplete="off"
          value={stop.words}
          onInput={(event) => onStop({ ...stop, words: event.currentTarget.value })}
        />
      </div>
      <p id={`${id}-fault`} class="wrong">
        {fault === null ? '' : FAULTS[fault]}
      </p>
    </li>
  )
}
