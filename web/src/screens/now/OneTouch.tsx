import { instantOf, isoWithOffset, type Plan, type PlanTask } from '@swardwright/engine'
import { taskTodo } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { coveringOf, type Covering } from '../../compute/covering.ts'
import { Dialog } from '../../parts/Dialog.tsx'
import { PickOne } from '../../parts/PickOne.tsx'
import { Choice, TextField } from '../../parts/fields.tsx'
import { nowMs, today } from '../../state/clock.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { again } from '../../state/day.ts'
import { facts } from '../../state/journal.ts'
import { shownPlan } from '../../state/plan.ts'
import { stepTold } from '../../state/step-told.ts'
import { touch } from '../../state/undo.ts'
import { BrokenOff } from '../trouble/BrokenOff.tsx'
import { SandShort } from '../trouble/SandShort.tsx'
import { TinesShort } from '../trouble/TinesShort.tsx'
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

/** Steps under way by the plan of this minute or by what was told. */
const stepsUnderWay = (
  plan: Plan | null,
): readonly { readonly task: PlanTask; readonly covering: Covering }[] =>
  (plan?.tasks ?? []).flatMap((task) => {
    const covering = coveringOf(task)
    const { done, begun, stopped } = stepTold.value(task)
    const isNow = Date.parse(task.start) <= nowMs.value && Date.parse(task.finish) > nowMs.value
    return covering === null || done || stopped || !(begun || isNow) ? [] : [{ task, covering }]
  })

const Broken = ({ close }: { readonly close: () => void }) => {
  const [picked, setPicked] = useState<{ readonly covering: Covering; readonly words: string } | null>(null)
  if (picked !== null) return <BrokenOff {...picked} close={close} />
  const steps = stepsUnderWay(again.value?.plan ?? shownPlan.value).map(({ task, covering }) => ({
    id: task.id,
    name: `${greenName(covering.green)}: ${taskTodo(task)}`,
    covering,
  }))
  if (steps.length === 0) return <p>{WORDS.noneUnderWay}</p>
  return (
    <PickOne
      options={steps}
      onPick={(id) => {
        const step = steps.find((one) => one.id === id)
        setPicked(step === undefined ? null : { covering: step.covering, words: step.name })
      }}
    />
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
  { id: 'tines', name: WORDS.tinesShort },
  { id: 'broken', name: WORDS.brokenOff },
  { id: 'words', name: WORDS.write },
] as const

const Kinds = ({ close }: { readonly close: () => void }) => {
  const { tineSets = [] } = useCourse()
  const [kind, setKind] = useState('')
  switch (kind) {
    case 'slower':
      return <Slower close={close} />
    case 'late':
      return <Late close={close} />
    case 'sand':
      return <SandShort close={close} />
    case 'tines':
      return <TinesShort close={close} />
    case 'broken':
      return <Broken close={close} />
    case 'words':
      return <InWords close={close} />
    default:
      return (
        <PickOne options={KINDS.filter(({ id }) => id !== 'tines' || tineSets.length > 0)} onPick={setKind} />
      )
  }
}

/** What goes wrong less often: three presses. */
export const MoreTrouble = () => (
  <Dialog button={WORDS.moreTrouble}>{(close) => <Kinds close={close} />}</Dialog>
)
