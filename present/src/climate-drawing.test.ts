import { describe, expect, it } from 'vitest'
import { climateDrawing, type ClimateDrawingMonth } from './climate-drawing.ts'
import { partsOf, type Drawing } from './drawing.ts'
import { IMPERIAL, METRIC } from './units.ts'

const months: readonly ClimateDrawingMonth[] = [
  { month: 1, rainMm: 64, minC: 2.4, maxC: 8.1, growth: 0.06, dryWindow: 0.29 },
  { month: 9, rainMm: 50.8, minC: 10, maxC: 20, growth: 0.5, dryWindow: null },
]
const input = { months, windowWords: '3 dry days', units: METRIC, widthPx: 284, scope: 'test' }

const titles = (drawing: Drawing) => partsOf(drawing, 'month').map((found) => found.attributes['aria-label'])

const rects = (drawing: Drawing): readonly Drawing[] =>
  drawing.children.flatMap((child) =>
    typeof child === 'string' ? [] : child.tag === 'rect' ? [child] : rects(child),
  )

describe('the year by months', () => {
  it('tells each month in words, in the units that the club reads', () => {
    expect(titles(climateDrawing(input))).toEqual([
      'Jan, rain 64 mm, 2.4 °C to 8.1 °C, growth 6 %, 3 dry days 29 %',
      'Sept, rain 50.8 mm, 10 °C to 20 °C, growth 50 %',
    ])
    expect(titles(climateDrawing({ ...input, units: IMPERIAL }))[1]).toBe(
      'Sept, rain 2 in, 50 °F to 68 °F, growth 50 %',
    )
  })

  it('draws rain to scale: the wettest month fills its row', () => {
    const drawn = rects(climateDrawing(input)).filter(
      ({ attributes }) => attributes['fill'] === 'url(#test-rain)',
    )
    const [january, september] = drawn.map(({ attributes }) => Number(attributes['height']))
    expect((september ?? NaN) / (january ?? NaN)).toBeCloseTo(50.8 / 64, 3)
  })
})
