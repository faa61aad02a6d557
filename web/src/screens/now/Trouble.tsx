import { useRef, useState } from 'preact/hooks'
import { Select } from '../../parts/fields.tsx'
import { useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { planNow } from '../../state/plan.ts'
import { record } from '../../state/record.ts'
import { WORDS } from './words.ts'

/** What can go wrong, in three presses at most. */
const Choices = ({ done }: { readonly done: () => void }) => {
  const { machines } = useCourse()
  const [machine, setMachine] = useState(machines[0]?.id ?? '')
  const [text, setText] = useState('')
  const raining = facts.value.rain.at(-1)?.ended === null
  const write = async (entry: Promise<unknown>): Promise<void> => {
    await entry
    done()
  }
  return (
    <div class="stack">
      <button
        type="button"
        onClick={() => void write(raining ? record('rainEnded', {}) : record('rainBegan', {}))}
      >
        {raining ? WORDS.rainEnded : WORDS.rainBegan}
      </button>
      {machines.length === 0 ? null : (
        <fieldset class="tight">
          <legend>{WORDS.machineOut}</legend>
          <Select
            label={WORDS.machineOut}
            value={machine}
            options={machines.map((one) => ({ value: one.id, label: one.name }))}
            onValue={setMachine}
          />
          <button
            type="button"
            onClick={() => void write(record('problemReported', { problem: 'machineOut', machine }))}
          >
            {WORDS.keep}
          </button>
        </fieldset>
      )}
      <fieldset class="tight">
        <legend>
          <label for="trouble-words">{WORDS.write}</label>
        </legend>
        <textarea
          id="trouble-words"
          rows={3}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <button
          type="button"
          disabled={text.trim() === ''}
          onClick={() => void write(record('problemReported', { problem: 'other', words: text.trim() }))}
        >
          {WORDS.keep}
        </button>
      </fieldset>
      <button type="button" onClick={() => void write(planNow())}>
        {WORDS.planAgain}
      </button>
    </div>
  )
}

/** The button for trouble and what stands behind it. */
export const Trouble = () => {
  const dialog = useRef<HTMLDialogElement>(null)
  const close = () => dialog.current?.close()
  return (
    <>
      <button type="button" onClick={() => dialog.current?.showModal()}>
        {WORDS.trouble}
      </button>
      <dialog ref={dialog} aria-label={WORDS.trouble}>
        <div class="row apart">
          <h2>{WORDS.trouble}</h2>
          <button type="button" class="thin" onClick={close}>
            Close
          </button>
        </div>
        <Choices done={close} />
      </dialog>
    </>
  )
}
