import { useState } from 'preact/hooks'
import { fromWantedUnit, inWantedUnit, quantityWords, unitMark } from '@swardwright/present'
import { NumberField } from '../../parts/NumberField.tsx'
import { PickOne } from '../../parts/PickOne.tsx'
import { units, useCourse } from '../../state/course.ts'
import { touch } from '../../state/undo.ts'
import { SAND_NAMES, WORDS } from './words.ts'

type Sand = keyof typeof SAND_NAMES

const SANDS: readonly Sand[] = ['damp', 'kilnDried']

/** What is seen at a glance in a bay, in the club's unit of sand: one press each. */
const GLANCES = [0, 0.5, 1, 2, 5, 10] as const

/** As the journal takes it. */
const MOST_T = 2000

const HowMuch = (props: { readonly sand: Sand; readonly onLeft: (massT: number) => void }) => {
  const [typed, setTyped] = useState<number | null>(null)
  const wanted = units.value
  const mark = unitMark('sand', wanted)
  const tell = (left: number): void => props.onLeft(Math.min(MOST_T, fromWantedUnit('sand', left, wanted)))
  return (
    <div class="stack">
      <p>
        {SAND_NAMES[props.sand]}. {WORDS.sandHere}
      </p>
      <div class="three">
        {GLANCES.map((left) => (
          <button key={left} type="button" onClick={() => tell(left)}>
            {left === 0 ? WORDS.sandNone : `${left} ${mark}`}
          </button>
        ))}
      </div>
      <NumberField
        label={WORDS.sandOther}
        unit={mark}
        value={typed}
        min={0}
        max={inWantedUnit('sand', MOST_T, wanted)}
        onValue={setTyped}
        onEmpty={() => setTyped(null)}
      />
      <button
        type="button"
        class="primary whole"
        disabled={typed === null}
        onClick={() => {
          if (typed !== null) tell(typed)
        }}
      >
        {WORDS.write}
      </button>
    </div>
  )
}

/** Sand is short: which, where the club has two, and how much of it is left, from which the day is worked out again. `after` ends the words of the way back. */
export const SandShort = (props: { readonly close: () => void; readonly after?: string }) => {
  const { stores } = useCourse()
  const kept = SANDS.filter((kind) => stores.some((store) => store.kind === kind))
  const choices = kept.length === 0 ? SANDS : kept
  const [picked, setPicked] = useState<Sand | null>(null)
  const sand = picked ?? (choices.length === 1 ? choices[0] : undefined)
  if (sand === undefined)
    return (
      <div class="stack">
        <p>{WORDS.whichSand}</p>
        <PickOne
          options={choices.map((id) => ({ id, name: SAND_NAMES[id] }))}
          onPick={(id) => setPicked(choices.find((one) => one === id) ?? null)}
        />
      </div>
    )
  return (
    <HowMuch
      sand={sand}
      onLeft={(massT) => {
        props.close()
        const left = `${quantityWords('sand', massT, units.value)} ${WORDS.sandLeft}`
        void touch(
          'problemReported',
          { problem: 'sandShort', sand, massT },
          `${SAND_NAMES[sand]}: ${left}${props.after ?? ''}`,
        )
      }}
    />
  )
}
