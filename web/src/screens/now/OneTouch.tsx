import { instantOf, isoWithOffset } from '@swardwright/engine'
import { useState } from 'preact/hooks'
import { Dialog } from '../../parts/Dialog.tsx'
import { PickOne } from '../../parts/PickOne.tsx'
import { Choice, TextField } from '../../parts/fields.tsx'
import { today } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { touch } from '../../state/undo.ts'
import { WORDS } from './words.ts'

/** It rains, or the rain has ended: one press. */
export const RainNow = () => {
  const isRaining = facts.value.rain.at(-1)?.ended === null
  return (
    <button
      type="button"
      onClick={() =>
        void (isRaining ? touch('rainEnded', {}, WORDS.rainEnded) : touch('rainBegan', {}, WORDS.rainWritten))
      }
    >
      {isRaining ? WORDS.rainEnded : WORDS.rainNow}
    </button>
  )
}

/** A machine is out: two presses. */
export const MachineOut = () => {
  const { machines } = useCourse()
  return (
    <Dialog button={WORDS.machineOut} title={WORDS.whichMachine}>
      {(close) => (
        <PickOne
          options={machines}
          onPick={(machine) => {
            close()
            const name = machines.find(({ id }) => id === machine)?.name ?? machine
            void touch('problemReported', { problem: 'machineOut', machine }, `${name}: ${WORDS.out}`)
          }}
        />
      )}
    </Dialog>
  )
}

/** A person is out: two presses. */
export const PersonOut = () => {
  const { people } = useCourse()
  return (
    <Dialog button={WORDS.personOut} title={WORDS.whichPerson}>
      {(close) => (
        <PickOne
          options={people}
          onPick={(person) => {
            close()
            const name = people.find(({ id }) => id === person)?.name ?? person
            void touch('problemReported', { problem: 'personOut', person }, `${name}: ${WORDS.out}`)
          }}
        />
      )}
    </Dialog>
  )
}

const PACES = [
  { value: '0.8', label: 'a fifth quicker' },
  { value: '1.25', label: 'a quarter slower' },
  { value: '1.5', label: 'half as slow again' },
  { value: '2', label: 'twice as slow' },
] as const

const Slower = ({ close }: { readonly close: () => void }) => {
  const { machines } = useCourse()
  const [factor, setFactor] = useState<(typeof PACES)[number]['value']>('1.5')
  return (
    <div class="stack">
      <Choice label={WORDS.howSlow} value={factor} options={PACES} onValue={setFactor} />
      <PickOne
        options={machines}
        onPick={(machine) => {
          close()
          const name = machines.find(({ id }) => id === machine)?.name ?? machine
          void touch(
            'problemReported',
            { problem: 'slower', machine, factor: Number(factor) },
            `${name}: ${PACES.find(({ value }) => value === factor)?.label ?? ''}`,
          )
        }}
      />
    </div>
  )
}

const EVERYBODY = 'everybody'

const Late = ({ close }: { readonly close: () => void }) => {
  const { people, timeZone } = useCourse()
  const [time, setTime] = useState('09:00')
  const write = (person: string): void => {
    close()
    const [hours = 0, minutes = 0] = time.split(':').map(Number)
    const until = isoWithOffset(instantOf(today.value, hours * 60 + minutes, timeZone), timeZone)
    const name = people.find(({ id }) => id === person)?.name ?? WORDS.everybody
    void touch(
      'problemReported',
      { problem: 'late', until, ...(person === EVERYBODY ? {} : { person }) },
      `${name}: ${WORDS.lateFrom} ${time}`,
    )
  }
  return (
    <div class="stack">
      <TextField label={WORDS.begins} type="time" value={time} onValue={setTime} />
      <PickOne options={[{ id: EVERYBODY, name: WORDS.everybody }, ...people]} onPick={write} />
    </div>
  )
}

const SandShort = ({ close }: { readonly close: () => void }) => {
  const [massT, setMassT] = useState('0')
  const isGood = massT.trim() !== '' && Number(massT) >= 0 && Number(massT) <= 2000
  const write = (sand: string): void => {
    if (!isGood || (sand !== 'damp' && sand !== 'kilnDried')) return
    close()
    void touch(
      'problemReported',
      { problem: 'sandShort', sand, massT: Number(massT) },
      `${massT} t ${WORDS.sandLeft}`,
    )
  }
  return (
    <div class="stack">
      <TextField
        label={WORDS.sandHere}
        value={massT}
        check={(text) => (Number(text) >= 0 && Number(text) <= 2000 ? null : WORDS.sandRange)}
        onValue={setMassT}
      />
      <PickOne
        options={[
          { id: 'damp', name: 'Damp sand' },
          { id: 'kilnDried', name: 'Kiln-dried sand' },
        ]}
        onPick={write}
      />
    </div>
  )
}

const InWords = ({ close }: { readonly close: () => void }) => {
  const [text, setText] = useState('')
  const words = text.trim()
  return (
    <div class="tight">
      <label for="trouble-words">{WORDS.write}</label>
      <textarea
        id="trouble-words"
        rows={3}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button
        type="button"
        class="whole"
        disabled={words === ''}
        onClick={() => {
          close()
          void touch('problemReported', { problem: 'other', words }, words)
        }}
      >
        {WORDS.keep}
      </button>
    </div>
  )
}

const KINDS = [
  { id: 'slower', name: WORDS.slower },
  { id: 'late', name: WORDS.late },
  { id: 'sand', name: WORDS.sandShort },
  { id: 'words', name: WORDS.write },
] as const

const Kinds = ({ close }: { readonly close: () => void }) => {
  const [kind, setKind] = useState('')
  switch (kind) {
    case 'slower':
      return <Slower close={close} />
    case 'late':
      return <Late close={close} />
    case 'sand':
      return <SandShort close={close} />
    case 'words':
      return <InWords close={close} />
    default:
      return <PickOne options={KINDS} onPick={setKind} />
  }
}

/** What goes wrong less often: three presses. */
export const MoreTrouble = () => (
  <Dialog button={WORDS.moreTrouble}>{(close) => <Kinds close={close} />}</Dialog>
)
