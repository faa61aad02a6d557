import type { Drawing } from '@swardwright/present'
import { h, type VNode } from 'preact'
import { useMemo } from 'preact/hooks'
import { dragPart } from './drag-part.ts'

/** What a person touched in a drawing, and what it tells: the same words that a screen reader says. */
export type Touched = { readonly part: string; readonly id: string; readonly words: string | null }

/** Dragging parts of a drawing along: which kinds, and what happens when one is let go so many pixels to the right (negative: to the left). */
export type Drag = {
  readonly parts: readonly string[]
  readonly onDrop: (touched: Touched, dxPx: number) => void
}

/** Kinds of part that can be pressed and dragged, and whether one was made yet: the first is the one stop of the tab key. */
type Touch = {
  hasFirst: boolean
  readonly isPressed: (part: string) => boolean
  readonly isDragged: (part: string) => boolean
}

/** SVG knows the attribute in small letters only. */
const touchAttributes = (part: string, touch: Touch): Readonly<Record<string, string | number>> => {
  if (!touch.isPressed(part)) return {}
  const tabindex = touch.hasFirst ? -1 : 0
  touch.hasFirst = true
  return { tabindex, role: 'button', ...(touch.isDragged(part) ? { 'data-drag': '' } : {}) }
}

const element = (drawing: Drawing | string, touch: Touch | null, key: number): VNode | string => {
  if (typeof drawing === 'string') return drawing
  const part = drawing.attributes['data-part']
  return h(
    drawing.tag,
    {
      ...drawing.attributes,
      ...(touch === null || typeof part !== 'string' ? {} : touchAttributes(part, touch)),
      key,
    },
    drawing.children.map((child, at) => element(child, touch, at)),
  )
}

/** The part that an event fell on, or the innermost one around it; null beside all parts. */
const partAt = (event: Event): SVGElement | null => {
  const found = event.target instanceof Element ? event.target.closest('[data-part][tabindex]') : null
  return found instanceof SVGElement ? found : null
}

const touchedOf = (part: SVGElement): Touched => ({
  part: part.dataset['part'] ?? '',
  id: part.dataset['id'] ?? '',
  words: part.getAttribute('aria-label'),
})

/** The next or the last part that can be pressed, from the one that has the focus, in this drawing and those that stand together with it. */
const toNeighbour = (from: Element, step: 1 | -1): void => {
  const all = from.closest('.drawings') ?? from.closest('.drawing')
  const parts = [...(all?.querySelectorAll<SVGElement>('[data-part][tabindex]') ?? [])]
  parts[parts.findIndex((part) => part === from) + step]?.focus()
}

const STEP_OF: Readonly<Record<string, 1 | -1>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
}

/** One handler a drawing, not one a part: a board has hundreds. The drawing is one stop of the tab key; the arrows lead from part to part. */
const handlersOf = (on: (touched: Touched) => void, drag: Drag | undefined) => ({
  onClick: (event: Event) => {
    const part = partAt(event)
    if (part !== null) on(touchedOf(part))
  },
  onKeyDown: (event: KeyboardEvent) => {
    const [part, step] = [partAt(event), STEP_OF[event.key]]
    if (part === null || (step === undefined && event.key !== 'Enter' && event.key !== ' ')) return
    event.preventDefault()
    if (step === undefined) on(touchedOf(part))
    else toNeighbour(part, step)
  },
  onPointerDown: (down: PointerEvent) => {
    const part = partAt(down)
    if (drag === undefined || part?.dataset['drag'] === undefined) return
    dragPart(part, down, (dxPx) => drag.onDrop(touchedOf(part), dxPx))
  },
})

/**
 * Shows a drawing as elements. With `onTouch`, its parts can be pressed and reached by keyboard. The elements are made anew only for another
 * drawing: whoever shows a large one hands in the same as long as nothing in it changed.
 */
export const DrawingView = (props: {
  readonly drawing: Drawing
  readonly onTouch?: (touched: Touched) => void
  /** Kinds of part that can be pressed; all when left out. */
  readonly touchable?: readonly string[]
  readonly drag?: Drag
  readonly class?: string
}) => {
  const { drawing, onTouch, touchable, drag } = props
  const kinds = [onTouch !== undefined, touchable?.join(' '), drag?.parts.join(' ')]
  const shown = useMemo(() => {
    const touch: Touch = {
      hasFirst: false,
      isPressed: (part) => touchable?.includes(part) ?? true,
      isDragged: (part) => drag?.parts.includes(part) ?? false,
    }
    return element(drawing, onTouch === undefined ? null : touch, 0)
  }, [drawing, ...kinds])
  return (
    <div class={`drawing ${props.class ?? ''}`} {...(onTouch === undefined ? {} : handlersOf(onTouch, drag))}>
      {shown}
    </div>
  )
}
