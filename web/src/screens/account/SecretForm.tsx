import type { TargetedSubmitEvent } from 'preact'
import { useId, useState } from 'preact/hooks'

/** One line of a form with secrets. */
export type SecretField = {
  readonly name: string
  readonly label: string
  readonly hint?: string
  readonly secret?: boolean
  /** What a password store may fill in. */
  readonly autoComplete: 'username' | 'current-password' | 'new-password' | 'one-time-code' | 'off'
}

const Line = (props: { readonly field: SecretField }) => {
  const id = useId()
  const { name, label, hint, secret, autoComplete } = props.field
  const input = {
    id,
    name,
    autoComplete,
    autoCapitalize: 'none',
    spellcheck: false,
    required: true,
    'aria-describedby': hint === undefined ? undefined : `${id}-hint`,
  } as const
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {secret === true ? <input type="password" {...input} /> : <input type="text" {...input} />}
      {hint === undefined ? null : (
        <p id={`${id}-hint`} class="hint">
          {hint}
        </p>
      )}
    </div>
  )
}

/** A form that is sent as a whole, as secrets are. `onSend` answers with what went wrong, in a sentence, or null; the form is then emptied. */
export const SecretForm = (props: {
  readonly fields: readonly SecretField[]
  readonly button: string
  readonly done?: string
  readonly onSend: (values: Readonly<Record<string, string>>) => Promise<string | null>
}) => {
  const [message, setMessage] = useState<string | null>(null)
  const [state, setState] = useState<'idle' | 'busy' | 'done'>('idle')
  const send = async (form: HTMLFormElement) => {
    setState('busy')
    const values = Object.fromEntries(
      [...new FormData(form)].map(([name, value]) => [name, typeof value === 'string' ? value : '']),
    )
    const wrong = await props.onSend(values)
    setMessage(wrong)
    setState(wrong === null ? 'done' : 'idle')
    if (wrong === null) form.reset()
  }
  return (
    <form
      class="stack"
      onSubmit={(event: TargetedSubmitEvent<HTMLFormElement>) => {
        event.preventDefault()
        void send(event.currentTarget)
      }}
    >
      {props.fields.map((field) => (
        <Line key={field.name} field={field} />
      ))}
      <p class={message === null ? 'hint' : 'wrong'} role="status">
        {message ?? (state === 'done' ? (props.done ?? '') : '')}
      </p>
      <button type="submit" class="primary" disabled={state === 'busy'}>
        {props.button}
      </button>
    </form>
  )
}
