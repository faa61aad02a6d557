import { HOUR_MS, type PlanRisk } from '@swardwright/engine'
import { coordinate, draw, part, sheet, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { chanceWords } from './risk-words.ts'
import { textWidthPx } from './text-fit.ts'
import { clock, instantMs } from './times.ts'
import { paint } from './tokens.ts'

/** One day's chance of a caught green against the minute after which nothing is opened. */
export type RiskCurveInput = {
  readonly day: PlanRisk['days'][number]
  /** The manager's level, 0 to 1. */
  readonly level: number
  readonly timeZone: string
  readonly widthPx: number
  readonly greenNames: ReadonlyMap<string, string>
}

const TOP_PX = 30
const HEIGHT_PX = 120
const FOOT_PX = 26
const LEFT_PX = 44
const RIGHT_PX = 10

/** Small chances matter most, so the height follows the square root of the chance: 1 % stands at a tenth, 25 % at half. */
const heightOf = (chance: number): number => TOP_PX + HEIGHT_PX * (1 - Math.sqrt(chance))

const GRID = [0.01, 0.05, 0.25, 1]

type Point = { readonly atMs: number; readonly chance: number; readonly green: string }

/** A step: between two openings nothing is opened, so the chance stays until the next. */
const stepPath = (points: readonly Point[], x: (ms: number) => number, endMs: number): string =>
  points
    .map(({ atMs, chance }, index) => {
      const until = points[index + 1]?.atMs ?? endMs
      const y = coordinate(heightOf(chance))
      return `${index === 0 ? 'M' : 'L'}${coordinate(x(atMs))} ${y}H${coordinate(x(until))}`
    })
    .join('')

const hoursBetween = (fromMs: number, toMs: number): readonly number[] => {
  const first = Math.ceil(fromMs / HOUR_MS) * HOUR_MS
  return Array.from(
    { length: Math.max(0, Math.floor((toMs - first) / HOUR_MS) + 1) },
    (_, n) => first + n * HOUR_MS,
  )
}

const flag = (input: RiskCurveInput, x: (ms: number) => number): Drawing | null => {
  const { lastSafeStart, chance } = input.day
  if (lastSafeStart === null || chance <= input.level) return null
  const at = x(instantMs(lastSafeStart))
  const words = `${clock(lastSafeStart, input.timeZone)} last safe start`
  const isLeft = at + textWidthPx(words, 13) + 8 > input.widthPx
  return part('flag', 'lastSafeStart', words, [
    draw('path', {
      d: `M${coordinate(at)} ${TOP_PX - 12}V${TOP_PX + HEIGHT_PX}`,
      stroke: paint('rust'),
      'stroke-width': 2,
      fill: 'none',
    }),
    haloText(
      {
        x: isLeft ? at - 6 : at + 6,
        y: TOP_PX - 10,
        'font-size': 13,
        'font-weight': 650,
        'text-anchor': isLeft ? 'end' : 'start',
        fill: paint('rust'),
      },
      words,
    ),
  ])
}

/** The curve of one day: a stepped ink line over the hours, the manager's level as a dashed line, the last safe start under it as a rule. */
export const riskCurve = (input: RiskCurveInput): Drawing => {
  const points = input.day.curve.map(({ opens, chance, green }) => ({
    atMs: instantMs(opens),
    chance,
    green,
  }))
  const fromMs = points[0]?.atMs ?? 0
  const toMs = Math.max(fromMs + HOUR_MS, (points.at(-1)?.atMs ?? fromMs) + HOUR_MS / 4)
  const roomPx = input.widthPx - LEFT_PX - RIGHT_PX
  const x = (ms: number): number => LEFT_PX + ((ms - fromMs) / (toMs - fromMs)) * roomPx
  const hours = hoursBetween(fromMs, toMs)
  const every = Math.max(1, Math.ceil((hours.length * 44) / roomPx))
  const label = `Chance of a caught green against the last opening: ${chanceWords(input.day.chance)} as planned`
  return sheet({ widthPx: input.widthPx, heightPx: TOP_PX + HEIGHT_PX + FOOT_PX, label }, [
    ...GRID.flatMap((chance) => [
      draw('path', {
        d: `M${LEFT_PX} ${coordinate(heightOf(chance))}H${input.widthPx - RIGHT_PX}`,
        stroke: paint('rule'),
        'stroke-width': 0.8,
        fill: 'none',
      }),
      draw(
        'text',
        {
          x: LEFT_PX - 6,
          y: heightOf(chance) + 4,
          'font-size': 11,
          'text-anchor': 'end',
          fill: paint('quiet'),
        },
        [chanceWords(chance)],
      ),
    ]),
    draw('path', {
      d: `M${LEFT_PX} ${coordinate(heightOf(input.level))}H${input.widthPx - RIGHT_PX}`,
      stroke: paint('rust'),
      'stroke-width': 1.6,
      'stroke-dasharray': '5 4',
      fill: 'none',
    }),
    ...hours
      .filter((_, index) => index % every === 0)
      .map((ms) =>
        draw(
          'text',
          {
            x: x(ms),
            y: TOP_PX + HEIGHT_PX + 18,
            'font-size': 11,
            'text-anchor': 'middle',
            fill: paint('quiet'),
          },
          [clock(ms, input.timeZone)],
        ),
      ),
    draw('path', { d: stepPath(points, x, toMs), stroke: paint('ink'), 'stroke-width': 2.4, fill: 'none' }),
    ...points
      .slice(0, input.day.planned)
      .map(({ atMs, chance, green }) =>
        part(
          'opening',
          green,
          `${input.greenNames.get(green) ?? green} opened ${clock(atMs, input.timeZone)}: ${chanceWords(chance)}`,
          [draw('circle', { cx: x(atMs), cy: heightOf(chance), r: 5, fill: paint('ink') })],
        ),
      ),
    flag(input, x),
  ])
}
