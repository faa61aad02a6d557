/** Shorter than this is a press, not a drag. */
const LEAST_DRAG_PX = 6

/** A mouse or pen carries the part along until it is let go; a finger scrolls, so it does not drag. */
export const dragPart = (part: SVGElement, down: PointerEvent, onDrop: (dxPx: number) => void): void => {
  if (down.pointerType === 'touch') return
  part.setPointerCapture(down.pointerId)
  const move = (event: PointerEvent) => {
    part.setAttribute('transform', `translate(${event.clientX - down.clientX} 0)`)
  }
  const end = (event: PointerEvent) => {
    part.removeEventListener('pointermove', move)
    part.removeEventListener('pointerup', end)
    part.removeEventListener('pointercancel', end)
    part.removeAttribute('transform')
    const dxPx = event.clientX - down.clientX
    if (event.type === 'pointerup' && Math.abs(dxPx) >= LEAST_DRAG_PX) onDrop(dxPx)
  }
  part.addEventListener('pointermove', move)
  part.addEventListener('pointerup', end)
  part.addEventListener('pointercancel', end)
}
