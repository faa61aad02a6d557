import type { UnitsWanted } from '@swardwright/engine'
import { coordinate, draw, part, sheet, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { counted } from './numbers.ts'
import { patternDefinitions, patternFill } from './patterns.ts'
import { textWidthPx } from './text-fit.ts'
import { paint } from './tokens.ts'
import { bandWords, figureOf, quantityWords, unitMark, type Band } from './units.ts'

/** What the sand order is judged by. Dry tonnes. */
export type SandBarInput = {
  readonly needT: Band
  /** What lies in the bay and can be used. */
  readonly stockT: number
  /** One lorry load. */
  readonly lorryT: number
  /** Lorry loads to order. */
  readonly lorries: number
  /** What the bay holds in all. */
  readonly bayT: number
  readonly units: UnitsWanted
  readonly widthPx: number
  /** Short word for the ids inside the drawing; different for each drawing of a page. */
  readonly scope: string
}

const EDGE_PX = 8
const NEED_PX = 44
const LORRY_PX = 104
const BAY_PX = 160
const BAR_PX = 26

type Scale = (tonnes: number) => number

/** A step of 1, 2 or 5 times a power of ten that leaves room for the figures. */
const niceStep = (topT: number, widthPx: number): number => {
  const least = topT / Math.max(1, Math.floor(widthPx / 56))
  const power = 10 ** Math.floor(Math.log10(least))
  return ([1, 2, 5, 10].find((n) => n * power >= least) ?? 10) * power
}

const needDrawing = (input: SandBarInput, x: Scale): Drawing => {
  const { low, likely, high } = input.needT
  const box = { x: x(low), y: NEED_PX, width: Math.max(2, x(high) - x(low)), height: BAR_PX }
  const figure = (tonnes: number) => figureOf('sand', tonnes, input.units)
  const ends = x(high) - x(low) > textWidthPx(figure(low) + figure(high), 12) + 60
  const text = (words: string, at: number, anchor: string, size: number) =>
    draw(
      'text',
      {
        x: at,
        y: NEED_PX - 8,
        'font-size': size,
        'font-weight': size > 12 ? 650 : 400,
        'text-anchor': anchor,
        fill: paint('ink'),
      },
      [words],
    )
  return part('need', 'need', `needed: ${bandWords('sand', input.needT, input.units)}`, [
    draw('rect', { ...box, fill: paint('sand') }),
    draw('rect', { ...box, fill: patternFill(input.scope, 'grit') }),
    draw('rect', { ...box, fill: 'none', stroke: paint('ink'), 'stroke-width': 1 }),
    draw('path', {
      d: `M${coordinate(x(likely))} ${NEED_PX - 4}v${BAR_PX + 8}`,
      stroke: paint('ink'),
      'stroke-width': 3,
      fill: 'none',
    }),
    x(low) - EDGE_PX > textWidthPx('needed', 13) + 6
      ? draw('text', { x: EDGE_PX, y: NEED_PX + 17, 'font-size': 13, fill: paint('ink') }, ['needed'])
      : null,
    text(quantityWords('sand', likely, input.units), x(likely), 'middle', 20),
    ends ? text(figure(low), x(low), 'start', 12) : null,
    ends ? text(figure(high), x(high), 'end', 12) : null,
  ])
}

/** What lies there, then each lorry load as a box of its own. */
const supplyDrawing = (input: SandBarInput, x: Scale): Drawing => {
  const { stockT, lorryT, lorries, units } = input
  const sumT = stockT + lorryT * lorries
  const short = sumT < input.needT.likely
  const load = (n: number): Drawing =>
    part('lorry', String(n + 1), `lorry load ${n + 1}: ${quantityWords('sand', lorryT, units)}`, [
      draw('rect', {
        x: x(stockT + n * lorryT) + 1,
        y: LORRY_PX,
        width: Math.max(1, x(lorryT) - x(0) - 2),
        height: BAR_PX,
        fill: paint('wash'),
        stroke: paint('ink'),
        'stroke-width': 1.2,
      }),
    ])
  const lorryWords = `${counted(lorries, 'lorry load', 'lorry loads')} of ${quantityWords('sand', lorryT, units)}`
  const words = stockT > 0 ? `${quantityWords('sand', stockT, units)} in the bay + ${lorryWords}` : lorryWords
  return draw('g', {}, [
    draw('text', { x: EDGE_PX, y: LORRY_PX - 8, 'font-size': 13, fill: paint('ink') }, [
      `${words} = ${quantityWords('sand', sumT, units)}`,
    ]),
    stockT > 0
      ? part('stock', 'stock', `in the bay: ${quantityWords('sand', stockT, units)}`, [
          draw('rect', {
            x: x(0),
            y: LORRY_PX,
            width: x(stockT) - x(0),
            height: BAR_PX,
            fill: paint('sand'),
          }),
          draw('rect', {
            x: x(0),
            y: LORRY_PX,
            width: x(stockT) - x(0),
            height: BAR_PX,
            fill: patternFill(input.scope, 'grit'),
          }),
        ])
      : null,
    ...Array.from({ length: lorries }, (_, n) => load(n)),
    short
      ? draw('g', { 'data-part': 'short' }, [
          draw('path', {
            d: `M${coordinate(x(sumT))} ${LORRY_PX + BAR_PX / 2}H${coordinate(x(input.needT.likely))}`,
            stroke: paint('rust'),
            'stroke-width': 2,
            'stroke-dasharray': '4 3',
            fill: 'none',
          }),
          haloText(
            {
              x: x(input.needT.likely) + 4,
              y: LORRY_PX + BAR_PX / 2 + 4,
              'font-size': 13,
              'font-weight': 650,
              fill: paint('rust'),
            },
            `${quantityWords('sand', input.needT.likely - sumT, units)} short`,
          ),
        ])
      : null,
  ])
}

/** The bay as a bracket; rust where the order does not fit in at once. */
const bayDrawing = (input: SandBarInput, x: Scale): Drawing => {
  const { bayT, stockT, units } = input
  const roomT = Math.max(0, bayT - stockT)
  const fits = Math.floor(roomT / input.lorryT)
  const all = fits >= input.lorries
  const words = all
    ? `the bay holds ${quantityWords('sand', bayT, units)}: all loads fit at once`
    : `the bay holds ${quantityWords('sand', bayT, units)}: ${fits === 0 ? 'no load fits yet' : `${counted(fits, 'load fits', 'loads fit')} at once`}`
  return part('bay', 'bay', words, [
    draw('path', {
      d: `M${coordinate(x(0))} ${BAY_PX - 14}v8H${coordinate(x(bayT))}v-8`,
      stroke: paint(all ? 'ink' : 'rust'),
      'stroke-width': 1.6,
      fill: 'none',
    }),
    draw('text', { x: EDGE_PX, y: BAY_PX + 12, 'font-size': 13, fill: paint(all ? 'ink' : 'rust') }, [words]),
  ])
}

/** The sand order: low, likely and high need over what lies in the bay and whole lorry loads, with the bay's room under them. */
export const sandBar = (input: SandBarInput): Drawing => {
  const topT = Math.max(input.needT.high, input.stockT + input.lorryT * input.lorries, input.bayT) * 1.04
  const x: Scale = (tonnes) => EDGE_PX + (tonnes / topT) * (input.widthPx - 2 * EDGE_PX)
  const stepT = niceStep(topT, input.widthPx - 2 * EDGE_PX)
  const marks = Array.from({ length: Math.floor(topT / stepT) + 1 }, (_, n) => n * stepT)
  const bottomPx = BAY_PX + 44
  const label = `Sand: ${bandWords('sand', input.needT, input.units)}; ${counted(input.lorries, 'lorry load', 'lorry loads')}`
  return sheet({ widthPx: input.widthPx, heightPx: bottomPx, label }, [
    patternDefinitions(input.scope, ['grit']),
    draw('path', {
      d: marks.map((tonnes) => `M${coordinate(x(tonnes))} ${NEED_PX}V${BAY_PX + 20}`).join(''),
      stroke: paint('rule'),
      'stroke-width': 0.8,
      fill: 'none',
    }),
    ...marks.map((tonnes, n) =>
      draw(
        'text',
        {
          x: x(tonnes),
          y: bottomPx - 6,
          'font-size': 11,
          'text-anchor': n === 0 ? 'start' : 'middle',
          fill: paint('quiet'),
        },
        [n === 0 ? `0 ${unitMark('sand', input.units)}` : figureOf('sand', tonnes, input.units)],
      ),
    ),
    needDrawing(input, x),
    supplyDrawing(input, x),
    bayDrawing(input, x),
  ])
}
