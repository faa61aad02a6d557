import type { Operation, UnitsWanted } from '@swardwright/engine'
import { HOUR_MS } from '@swardwright/engine'
import type { BoardSpan } from './board/board-input.ts'
import { coordinate, draw, part, sheet, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { barsRow, type HourBars } from './hour-bars.ts'
import { TASK_WORDS } from './operation-words.ts'
import { patternDefinitions, patternFill } from './patterns.ts'
import { scatteredOnLine } from './scatter.ts'
import type { SkyHour } from './sky-hours.ts'
import { textWidthPx } from './text-fit.ts'
import { clock } from './times.ts'
import { paint } from './tokens.ts'
import { figureOf, quantityWords } from './units.ts'

/** When one operation can be worked. */
export type WorkableBand = { readonly operation: Operation; readonly spans: readonly BoardSpan[] }

/** A day of hours. */
export type HourStripInput = {
  /** Hours in order, without gaps. */
  readonly hours: readonly SkyHour[]
  /** Stretches of dark inside the hours. */
  readonly dark: readonly BoardSpan[]
  readonly workable: readonly WorkableBand[]
  /** Rows of bars between the sky and the operations. */
  readonly bars?: readonly HourBars[]
  readonly nowMs?: number | undefined
  readonly timeZone: string
  readonly units: UnitsWanted
  readonly widthPx: number
  /** Short word for the ids inside the drawing; different for each drawing of a page. */
  readonly scope: string
}

const LABELS_PX = 96
const RIGHT_PX = 10
const SKY_TOP_PX = 18
const SKY_PX = 64
const ROW_PX = 24
const BARS_PX = 42
/** Rain that fills the sky of the strip, mm in an hour; more is drawn as much. */
const FULL_RAIN_MM = 4

type Strip = { readonly leftPx: number; readonly pxPerHour: number; readonly xPx: (ms: number) => number }

const hasLabels = ({ workable, bars = [] }: HourStripInput): boolean => workable.length + bars.length > 0

/** Where the rows of bars end and the operations begin. */
const barsBottomPx = ({ bars = [] }: HourStripInput): number =>
  SKY_TOP_PX + SKY_PX + (bars.length > 0 ? 14 : 0) + bars.length * BARS_PX

const stripOf = (input: HourStripInput): Strip => {
  const leftPx = hasLabels(input) ? LABELS_PX : RIGHT_PX
  const start = input.hours[0]?.startMs ?? 0
  const pxPerHour = (input.widthPx - leftPx - RIGHT_PX) / Math.max(1, input.hours.length)
  return { leftPx, pxPerHour, xPx: (ms) => leftPx + ((ms - start) / HOUR_MS) * pxPerHour }
}

/** Falling lines, as many and as long as the rain is heavy. */
const rainLines = (mm: number, x: number, width: number): string => {
  const heavy = Math.min(1, mm / FULL_RAIN_MM)
  const lines = Math.max(2, Math.round(width * (0.16 + 0.34 * heavy)))
  return Array.from({ length: lines }, (_, n) => {
    const length = 7 + 14 * heavy
    const at = x + 3 + ((n + 0.5) / lines) * (width - 4)
    const top = SKY_TOP_PX + 4 + scatteredOnLine(n + Math.round(x)) * (SKY_PX * 0.62 - length)
    return `M${coordinate(at)} ${coordinate(top)}l${coordinate(-length * 0.35)} ${coordinate(length)}`
  }).join('')
}

const skyWords = (hour: SkyHour, input: HourStripInput): string => {
  const rain =
    hour.rainMm === null
      ? 'no forecast, counted as dry'
      : hour.rainMm > 0
        ? `rain ${quantityWords('rain', hour.rainMm, input.units)}`
        : 'dry'
  return [
    clock(hour.startMs, input.timeZone),
    rain,
    ...(hour.isDew ? ['dew'] : []),
    ...(hour.isFrost ? ['frost'] : []),
  ].join(', ')
}

const hourDrawing = (hour: SkyHour, input: HourStripInput, strip: Strip): Drawing => {
  const x = strip.xPx(hour.startMs)
  const rainMm = hour.rainMm ?? 0
  const ground = SKY_TOP_PX + SKY_PX
  const heightPx = SKY_PX * Math.min(1, rainMm / FULL_RAIN_MM)
  return part('hour', clock(hour.startMs, input.timeZone), skyWords(hour, input), [
    draw('rect', { x, y: SKY_TOP_PX, width: strip.pxPerHour, height: SKY_PX, fill: 'transparent' }),
    rainMm > 0
      ? draw('rect', {
          x,
          y: ground - heightPx,
          width: strip.pxPerHour,
          height: heightPx,
          fill: paint('rain'),
          'fill-opacity': 0.16,
        })
      : null,
    rainMm > 0
      ? draw('path', {
          d: rainLines(rainMm, x, strip.pxPerHour),
          stroke: paint('rain'),
          'stroke-width': hour.isRain ? 1.7 : 0.9,
          'stroke-linecap': 'round',
          fill: 'none',
        })
      : null,
    hour.isDew || hour.isFrost
      ? draw('rect', {
          x,
          y: ground - 20,
          width: strip.pxPerHour,
          height: 20,
          fill: patternFill(input.scope, hour.isFrost ? 'frost' : 'dew'),
        })
      : null,
    hour.rainMm === null
      ? draw(
          'text',
          {
            x: x + strip.pxPerHour / 2,
            y: ground - 6,
            'font-size': 11,
            'text-anchor': 'middle',
            fill: paint('quiet'),
          },
          ['?'],
        )
      : null,
  ])
}

/** Amounts of rain where it stops the work: hour by hour, or one sum a stretch where hours are too narrow for figures. */
const rainFigures = (input: HourStripInput, strip: Strip): readonly Drawing[] => {
  const narrow = strip.pxPerHour < 24
  const stretches: { fromMs: number; toMs: number; mm: number }[] = []
  for (const hour of input.hours.filter(({ isRain }) => isRain)) {
    const last = stretches.at(-1)
    if (narrow && last !== undefined && last.toMs === hour.startMs) {
      last.toMs += HOUR_MS
      last.mm += hour.rainMm ?? 0
    } else stretches.push({ fromMs: hour.startMs, toMs: hour.startMs + HOUR_MS, mm: hour.rainMm ?? 0 })
  }
  return stretches.map(({ fromMs, toMs, mm }) =>
    haloText(
      {
        x: (strip.xPx(fromMs) + strip.xPx(toMs)) / 2,
        y: SKY_TOP_PX + SKY_PX - 5,
        'font-size': narrow ? 13 : 11,
        'font-weight': 600,
        'text-anchor': 'middle',
        fill: paint('rain'),
      },
      narrow ? quantityWords('rain', mm, input.units) : figureOf('rain', mm, input.units),
    ),
  )
}

/** Figures of the hours, every so many that they stand clear of each other. */
const clockLine = (input: HourStripInput, strip: Strip): readonly Drawing[] => {
  const step = [1, 2, 3, 4, 6].find((hours) => hours * strip.pxPerHour >= 30) ?? 6
  const start = input.hours[0]?.startMs ?? 0
  return Array.from({ length: input.hours.length + 1 }, (_, n) => start + n * HOUR_MS)
    .filter((ms) => Number(clock(ms, input.timeZone).slice(0, 2)) % step === 0)
    .map((ms) =>
      draw(
        'text',
        { x: strip.xPx(ms), y: 12, 'font-size': 12, 'text-anchor': 'middle', fill: paint('quiet') },
        [String(Number(clock(ms, input.timeZone).slice(0, 2)))],
      ),
    )
}

const workableRow = (band: WorkableBand, n: number, input: HourStripInput, strip: Strip): Drawing => {
  const y = barsBottomPx(input) + 14 + n * ROW_PX
  const right = input.widthPx - RIGHT_PX
  const { work } = TASK_WORDS[band.operation]
  const when = band.spans.map(
    (span) => `${clock(span.fromMs, input.timeZone)} to ${clock(span.toMs, input.timeZone)}`,
  )
  return part('workable', band.operation, `${work}: ${when.join(', ') || 'no hour'}`, [
    draw('text', { x: 0, y: y + 4, 'font-size': 13, fill: paint('ink') }, [work]),
    draw('path', {
      d: `M${coordinate(strip.leftPx)} ${y}H${coordinate(right)}`,
      stroke: paint('rule'),
      'stroke-width': 1,
      fill: 'none',
    }),
    ...band.spans.map((span) =>
      draw('path', {
        d: `M${coordinate(strip.xPx(span.fromMs))} ${y}H${coordinate(strip.xPx(span.toMs))}`,
        stroke: paint('leaf'),
        'stroke-width': 7,
        fill: 'none',
        'data-line': 'workable',
      }),
    ),
    band.spans.length === 0
      ? haloText({ x: strip.leftPx + 4, y: y + 4, 'font-size': 12, fill: paint('rust') }, 'no hour')
      : null,
  ])
}

const darkDrawing = (input: HourStripInput, strip: Strip): readonly Drawing[] =>
  input.dark.map((night) =>
    part(
      'dark',
      String(night.fromMs),
      `dark ${clock(night.fromMs, input.timeZone)} to ${clock(night.toMs, input.timeZone)}`,
      [
        draw('rect', {
          x: strip.xPx(night.fromMs),
          y: SKY_TOP_PX,
          width: strip.xPx(night.toMs) - strip.xPx(night.fromMs),
          height: SKY_PX,
          fill: patternFill(input.scope, 'dusk'),
          'fill-opacity': 0.7,
        }),
      ],
    ),
  )

/** Size of the words over a band, px. */
const BAND_WORD_PX = 12

/** Stretches of hours of one kind, as spans. */
const stretchesOf = (hours: readonly SkyHour[], isIt: (hour: SkyHour) => boolean): readonly BoardSpan[] => {
  const spans: BoardSpan[] = []
  for (const { startMs } of hours.filter(isIt)) {
    const [last, toMs] = [spans.at(-1), startMs + HOUR_MS]
    if (last !== undefined && last.toMs === startMs) spans[spans.length - 1] = { ...last, toMs }
    else spans.push({ fromMs: startMs, toMs })
  }
  return spans
}

/** What a pattern means, over each band that is wide enough for its word. */
const bandWords = (input: HourStripInput, strip: Strip): readonly Drawing[] => {
  const dewY = SKY_TOP_PX + SKY_PX - 25
  const bands = [
    { word: 'dark', y: SKY_TOP_PX + 15, ink: paint('dusk'), spans: input.dark },
    {
      word: 'dew',
      y: dewY,
      ink: paint('dew'),
      spans: stretchesOf(input.hours, ({ isDew, isFrost }) => isDew && !isFrost),
    },
    { word: 'frost', y: dewY, ink: paint('ink'), spans: stretchesOf(input.hours, ({ isFrost }) => isFrost) },
  ]
  return bands.flatMap(({ word, y, ink, spans }) =>
    spans
      .map(({ fromMs, toMs }) => ({ from: strip.xPx(fromMs), to: strip.xPx(toMs) }))
      .filter(({ from, to }) => to - from >= textWidthPx(word, BAND_WORD_PX))
      .map(({ from, to }) =>
        haloText(
          { x: (from + to) / 2, y, 'font-size': BAND_WORD_PX, 'text-anchor': 'middle', fill: ink },
          word,
        ),
      ),
  )
}

const nowLine = (input: HourStripInput, strip: Strip, bottomPx: number): Drawing | null => {
  const last = input.hours.at(-1)
  if (input.nowMs === undefined || last === undefined) return null
  if (input.nowMs < (input.hours[0]?.startMs ?? 0) || input.nowMs >= last.startMs + HOUR_MS) return null
  const x = strip.xPx(input.nowMs)
  return draw('g', { 'data-part': 'now' }, [
    draw('path', {
      d: `M${coordinate(x)} ${SKY_TOP_PX}V${bottomPx}`,
      stroke: paint('ink'),
      'stroke-width': 2,
      fill: 'none',
    }),
    haloText(
      { x: x + 4, y: SKY_TOP_PX + 12, 'font-size': 12, 'font-weight': 650, fill: paint('ink') },
      'now',
    ),
  ])
}

/**
 * A day of hours as one strip: rain as falling lines with its amount where it stops the work, dew as dots, frost, dark hatched, and below
 * it bars of what else is asked, and when each operation can be worked. Parts: `hour`, `dark`, `bars`, `workable`.
 */
export const hourStrip = (input: HourStripInput): Drawing => {
  const strip = stripOf(input)
  const bottomPx = barsBottomPx(input) + (input.workable.length > 0 ? 8 + input.workable.length * ROW_PX : 6)
  const ground = SKY_TOP_PX + SKY_PX
  const ticks = input.hours.map((hour) => `M${coordinate(strip.xPx(hour.startMs))} ${ground}v-4`).join('')
  return sheet({ widthPx: input.widthPx, heightPx: bottomPx, label: 'The day by the hour' }, [
    patternDefinitions(input.scope, ['dew', 'frost', 'dusk']),
    ...clockLine(input, strip),
    ...darkDrawing(input, strip),
    ...input.hours.map((hour) => hourDrawing(hour, input, strip)),
    ...rainFigures(input, strip),
    ...bandWords(input, strip),
    draw('path', {
      d: `M${coordinate(strip.leftPx)} ${ground}H${coordinate(input.widthPx - RIGHT_PX)}${ticks}`,
      stroke: paint('ink'),
      'stroke-width': 1.2,
      fill: 'none',
    }),
    ...(input.bars ?? []).map((bars, n) =>
      barsRow(bars, {
        basePx: ground + 6 + (n + 1) * BARS_PX,
        leftPx: strip.leftPx,
        rightPx: input.widthPx - RIGHT_PX,
        pxPerHour: strip.pxPerHour,
      }),
    ),
    ...input.workable.map((band, n) => workableRow(band, n, input, strip)),
    nowLine(input, strip, bottomPx),
  ])
}
