import { expect, it } from 'vitest'
import { partsOf } from './drawing.ts'
import { toSvgString } from './drawing-text.ts'
import { outlineDrawing, type OutlineDrawingInput } from './ground-outline.ts'

const at = (x: number, y: number) => ({ x, y })

const square: OutlineDrawingInput = {
  label: 'Outline of Seven',
  rings: [[at(0, 0), at(20, 0), at(20, 20), at(0, 20)]],
  beside: [],
  bunkers: [],
  numbered: true,
  widthPx: 332,
}

it('numbers the corners in their order, north up', () => {
  const text = toSvgString(outlineDrawing(square))
  // 20 m and 4 m each side on 332 - 52 px: 10 px a metre; corner 1 at 4 m from the left and from the foot.
  expect(text).toContain('M66 266L266 266L266 66L66 66Z')
  expect(text.match(/>[1-4]<\/text>/gu)).toHaveLength(8)
})

it('shows where an outline is refused, in a word as well as a ring', () => {
  const drawing = outlineDrawing({ ...square, faultAt: at(10, 10) })
  expect(partsOf(drawing, 'fault')).toHaveLength(1)
  expect(toSvgString(drawing)).toContain('here')
  expect(partsOf(outlineDrawing(square), 'fault')).toHaveLength(0)
})

it('draws an empty sheet where nothing is known yet', () => {
  const text = toSvgString(outlineDrawing({ ...square, rings: [] }))
  expect(text).not.toMatch(/NaN|Infinity|undefined/u)
})
