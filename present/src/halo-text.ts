import { draw, type Drawing } from './drawing.ts'
import { paint } from './tokens.ts'

/**
 * Text that is read over patterns: a rim of paper lies under it. Two texts rather than `paint-order`, which makers of PDF files do not all know;
 * the rim is hidden from screen readers.
 */
export const haloText = (
  attributes: Readonly<Record<string, string | number | undefined>>,
  words: string,
): Drawing =>
  draw('g', {}, [
    draw(
      'text',
      {
        ...attributes,
        fill: 'none',
        stroke: paint('paper'),
        'stroke-width': 4,
        'stroke-linejoin': 'round',
        'aria-hidden': 'true',
      },
      [words],
    ),
    draw('text', attributes, [words]),
  ])
