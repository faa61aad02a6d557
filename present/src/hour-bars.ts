import { coordinate, draw, part, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { paint } from './tokens.ts'

const BAR_MOST_PX = 22

/** One figure of each hour as a bar: wind, a chance. */
export type HourBars = {
  readonly id: string
  /** Short name at the left: 'wind m/s'. */
  readonly label: string
  /** One for each hour; null where nothing is known. */
  readonly values: readonly (number | null)[]
  /** Value of a full bar; more is drawn as much. */
  readonly top: number
  /** From here on a bar counts as care, or as stop; neither where left out. */
  readonly careFrom?: number
  readonly stopFrom?: number
  /** True where more is better: a chance to get the work done. */
  readonly isGood?: boolean
  /** What a value is called, with its unit: '5 m/s', '40 %'. */
  readonly words: (value: number) => string
  /** The figure over the highest bar, without its unit. */
  readonly figure: (value: number) => string
}

/** Rust from the stop, ochre from the care on; else blue, or green where more is better: the figure over the bar says the same without colour. */
const barPaint = (bars: HourBars, value: number): 'rust' | 'ochre' | 'rain' | 'leaf' =>
  bars.stopFrom !== undefined && value >= bars.stopFrom
    ? 'rust'
    : bars.careFrom !== undefined && value >= bars.careFrom
      ? 'ochre'
      : bars.isGood === true
        ? 'leaf'
        : 'rain'

/** Whether a figure is one to look out for, so that it takes the colour of its bar. */
const isLimit = (bars: HourBars, value: number): boolean =>
  value >= Math.min(bars.careFrom ?? Infinity, bars.stopFrom ?? Infinity)

/** The hours over which a row says its highest figure: one for each third of the strip that has any. */
const peaksOf = (bars: HourBars): readonly number[] => {
  const third = Math.ceil(bars.values.length / 3)
  return [0, 1, 2].flatMap((n) => {
    const part = bars.values.slice(n * third, (n + 1) * third)
    const most = Math.max(...part.map((value) => value ?? -Infinity))
    return most > 0 && Number.isFinite(most) ? [n * third + part.indexOf(most)] : []
  })
}

/** Where a row of bars stands. */
export type BarsPlace = {
  /** Foot of the bars. */
  readonly basePx: number
  readonly leftPx: number
  readonly rightPx: number
  readonly pxPerHour: number
}

/** One row of bars with its name, the highest figure of each third, and the limit as a broken line. Part: `bars`. */
export const barsRow = (bars: HourBars, place: BarsPlace): Drawing => {
  const { basePx: base, leftPx, rightPx, pxPerHour } = place
  const x = (hour: number): number => leftPx + hour * pxPerHour
  const heightPx = (value: number): number => Math.max(1, BAR_MOST_PX * Math.min(1, value / bars.top))
  const known = bars.values.flatMap((value) => value ?? [])
  const told =
    known.length === 0
      ? 'not known'
      : `${bars.words(Math.min(...known))} to ${bars.words(Math.max(...known))}`
  return part('bars', bars.id, `${bars.label}: ${told}`, [
    draw('text', { x: 0, y: base - 4, 'font-size': 13, fill: paint('ink') }, [bars.label]),
    draw('path', {
      d: `M${coordinate(leftPx)} ${base}H${coordinate(rightPx)}`,
      stroke: paint('rule'),
      'stroke-width': 1,
      fill: 'none',
    }),
    ...bars.values.map((value, hour) =>
      value === null || value <= 0
        ? null
        : draw('rect', {
            x: x(hour) + 0.5,
            y: base - heightPx(value),
            width: Math.max(1, pxPerHour - 1),
            height: heightPx(value),
            fill: paint(barPaint(bars, value)),
            'fill-opacity': 0.75,
          }),
    ),
    bars.stopFrom === undefined || bars.stopFrom > bars.top
      ? null
      : draw('path', {
          d: `M${coordinate(leftPx)} ${coordinate(base - heightPx(bars.stopFrom))}H${coordinate(rightPx)}`,
          stroke: paint('rust'),
          'stroke-width': 1,
          'stroke-dasharray': '3 3',
          fill: 'none',
        }),
    ...peaksOf(bars).map((hour) => {
      const value = bars.values[hour] ?? 0
      return haloText(
        {
          x: x(hour) + pxPerHour / 2,
          y: base - heightPx(value) - 3,
          'font-size': 12,
          'text-anchor': 'middle',
          fill: paint(isLimit(bars, value) ? barPaint(bars, value) : 'ink'),
        },
        bars.figure(value),
      )
    }),
    known.length === 0
      ? haloText({ x: leftPx + 4, y: base - 4, 'font-size': 12, fill: paint('quiet') }, 'not known')
      : null,
  ])
}
