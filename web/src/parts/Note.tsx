import type { ComponentChildren } from 'preact'

/** A word of care. The first word says what it is, so that the colour never stands alone. */
export const Note = (props: {
  readonly kind: 'rust' | 'ochre' | 'rain' | 'leaf' | 'ink'
  readonly word: string
  readonly children: ComponentChildren
  readonly live?: boolean
}) => (
  <div class={`note ${props.kind}`} role={props.live === true ? 'status' : undefined}>
    <b>{props.word}</b> {props.children}
  </div>
)
