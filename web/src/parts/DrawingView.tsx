import type { Drawing } from '@swardwright/present'
import { h, type VNode } from 'preact'

/** What a person touched in a drawing. */
export type Touched = { readonly part: string; readonly id: string }

type Touch = {
  readonly on: (touched: Touched) => void
  /** Kinds of part that can be pressed; all when left out. */
  readonly parts: readonly string[] | undefined
} | null

const press = (on: (touched: Touched) => void, touched: Touched) => ({
  tabIndex: 0,
  role: 'button',
  onClick: (event: Event) => {
    event.stopPropagation()
    on(touched)
  },
  onKeyDown: (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return
    event.preventDefault()
    on(touched)
  },
})

const element = (drawing: Drawing | string, touch: Touch, key: number): VNode | string => {
  if (typeof drawing === 'string') return drawing
  const part = drawing.attributes['data-part']
  const handlers =
    touch === null || typeof part !== 'string' || touch.parts?.includes(part) === false
      ? {}
      : press(touch.on, { part, id: String(drawing.attributes['data-id'] ?? '') })
  return h(
    drawing.tag,
    { ...drawing.attributes, ...handlers, key },
    drawing.children.map((child, at) => element(child, touch, at)),
  )
}

/** Shows a drawing as elements. With `onTouch`, its parts can be pressed and reached by keyboard. */
export const DrawingView = (props: {
  readonly drawing: Drawing
  readonly onTouch?: (touched: Touched) => void
  readonly touchable?: readonly string[]
  readonly class?: string
}) => (
  <div class={`drawing ${props.class ?? ''}`}>
    {element(
      props.drawing,
      props.onTouch === undefined ? null : { on: props.onTouch, parts: props.touchable },
      0,
    )}
  </div>
)
