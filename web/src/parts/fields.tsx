import type { ComponentChildren, TargetedEvent, TargetedInputEvent } from 'preact'
import { useId } from 'preact/hooks'
import { useTyped, useWhenGone } from './typed.ts'

/** A line of text, kept when the field is left or goes. `check` answers with a sentence when the text won't do. */
export const TextField = (props: {
  readonly label: string
  readonly value: string
  readonly type?: 'text' | 'date' | 'time'
  readonly hint?: string
  readonly check?: (text: string) => string | null
  readonly onValue: (text: string) => void
}) => {
  const id = useId()
  const field = useTyped(props.value)
  const { type = 'text', check } = props
  const message = field.text === props.value ? null : (check?.(field.text) ?? null)
  const commit = (typed: string): void => {
    if (!field.isTyping() || (check?.(typed) ?? null) !== null) return
    field.handOn(typed, () => props.onValue(typed))
    field.leave()
  }
  useWhenGone(() => commit(field.text))
  const input = {
    id,
    value: field.text,
    autoComplete: 'off',
    'aria-invalid': message !== null,
    'aria-describedby': `${id}-hint`,
    onInput: (event: TargetedInputEvent<HTMLInputElement>) => field.type(event.currentTarget.value),
    onChange: (event: TargetedEvent<HTMLInputElement>) => commit(event.currentTarget.value),
  } as const
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      {type === 'text' ? <input type="text" {...input} /> : <input type={type} {...input} />}
      <p id={`${id}-hint`} class={message === null ? 'hint' : 'wrong'}>
        {message ?? props.hint ?? ''}
      </p>
    </div>
  )
}

/** One of a few words, each a target of its own. */
export const Choice = <T extends string>(props: {
  readonly label: string
  readonly value: T
  readonly options: readonly { readonly value: T; readonly label: string }[]
  readonly onValue: (value: T) => void
}) => {
  const id = useId()
  return (
    <div class="field" role="radiogroup" aria-labelledby={id}>
      <span id={id} class="field-name">
        {props.label}
      </span>
      <div class="choices">
        {props.options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={id}
              checked={option.value === props.value}
              onChange={() => props.onValue(option.value)}
            />
            {option.label}
          </label>
        ))}
      </div>
    </div>
  )
}

/** One of many words. */
export const Select = <T extends string>(props: {
  readonly label: string
  readonly value: T
  readonly options: readonly { readonly value: T; readonly label: string }[]
  readonly onValue: (value: T) => void
}) => {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <select
        id={id}
        value={props.value}
        onChange={(event) => {
          const chosen = props.options.find((option) => option.value === event.currentTarget.value)
          if (chosen !== undefined) props.onValue(chosen.value)
        }}
      >
        {props.options.map((option) => (
          <option key={option.value} value={option.value} selected={option.value === props.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  )
}

/** Yes or no. */
export const Tick = (props: {
  readonly label: ComponentChildren
  readonly checked: boolean
  readonly onValue: (checked: boolean) => void
}) => (
  <label class="tick">
    <input
      type="checkbox"
      checked={props.checked}
      onChange={(event) => props.onValue(event.currentTarget.checked)}
    />
    <span>{props.label}</span>
  </label>
)
