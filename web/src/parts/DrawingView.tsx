import type { Drawing } from '@swardwright/present'
import { h, type VNode } from 'preact'

/** What a person touched in a drawing. */
export type Touched = { readonly part: string; readonly id: string }

/** Dragging parts of a drawing along: which kinds, and what happens when one is let go so many pixels to the right (negative: to the left). */
export type Drag = {
  readonly parts: readonly string[]
  readonly onDrop: (touched: Touched, dxPx: number) => void
}

type Touch = {
  /** Parts that can be pressed, counted while they are made. */
  made: number
  readonly on: (touched: Touched) => void
  /** Kinds of part that can be pressed; all when left out. */
  readonly parts: readonly string[] | undefined
  readonly drag: Drag | undefined
} | null

/** Shorter than this is a press, not a drag. */
const LEAST_DRAG_PX = 6

/** A mouse or pen carries the part along; a finger scrolls, so it does not drag (the panel has buttons for it). */
const dragging = (drag: Drag, touched: Touched) => ({
  style: 'cursor: grab',
  onPointerDown: (down: PointerEvent) => {
    const target = down.currentTarget
    if (down.pointerType === 'touch' || !(target instanceof SVGElement)) return
    target.setPointerCapture(down.pointerId)
    const move = (event: PointerEvent) => {
      target.setAttribute('transform', `translate(${event.clientX - down.clientX} 0)`)
    }
    const end = (event: PointerEvent) => {
      target.removeEventListener('pointermove', move)
      target.removeEventListener('pointerup', end)
      target.removeEventListener('pointercancel', end)
      target.removeAttribute('transform')
      const dxPx = event.clientX - down.clientX
      if (event.type === 'pointerup' && Math.abs(dxPx) >= LEAST_DRAG_PX) drag.onDrop(touched, dxPx)
    }
    target.addEventListener('pointermove', move)
    target.addEventListener('pointerup', end)
    target.addEventListener('pointercancel', end)
  },
})

/** The next or the last part that can be pressed, from the one that has the focus. */
const toNeighbour = (from: Element, step: 1 | -1): void => {
  const parts = [...(from.closest('.drawing')?.querySelectorAll<SVGElement>('[data-part][tabindex]') ?? [])]
  const at = parts.findIndex((part) => part === from)
  parts[at + step]?.focus()
}

const STEP_OF: Readonly<Record<string, 1 | -1>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
}

/** The drawing is one stop of the tab key; the arrows lead from part to part. SVG knows the attribute in small letters only. */
const press = (on: (touched: Touched) => void, touched: Touched, isFirst: boolean) => ({
  tabindex: isFirst ? 0 : -1,
  role: 'button',
  onClick: (event: Event) => {
    event.stopPropagation()
    on(touched)
  },
  onKeyDown: (event: KeyboardEvent) => {
    const step = STEP_OF[event.key]
    if (step === undefined && event.key !== 'Enter' && event.key !== ' ') return
    event.preventDefault()
    if (step === undefined) on(touched)
    else if (event.currentTarget instanceof Element) toNeighbour(event.currentTarget, step)
  },
})

const element = (drawing: Drawing | string, touch: Touch, key: number): VNode | string => {
  if (typeof drawing === 'string') return drawing
  const part = drawing.attributes['data-part']
  const id = String(drawing.attributes['data-id'] ?? '')
  const handlers =
    touch === null || typeof part !== 'string' || touch.parts?.includes(part) === false
      ? {}
      : {
          ...press(touch.on, { part, id }, touch.made++ === 0),
          ...(touch.drag?.parts.includes(part) === true ? dragging(touch.drag, { part, id }) : {}),
        }
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
  readonly drag?: Drag
  readonly class?: string
}) => (
  <div class={`drawing ${props.class ?? ''}`}>
    {element(
      props.drawing,
      props.onTouch === undefined
        ? null
        : { made: 0, on: props.onTouch, parts: props.touchable, drag: props.drag },
      0,
    )}
  </div>
)
