import { describe, expect, it } from 'vitest'
import { draw, part, partsOf, sheet } from './drawing.ts'
import { escapeMarkup, toSvgString } from './drawing-text.ts'
import { paint } from './tokens.ts'

describe('a drawing', () => {
  it('is written as SVG with every name escaped, in text and in attributes', () => {
    const drawing = part('green', '1', `O'Brien's "Dell" <&>`, [draw('text', { x: 1 }, ['a < b'])])
    expect(toSvgString(drawing)).toBe(
      '<g data-part="green" data-id="1" role="img" aria-label="O&#39;Brien&#39;s &quot;Dell&quot; &lt;&amp;&gt;">' +
        '<title>O&#39;Brien&#39;s &quot;Dell&quot; &lt;&amp;&gt;</title><text x="1">a &lt; b</text></g>',
    )
  })

  it('leaves out characters that XML cannot hold', () => {
    expect(escapeMarkup('Long\u0000 Mea\u000bdow\uffff')).toBe('Long Meadow')
  })

  it('keeps colours by name for a page, and writes them out for a file', () => {
    const line = draw('path', { stroke: paint('ink'), d: 'M0 0h4' })
    expect(toSvgString(line)).toBe('<path stroke="var(--ink)" d="M0 0h4"/>')
    expect(toSvgString(line, 'night')).toBe('<path stroke="#eef1ea" d="M0 0h4"/>')
    expect(toSvgString(line, 'print')).toBe('<path stroke="#000000" d="M0 0h4"/>')
  })

  it('drops attributes that are not given and children that are nothing', () => {
    expect(draw('g', { id: undefined, x: 0.12345 }, [null, 'a'])).toEqual({
      tag: 'g',
      attributes: { x: 0.123 },
      children: ['a'],
    })
  })

  it('finds its parts by kind, however deep', () => {
    const inner = part('hole', '2', 'second', [])
    const drawing = sheet({ widthPx: 10, heightPx: 10, label: 'x' }, [
      part('hole', '1', 'first', []),
      draw('g', {}, [inner, part('layer', 'top', 'top', [])]),
    ])
    expect(partsOf(drawing, 'hole').map((found) => found.attributes['data-id'])).toEqual(['1', '2'])
  })
})
