import { useState } from 'preact/hooks'
import { Dialog } from '../../parts/Dialog.tsx'
import { PickOne } from '../../parts/PickOne.tsx'
import { greenName, useCourse } from '../../state/course.ts'
import { touch } from '../../state/undo.ts'
import { SandShort } from '../trouble/SandShort.tsx'
import { TinesShort } from '../trouble/TinesShort.tsx'
import { WORDS } from './words.ts'

const Words = (props: { readonly green: string | null; readonly close: () => void }) => {
  const [text, setText] = useState('')
  const words = text.trim()
  const { green } = props
  return (
    <div class="stack">
      <label for="problem-words">{WORDS.write}</label>
      <textarea
        id="problem-words"
        rows={3}
        value={text}
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button
        type="button"
        class="primary whole"
        disabled={words === ''}
        onClick={() => {
          props.close()
          void (green === null
            ? touch('problemReported', { problem: 'other', words }, `${words}: ${WORDS.told}`)
            : touch('problemReported', { problem: 'green', green, words }, `${words}: ${WORDS.told}`))
        }}
      >
        {WORDS.send}
      </button>
    </div>
  )
}

type Kind = 'machine' | 'sand' | 'tines' | 'other' | { readonly green: string } | null

const Kinds = (props: {
  readonly person: string
  readonly green: string | null
  readonly machines: readonly string[]
  readonly close: () => void
}) => {
  const { person, green, close } = props
  const course = useCourse()
  const [kind, setKind] = useState<Kind>(null)
  if (kind === 'machine') {
    const mine = course.machines.filter(({ id }) => props.machines.includes(id))
    const others = course.machines.filter(({ id }) => !props.machines.includes(id))
    return (
      <div class="stack">
        <p>{WORDS.which}</p>
        <PickOne
          options={[...mine, ...others]}
          onPick={(machine) => {
            close()
            const name = course.machines.find(({ id }) => id === machine)?.name ?? machine
            void touch(
              'problemReported',
              { problem: 'machineOut', machine },
              `${name} ${WORDS.out}: ${WORDS.told}`,
            )
          }}
        />
      </div>
    )
  }
  if (kind === 'sand') return <SandShort close={close} after={`: ${WORDS.told}`} />
  if (kind === 'tines') return <TinesShort close={close} after={`: ${WORDS.told}`} />
  // Told of the green that was meant, also when the next stay begins while it is typed.
  if (kind !== null) return <Words green={kind === 'other' ? null : kind.green} close={close} />
  const pick = (id: string): void => {
    if (id === 'machine' || id === 'sand' || id === 'tines' || id === 'other') return setKind(id)
    if (id === 'green' && green !== null) return setKind({ green })
    close()
    if (id === 'me')
      void touch('problemReported', { problem: 'personOut', person }, `${WORDS.iAmOut}: ${WORDS.told}`)
    else if (id === 'rain') void touch('rainBegan', {}, `${WORDS.rain}: ${WORDS.told}`)
  }
  return (
    <PickOne
      options={[
        { id: 'machine', name: WORDS.machine },
        { id: 'rain', name: WORDS.rain },
        { id: 'sand', name: WORDS.sand },
        ...((course.tineSets ?? []).length === 0 ? [] : [{ id: 'tines', name: WORDS.tines }]),
        ...(green === null ? [] : [{ id: 'green', name: `${WORDS.green}: ${greenName(green)}` }]),
        { id: 'me', name: WORDS.iAmOut },
        { id: 'other', name: WORDS.other },
      ]}
      onPick={pick}
    />
  )
}

/** The problem button: few kinds, each as wide as the phone; machines of this post come first. */
export const TellProblem = (props: {
  readonly person: string
  readonly green: string | null
  readonly machines: readonly string[]
}) => <Dialog button={WORDS.trouble}>{(close) => <Kinds {...props} close={close} />}</Dialog>
