import type { ComponentChildren } from 'preact'
import { TextField } from '../../parts/fields.tsx'
import { WORDS } from './words.ts'

type When = { readonly date: string; readonly time: string }

/** Deliveries agreed, of sand or of anything else that comes on a day: the day and hour are asked for here, the amount by who knows it. */
export const Deliveries = <T extends When>(props: {
  readonly deliveries: readonly T[]
  /** The next one as it is added. */
  readonly next: T
  readonly amount: (delivery: T, change: (fields: Partial<T>) => void) => ComponentChildren
  readonly onDeliveries: (deliveries: T[]) => void
}) => {
  const { deliveries } = props
  const change = (at: number, fields: Partial<T> | Partial<When>) =>
    props.onDeliveries(deliveries.map((one, index) => (index === at ? { ...one, ...fields } : one)))
  return (
    <fieldset class="stack">
      <legend>{WORDS.deliveries}</legend>
      {deliveries.map((delivery, at) => (
        <div class="fields" key={at}>
          <TextField
            label={WORDS.date}
            type="date"
            value={delivery.date}
            onValue={(date) => date !== '' && change(at, { date })}
          />
          <TextField
            label={WORDS.time}
            type="time"
            value={delivery.time}
            onValue={(time) => time !== '' && change(at, { time })}
          />
          {props.amount(delivery, (fields) => change(at, fields))}
          <button
            type="button"
            class="thin"
            style={{ alignSelf: 'center' }}
            onClick={() => props.onDeliveries(deliveries.filter((_, index) => index !== at))}
          >
            {WORDS.removeDelivery}
          </button>
        </div>
      ))}
      <button type="button" class="thin" onClick={() => props.onDeliveries([...deliveries, props.next])}>
        {WORDS.addDelivery}
      </button>
    </fieldset>
  )
}
