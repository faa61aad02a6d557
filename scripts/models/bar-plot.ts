import { COLOUR, label, picture, shape } from './svg.ts'

/** One bar: its name, and its parts laid end to end. */
export type Bar = {
  readonly name: string
  readonly parts: readonly { readonly words: string; readonly value: number; readonly colour: string }[]
  /** What stands behind the bar. */
  readonly sum: string
}

const WIDTH = 640
const LEFT = 150
const RIGHT = 500
const ROW = 46

/** Bars across, each with the words of its parts inside or, where they are narrow, left out. */
export const barPlot = (title: string, longest: number, bars: readonly Bar[]): string => {
  const perUnit = (RIGHT - LEFT) / longest
  const rows = bars.flatMap((bar, row) => {
    const y = 44 + row * ROW
    let x = LEFT
    const parts = bar.parts.flatMap(({ words, value, colour }) => {
      const width = value * perUnit
      const from = x
      x += width
      return [
        shape('rect', {
          x: from,
          y,
          width,
          height: 26,
          fill: colour,
          stroke: COLOUR.ink,
          'stroke-width': '0.5',
        }),
        ...(width > words.length * 7 ? [label(from + 6, y + 18, words)] : []),
      ]
    })
    return [
      label(LEFT - 8, y + 18, bar.name, { 'text-anchor': 'end' }),
      ...parts,
      label(x + 8, y + 18, bar.sum),
    ]
  })
  return picture(WIDTH, 60 + bars.length * ROW, title, [
    label(16, 22, title, { 'font-weight': 'bold' }),
    ...rows,
  ])
}
