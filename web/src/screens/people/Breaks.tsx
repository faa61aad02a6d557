import { personSchema, type Person } from '@swardwright/engine'
import { TextField } from '../../parts/fields.tsx'
import { Measured } from '../../parts/Measured.tsx'
import { WORDS } from './words.ts'

type Break = Person['breaks'][number]

const NOON: Break = { earliest: '11:30', latest: '13:30', minutes: 30 }

/** Windows in which a person's breaks must stay free. */
export const Breaks = (props: {
  readonly breaks: readonly Break[]
  readonly onBreaks: (breaks: Break[]) => void
}) => {
  const change = (at: number, fields: Partial<Break>) =>
    props.onBreaks(props.breaks.map((one, index) => (index === at ? { ...one, ...fields } : one)))
  return (
    <fieldset class="stack">
      <legend>{WORDS.breaks}</legend>
      {props.breaks.map((one, at) => (
        <div class="fields" key={at}>
          <TextField
            label={WORDS.earliest}
            type="time"
            value={one.earliest}
            onValue={(earliest) => change(at, { earliest })}
          />
          <TextField
            label={WORDS.latest}
            type="time"
            value={one.latest}
            onValue={(latest) => change(at, { latest })}
          />
          <Measured
            schema={personSchema}
            path={['breaks', '0', 'minutes']}
            label="Minutes"
            value={one.minutes}
            onValue={(minutes) => change(at, { minutes })}
          />
          <button
            type="button"
            class="thin"
            style={{ alignSelf: 'center' }}
            onClick={() => props.onBreaks(props.breaks.filter((_, index) => index !== at))}
          >
            {WORDS.removeBreak}
          </button>
        </div>
      ))}
      <button type="button" class="thin" onClick={() => props.onBreaks([...props.breaks, NOON])}>
        {WORDS.addBreak}
      </button>
    </fieldset>
  )
}
