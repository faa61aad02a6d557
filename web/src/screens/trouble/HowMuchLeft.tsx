import { useState } from 'preact/hooks'
import { NumberField } from '../../parts/NumberField.tsx'
import { WORDS } from './words.ts'

/** How much of something is left: what is seen at a glance by one press each, and any other figure typed. Figures are in the unit shown. */
export const HowMuchLeft = (props: {
  readonly lead: string
  readonly unit: string
  readonly glances: readonly number[]
  readonly most: number
  readonly onLeft: (left: number) => void
}) => {
  const [typed, setTyped] = useState<number | null>(null)
  const { unit, onLeft } = props
  return (
    <div class="stack">
      <p>{props.lead}</p>
      <div class="three">
        {props.glances.map((left) => (
          <button key={left} type="button" onClick={() => onLeft(left)}>
            {left === 0 ? WORDS.none : `${left} ${unit}`}
          </button>
        ))}
      </div>
      <NumberField
        label={WORDS.otherFigure}
        unit={unit}
        value={typed}
        min={0}
        max={props.most}
        onValue={setTyped}
        onEmpty={() => setTyped(null)}
      />
      <button
        type="button"
        class="primary whole"
        disabled={typed === null}
        onClick={() => {
          if (typed !== null) onLeft(typed)
        }}
      >
        {WORDS.write}
      </button>
    </div>
  )
}
