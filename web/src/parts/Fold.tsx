import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { inTurn } from './soon.ts'

/** A row that opens to what stands behind it. What is behind is made only once it is opened. Where the page's address names it, it is open and comes into view. */
export const Fold = (props: {
  readonly summary: ComponentChildren
  readonly children: () => ComponentChildren
  readonly open?: boolean
  readonly id?: string
}) => {
  const isSought = props.id !== undefined && location.hash === `#${props.id}`
  const [open, setOpen] = useState(props.open ?? isSought)
  const row = useRef<HTMLDetailsElement>(null)
  useLayoutEffect(
    // After what stands above it and is drawn in its turn, which would move it.
    () => (isSought ? inTurn(() => row.current?.scrollIntoView()) : undefined),
    [isSought],
  )
  return (
    <details id={props.id} ref={row} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{props.summary}</summary>
      {open ? <div class="stack fold-body">{props.children()}</div> : null}
    </details>
  )
}
