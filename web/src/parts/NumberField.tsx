import { useEffect, useId, useRef, useState } from 'preact/hooks'
import { parseNumber } from './parse-number.ts'

const PAUSE_MS = 450

type Props = {
  readonly label: string
  /** Unit as shown beside the box; '' for counts. */
  readonly unit: string
  /** In the unit shown. Null where nothing was given yet. */
  readonly value: number | null
  readonly min: number
  readonly max: number
  readonly whole?: boolean
  readonly digits?: number
  readonly hint?: string
  readonly onValue: (value: number) => void
  /** Where the field may be left empty: called when it is. */
  readonly onEmpty?: () => void
}

const shown = (value: number | null, digits: number): string =>
  value === null ? '' : String(Number(value.toFixed(digits)))

/** A number with its unit. A valid number is handed on after a short pause in typing, and at once when the field is left. */
export const NumberField = (props: Props) => {
  const { label, unit, value, min, max, hint, digits = 3 } = props
  const id = useId()
  const [text, setText] = useState(shown(value, digits))
  const [message, setMessage] = useState<string | null>(null)
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const editing = useRef(false)

  useEffect(() => {
    if (!editing.current) setText(shown(value, digits))
  }, [value, digits])
  useEffect(() => () => clearTimeout(waiting.current), [])

  const commit = (typed: string) => {
    clearTimeout(waiting.current)
    if (typed.trim() === '' && props.onEmpty !== undefined) {
      setMessage(null)
      if (value !== null) props.onEmpty()
      return
    }
    const parsed = parseNumber(typed, {
      label,
      unit,
      min,
      max,
      ...(props.whole === undefined ? {} : { whole: props.whole }),
    })
    setMessage(parsed.ok ? null : parsed.message)
    if (parsed.ok && typed !== shown(value, digits)) props.onValue(parsed.value)
  }

  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="with-unit">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={message !== null}
          aria-describedby={`${id}-hint`}
          onFocus={() => {
            editing.current = true
          }}
          onInput={(event) => {
            const typed = event.currentTarget.value
            setText(typed)
            clearTimeout(waiting.current)
            waiting.current = setTimeout(() => commit(typed), PAUSE_MS)
          }}
          onBlur={(event) => {
            editing.current = false
            commit(event.currentTarget.value)
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit(event.currentTarget.value)
          }}
        />
        {unit === '' ? null : <span>{unit}</span>}
      </div>
      <p
        id={`${id}-hint`}
        class={message === null ? 'hint' : 'wrong'}
        role={message === null ? undefined : 'alert'}
      >
        {message ?? hint ?? ''}
      </p>
    </div>
  )
}
