import { useId } from 'preact/hooks'

/** A file to bring in. The field is emptied once the file is handed on, so that the same file can be tried again. */
export const FileField = (props: {
  readonly label: string
  /** File endings offered, as of the attribute `accept`. */
  readonly accept: string
  readonly hint?: string | undefined
  readonly disabled?: boolean
  readonly onFile: (file: File) => void
}) => {
  const id = useId()
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <input
        id={id}
        type="file"
        accept={props.accept}
        disabled={props.disabled}
        aria-describedby={props.hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0]
          event.currentTarget.value = ''
          if (file !== undefined) props.onFile(file)
        }}
      />
      {props.hint === undefined ? null : (
        <p id={`${id}-hint`} class="hint">
          {props.hint}
        </p>
      )}
    </div>
  )
}
