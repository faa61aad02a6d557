import type { UnitsWanted } from '@swardwright/engine'
import { coordinate, draw, part, sheet, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { decimal, shareWords } from './numbers.ts'
import { patternDefinitions, patternFill } from './patterns.ts'
import { monthName } from './times.ts'
import { paint } from './tokens.ts'
import { figureOf, quantityWords } from './units.ts'

/** One month of a climate as it is drawn. */
export type ClimateDrawingMonth = {
  /** 1 for January. */
  readonly month: number
  readonly rainMm: number
  readonly minC: number
  readonly maxC: number
  /** Growth potential, 0 to 1. */
  readonly growth: number
  /** Chance that a dry window begins on a day of the month, 0 to 1; null where it is not known. */
  readonly dryWindow: number | null
}

/** A year of months. */
export type ClimateDrawingInput = {
  readonly months: readonly ClimateDrawingMonth[]
  /** What the lowest row is called: '3 dry days'. */
  readonly windowWords: string
  readonly units: UnitsWanted
  readonly widthPx: number
  readonly scope: string
}

const LEFT_PX = 78
const RIGHT_PX = 6
const TOP_PX = 20
const ROW_PX = 74
const PLOT_PX = 50

type Frame = { readonly x: (index: number) => number; readonly stepPx: number; readonly right: number }

const frameOf = ({ months, widthPx }: ClimateDrawingInput): Frame => {
  const stepPx = (widthPx - LEFT_PX - RIGHT_PX) / Math.max(1, months.length)
  return { x: (index) => LEFT_PX + index * stepPx, stepPx, right: widthPx - RIGHT_PX }
}

/** Foot of the row with this number. */
const footPx = (row: number): number => TOP_PX + row * ROW_PX + ROW_PX - 8

const rowFrame = (row: number, frame: Frame, label: readonly string[]): readonly Drawing[] => [
  ...label.map((line, n) =>
    draw(
      'text',
      {
        x: 0,
        y: footPx(row) - (label.length - 1 - n) * 15 - 4,
        'font-size': 13,
        fill: paint(n === 0 ? 'ink' : 'quiet'),
      },
      [line],
    ),
  ),
  draw('path', {
    d: `M${LEFT_PX} ${footPx(row)}H${coordinate(frame.right)}`,
    stroke: paint('ink'),
    'stroke-width': 1,
    fill: 'none',
  }),
]

const figure = (x: number, y: number, words: string, bold = false): Drawing =>
  haloText(
    {
      x,
      y,
      'font-size': 12,
      'font-weight': bold ? 650 : 400,
      'text-anchor': 'middle',
      fill: paint('ink'),
    },
    words,
  )

/** Columns from nought up, each with its figure on top. */
const columnsRow = (
  row: number,
  frame: Frame,
  values: readonly (number | null)[],
  look: {
    readonly top: number
    readonly fill: string
    readonly edge: 'rain' | 'leaf'
    readonly words: (value: number) => string
  },
): readonly (Drawing | null)[] =>
  values.flatMap((value, index) => {
    if (value === null || !Number.isFinite(value))
      return [figure(frame.x(index) + frame.stepPx / 2, footPx(row) - 4, '?')]
    const heightPx = PLOT_PX * Math.min(1, value / look.top)
    return [
      draw('rect', {
        x: frame.x(index) + 1.5,
        y: footPx(row) - heightPx,
        width: Math.max(1, frame.stepPx - 3),
        height: heightPx,
        fill: look.fill,
        stroke: paint(look.edge),
        'stroke-width': 1,
      }),
      figure(frame.x(index) + frame.stepPx / 2, footPx(row) - heightPx - 4, look.words(value)),
    ]
  })

/** A bar from the coldest to the warmest of a mean day. */
const temperatureRow = (row: number, frame: Frame, input: ClimateDrawingInput): readonly Drawing[] => {
  const low = Math.min(0, ...input.months.map(({ minC }) => minC))
  const high = Math.max(...input.months.map(({ maxC }) => maxC))
  // Room over and under the bars for their figures.
  const y = (celsius: number): number =>
    footPx(row) - 13 - ((celsius - low) / Math.max(1, high - low)) * (PLOT_PX - 14)
  return input.months.flatMap(({ minC, maxC }, index) => {
    const middle = frame.x(index) + frame.stepPx / 2
    return [
      draw('rect', {
        x: middle - 3.5,
        y: y(maxC),
        width: 7,
        height: Math.max(1, y(minC) - y(maxC)),
        fill: paint('ochre'),
        'fill-opacity': 0.8,
      }),
      figure(middle, y(maxC) - 3, whole(maxC, input.units)),
      figure(middle, y(minC) + 11, whole(minC, input.units)),
    ]
  })
}

const whole = (celsius: number, units: UnitsWanted): string =>
  decimal(units.temperature === 'F' ? celsius * 1.8 + 32 : celsius, 0)

const monthWords = (month: ClimateDrawingMonth, input: ClimateDrawingInput): string =>
  [
    monthName(month.month),
    `rain ${quantityWords('rain', month.rainMm, input.units)}`,
    `${quantityWords('temperature', month.minC, input.units)} to ${quantityWords('temperature', month.maxC, input.units)}`,
    `growth ${shareWords(month.growth, 0)}`,
    ...(month.dryWindow === null ? [] : [`${input.windowWords} ${shareWords(month.dryWindow, 0)}`]),
  ].join(', ')

/** The year by months: rain, coldest and warmest of a mean day, growth, and the chance of a dry window. Part: `month`. */
export const climateDrawing = (input: ClimateDrawingInput): Drawing => {
  const frame = frameOf(input)
  const { months, units } = input
  const mostRain = Math.max(10, ...months.map(({ rainMm }) => rainMm))
  const rainWords = (mm: number) => (units.rain === 'in' ? figureOf('rain', mm, units) : decimal(mm, 0))
  const percent = (share: number) => decimal(share * 100, 0)
  const rows = 4
  return sheet({ widthPx: input.widthPx, heightPx: TOP_PX + rows * ROW_PX, label: 'The year by months' }, [
    patternDefinitions(input.scope, ['rain']),
    ...months.map((month, index) =>
      part('month', String(month.month), monthWords(month, input), [
        draw('rect', {
          x: frame.x(index),
          y: 0,
          width: frame.stepPx,
          height: TOP_PX + rows * ROW_PX,
          fill: 'transparent',
        }),
        draw(
          'text',
          {
            x: frame.x(index) + frame.stepPx / 2,
            y: 12,
            'font-size': 12,
            'font-weight': 650,
            'text-anchor': 'middle',
            fill: paint('ink'),
          },
          [frame.stepPx < 34 ? monthName(month.month).slice(0, 1) : monthName(month.month)],
        ),
      ]),
    ),
    ...rowFrame(0, frame, ['rain', units.rain === 'in' ? 'in' : 'mm']),
    ...columnsRow(
      0,
      frame,
      months.map(({ rainMm }) => rainMm),
      { top: mostRain, fill: patternFill(input.scope, 'rain'), edge: 'rain', words: rainWords },
    ),
    ...rowFrame(1, frame, ['day', units.temperature === 'F' ? '°F' : '°C']),
    ...temperatureRow(1, frame, input),
    ...rowFrame(2, frame, ['growth', '%']),
    ...columnsRow(
      2,
      frame,
      months.map(({ growth }) => growth),
      { top: 1, fill: paint('turf'), edge: 'leaf', words: percent },
    ),
    ...rowFrame(3, frame, [input.windowWords, '%']),
    ...columnsRow(
      3,
      frame,
      months.map(({ dryWindow }) => dryWindow),
      { top: 1, fill: paint('wash'), edge: 'leaf', words: percent },
    ),
  ])
}
