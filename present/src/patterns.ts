import { draw, type Drawing } from './drawing.ts'
import { paint } from './tokens.ts'

/** What a patterned band means. Each is told apart by its pattern alone, so it holds on black and white paper. */
export const PATTERNS = ['rain', 'dew', 'dusk', 'frost', 'shut', 'trees', 'water', 'grit'] as const

/** The name of a pattern. */
export type PatternName = (typeof PATTERNS)[number]

type Tile = { readonly size: number; readonly marks: readonly Drawing[] }

const strokes = (d: string, colour: string, width = 1.1): Drawing =>
  draw('path', { d, stroke: colour, 'stroke-width': width, fill: 'none', 'stroke-linecap': 'round' })

const dots = (at: readonly (readonly [number, number])[], radius: number, fill: string): readonly Drawing[] =>
  at.map(([cx, cy]) => draw('circle', { cx, cy, r: radius, fill }))

/** One tile a pattern. Marks stay inside the tile or come in pairs over its edge, so that no seam shows. */
const TILES: Readonly<Record<PatternName, Tile>> = {
  rain: { size: 10, marks: [strokes('M3.5 0.5L1.5 5.5M8.5 4.8L6.5 9.8', paint('rain'), 1.3)] },
  dew: {
    size: 10,
    marks: dots(
      [
        [2.5, 2.5],
        [7.5, 7.5],
      ],
      1.25,
      paint('dew'),
    ),
  },
  dusk: { size: 6, marks: [strokes('M0 0L6 6M6 0L0 6', paint('dusk'), 0.8)] },
  frost: { size: 12, marks: [strokes('M6 2.5V9.5M3 4.2L9 7.8M9 4.2L3 7.8', paint('dew'), 0.9)] },
  shut: { size: 8, marks: [strokes('M0 8L8 0M-1 1L1 -1M7 9L9 7', paint('rust'), 1.1)] },
  trees: {
    size: 14,
    marks: [strokes('M1.5 6.5q2-4 4 0q2-4 4 0M7.5 12.5q2-3.4 4 0', paint('leaf'), 0.8)],
  },
  water: { size: 14, marks: [strokes('M1 4q2.5-2 5 0t5 0M4 11q2-1.6 4 0t4 0', paint('rain'), 0.8)] },
  grit: {
    size: 6,
    marks: dots(
      [
        [1.4, 1.6],
        [4.3, 4.4],
      ],
      0.5,
      paint('thatch'),
    ),
  },
}

/**
 * The definitions of patterns that a drawing uses. `scope` is a short word of the drawing's own: several drawings stand in one page,
 * and one that is hidden must not take its patterns from the others.
 */
export const patternDefinitions = (scope: string, names: readonly PatternName[]): Drawing =>
  draw(
    'defs',
    {},
    names.map((name) =>
      draw(
        'pattern',
        {
          id: `${scope}-${name}`,
          width: TILES[name].size,
          height: TILES[name].size,
          patternUnits: 'userSpaceOnUse',
        },
        TILES[name].marks,
      ),
    ),
  )

/** The fill that uses a pattern of `patternDefinitions(scope, ...)`. */
export const patternFill = (scope: string, name: PatternName): string => `url(#${scope}-${name})`
