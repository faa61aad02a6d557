import { COLOUR, label, picture, px, shape } from './svg.ts'

/** One line of a plot, with the word that stands at its end. */
export type Line = {
  readonly name: string
  readonly colour: string
  readonly dashed?: true
  readonly points: readonly (readonly [x: number, y: number])[]
  /** Moves the word up (negative) or down, px. */
  readonly shiftPx?: number
}

/** An axis: its words with the unit, and its marks from the first to the last. */
export type Axis = {
  readonly words: string
  readonly ticks: readonly number[]
  /** What stands at the marks instead of their numbers. */
  readonly labels?: readonly string[]
}

/** A point that is told by its words, e.g. a published value. */
export type Mark = {
  readonly x: number
  readonly y: number
  readonly words: string
  /** Which side of the point the words stand on, clear of the line. */
  readonly side: 'above' | 'below' | 'left'
}

/** What a plot shows. */
export type Plot = {
  readonly title: string
  readonly x: Axis
  readonly y: Axis
  readonly lines: readonly Line[]
  readonly marks?: readonly Mark[]
}

const WIDTH = 640
const HEIGHT = 340
const FRAME = { left: 62, right: 500, top: 40, bottom: 290 }

const scale = (ticks: readonly number[], from: number, to: number) => {
  const [first, last] = [ticks[0] ?? 0, ticks.at(-1) ?? 1]
  return (value: number): number => from + ((value - first) / (last - first)) * (to - from)
}

const markLabel = ({ words, side }: Mark, x: number, y: number): string => {
  if (side === 'left') return label(x - 10, y - 4, words, { 'text-anchor': 'end' })
  return side === 'above' ? label(x + 8, y - 10, words) : label(x + 10, y + 18, words)
}

/** A plot of lines on a grid; the formula's own numbers come in as points. */
export const linePlot = ({ title, x, y, lines, marks = [] }: Plot): string => {
  const atX = scale(x.ticks, FRAME.left, FRAME.right)
  const atY = scale(y.ticks, FRAME.bottom, FRAME.top)
  const grid = [
    ...x.ticks.flatMap((tick, i) => [
      shape('line', { x1: atX(tick), x2: atX(tick), y1: FRAME.top, y2: FRAME.bottom, stroke: COLOUR.rule }),
      label(atX(tick), FRAME.bottom + 18, x.labels?.[i] ?? String(tick), {
        'text-anchor': 'middle',
        fill: COLOUR.quiet,
      }),
    ]),
    ...y.ticks.flatMap((tick) => [
      shape('line', { x1: FRAME.left, x2: FRAME.right, y1: atY(tick), y2: atY(tick), stroke: COLOUR.rule }),
      label(FRAME.left - 8, atY(tick) + 4, String(tick), { 'text-anchor': 'end', fill: COLOUR.quiet }),
    ]),
  ]
  const drawn = lines.flatMap(({ name, colour, dashed, points, shiftPx = 0 }) => {
    const [endX, endY] = points.at(-1) ?? [0, 0]
    return [
      shape('polyline', {
        points: points.map(([px_, py]) => `${px(atX(px_))},${px(atY(py))}`).join(' '),
        fill: 'none',
        stroke: colour,
        'stroke-width': '2',
        ...(dashed === true ? { 'stroke-dasharray': '6 4' } : {}),
      }),
      label(atX(endX) + 6, atY(endY) + 4 + shiftPx, name, { fill: colour }),
    ]
  })
  const told = marks.flatMap((mark) => [
    shape('circle', { cx: atX(mark.x), cy: atY(mark.y), r: 4, fill: COLOUR.ink }),
    markLabel(mark, atX(mark.x), atY(mark.y)),
  ])
  return picture(WIDTH, HEIGHT, title, [
    label(16, 22, title, { 'font-weight': 'bold' }),
    ...grid,
    ...drawn,
    ...told,
    label((FRAME.left + FRAME.right) / 2, HEIGHT - 12, x.words, { 'text-anchor': 'middle' }),
    label(18, (FRAME.top + FRAME.bottom) / 2, y.words, {
      'text-anchor': 'middle',
      transform: `rotate(-90 18 ${px((FRAME.top + FRAME.bottom) / 2)})`,
    }),
  ])
}

/** Points of a function at equal steps. */
export const pointsOf = (
  from: number,
  to: number,
  steps: number,
  f: (x: number) => number,
): readonly (readonly [number, number])[] =>
  Array.from({ length: steps + 1 }, (_, i) => {
    const x = from + ((to - from) * i) / steps
    return [x, f(x)] as const
  })
