import { useId, useRef, useState } from 'preact/hooks'
import { parseNumber } from './parse-number.ts'
import { useTyped, useWhenGone } from './typed.ts'

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

/** A number with its unit. A valid number is handed on after a short pause in typing, and at once when the field is left or goes. */
export const NumberField = (props: Props) => {
  const { label, unit, value, min, max, hint, digits = 3 } = props
  const id = useId()
  const field = useTyped(shown(value, digits))
  const [message, setMessage] = useState<string | null>(null)
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)

  /** True when the text will do. */
  const commit = (typed: string): boolean => {
    clearTimeout(waiting.current)
    waiting.current = undefined
    // A field that was only looked into has nothing to say.
    if (!field.isTyping()) return true
    if (typed.trim() === '' && props.onEmpty !== undefined) {
      setMessage(null)
      field.handOn('', props.onEmpty)
      return true
    }
    const parsed = parseNumber(typed, {
      label,
      unit,
      min,
      max,
      ...(props.whole === undefined ? {} : { whole: props.whole }),
    })
    setMessage(parsed.ok ? null : parsed.message)
    if (parsed.ok) field.handOn(typed, () => props.onValue(parsed.value))
    return parsed.ok
  }

  const commitNow = useRef(commit)
  commitNow.current = commit
  useWhenGone(() => {
    if (waiting.current !== undefined) commit(field.text)
  })

  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="with-unit">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={field.text}
          aria-invalid={message !== null}
          aria-describedby={`${id}-hint`}
          onInput={(event) => {
            const typed = event.currentTarget.value
            field.type(typed)
            clearTimeout(waiting.current)
            waiting.current = setTimeout(() => commitNow.current(typed), PAUSE_MS)
          }}
          onBlur={(event) => {
            if (commit(event.currentTarget.value)) field.leave()
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
