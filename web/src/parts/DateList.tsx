import { dayWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { TextField } from './fields.tsx'

/** A handful of calendar days, each of which can be taken out again. */
export const DateList = (props: {
  readonly label: string
  readonly dates: readonly string[]
  readonly onDates: (dates: string[]) => void
}) => {
  const [next, setNext] = useState('')
  return (
    <div class="tight">
      {props.dates.length === 0 ? null : (
        <ul class="row" aria-label={props.label}>
          {props.dates.map((date) => (
            <li key={date}>
              <button
                type="button"
                class="thin"
                onClick={() => props.onDates(props.dates.filter((other) => other !== date))}
              >
                {dayWords(date)}, take out
              </button>
            </li>
          ))}
        </ul>
      )}
      <TextField
        key={next}
        label={props.label}
        type="date"
        value=""
        hint="Choose a day to add it"
        onValue={(date) => {
          if (!props.dates.includes(date)) props.onDates([...props.dates, date].sort())
          setNext(date)
        }}
      />
    </div>
  )
}
