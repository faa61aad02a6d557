import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'

/** A row that opens to what stands behind it. What is behind is made only once it is opened. */
export const Fold = (props: {
  readonly summary: ComponentChildren
  readonly children: () => ComponentChildren
  readonly open?: boolean
}) => {
  const [open, setOpen] = useState(props.open ?? false)
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{props.summary}</summary>
      {open ? <div class="stack fold-body">{props.children()}</div> : null}
    </details>
  )
}
