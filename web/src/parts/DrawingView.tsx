import type { Drawing } from '@swardwright/present'
import { h, type VNode } from 'preact'

/** What a person touched in a drawing. */
export type Touched = { readonly part: string; readonly id: string }

type Touch = ((touched: Touched) => void) | undefined

const press = (touch: NonNullable<Touch>, touched: Touched) => ({
  tabIndex: 0,
  role: 'button',
  onClick: (event: Event) => {
    event.stopPropagation()
    touch(touched)
  },
  onKeyDown: (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return
    event.preventDefault()
    touch(touched)
  },
})

const element = (drawing: Drawing | string, touch: Touch, key: number): VNode | string => {
  if (typeof drawing === 'string') return drawing
  const part = drawing.attributes['data-part']
  const handlers =
    touch === undefined || typeof part !== 'string'
      ? {}
      : press(touch, { part, id: String(drawing.attributes['data-id'] ?? '') })
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
  readonly class?: string
}) => <div class={`drawing ${props.class ?? ''}`}>{element(props.drawing, props.onTouch, 0)}</div>
