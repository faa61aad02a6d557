import type { ComponentChildren } from 'preact'
import { useRef, useState } from 'preact/hooks'

/** A button and what opens behind it. What is behind is made only once it is opened, and told how to close. */
export const Dialog = (props: {
  readonly button: string
  readonly title?: string
  readonly class?: string
  readonly children: (close: () => void) => ComponentChildren
}) => {
  const dialog = useRef<HTMLDialogElement>(null)
  const [isOpen, setOpen] = useState(false)
  const title = props.title ?? props.button
  const close = () => dialog.current?.close()
  return (
    <>
      <button
        type="button"
        class={props.class}
        onClick={() => {
          setOpen(true)
          dialog.current?.showModal()
        }}
      >
        {props.button}
      </button>
      <dialog ref={dialog} aria-label={title} onClose={() => setOpen(false)}>
        {isOpen ? (
          <div class="stack">
            <div class="dialog-head">
              <h2>{title}</h2>
              <button type="button" onClick={close}>
                Close
              </button>
            </div>
            {props.children(close)}
          </div>
        ) : null}
      </dialog>
    </>
  )
}
