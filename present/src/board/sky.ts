import { coordinate, draw, part, type Drawing } from '../drawing.ts'
import { patternFill } from '../patterns.ts'
import { textWidthPx } from '../text-fit.ts'
import { clock, dayHeading, dayWords } from '../times.ts'
import { paint, type TokenName } from '../tokens.ts'
import { HEAD_PX, type BoardBand, type BoardDay, type BoardInput, type BoardPlan } from './board-input.ts'
import { haloText } from '../halo-text.ts'

const HOUR_MS = 3_600_000
/** Baselines of the head's lines, px from the top. */
const DAY_LINE_PX = 15
const HOUR_LINE_PX = 34
const BAND_LINE_PX = 52
const FLAG_LINE_PX = 70

const BAND_INK: Readonly<Record<BoardBand['kind'], TokenName>> = {
  rain: 'rain',
  dew: 'dew',
  frost: 'dew',
  dusk: 'dusk',
}

/** Where the words of a band have no room. */
const BAND_WORDS: Readonly<Record<BoardBand['kind'], string>> = {
  rain: 'rain',
  dew: 'dew',
  frost: 'frost',
  dusk: 'dark',
}

/** A band behind all rows, its word in the head where there is room. */
const bandDrawing = (band: BoardBand, day: number, input: BoardInput, plan: BoardPlan): Drawing => {
  const [from, to] = [plan.xPx(day, band.fromMs), plan.xPx(day, band.toMs)]
  const box = { x: from, y: HEAD_PX - 22, width: to - from, height: plan.bottomPx - HEAD_PX + 22 }
  const words = [band.words, BAND_WORDS[band.kind]].find((text) => to - from >= textWidthPx(text, 12) - 4)
  return part('band', `${band.kind}-${band.fromMs}`, band.words, [
    draw('rect', { ...box, fill: paint(BAND_INK[band.kind]), 'fill-opacity': 0.07 }),
    draw('rect', { ...box, fill: patternFill(input.scope, band.kind), 'fill-opacity': 0.62 }),
    draw('path', {
      d: `M${coordinate(from)} ${coordinate(box.y)}V${coordinate(plan.bottomPx)}`,
      stroke: paint(BAND_INK[band.kind]),
      'stroke-width': 1.2,
      fill: 'none',
    }),
    words === undefined
      ? null
      : haloText({ x: from + 3, y: BAND_LINE_PX, 'font-size': 12, fill: paint(BAND_INK[band.kind]) }, words),
  ])
}

/** Hours of a day: a hairline each, a figure each or every second where the hours are narrow. */
const hoursDrawing = (day: BoardDay, index: number, input: BoardInput, plan: BoardPlan): Drawing => {
  const step = input.view.pxPerHour >= 44 ? 1 : 2
  const first = Math.ceil(day.fromMs / HOUR_MS) * HOUR_MS
  const hours = Array.from(
    { length: Math.max(0, Math.floor((day.toMs - first) / HOUR_MS) + 1) },
    (_, n) => first + n * HOUR_MS,
  )
  return draw('g', { 'data-part': 'hours', 'data-id': day.date }, [
    draw('path', {
      d: hours
        .map((ms) => `M${coordinate(plan.xPx(index, ms))} ${HOUR_LINE_PX + 4}V${coordinate(plan.bottomPx)}`)
        .join(''),
      stroke: paint('rule'),
      'stroke-width': 0.7,
      fill: 'none',
    }),
    ...hours
      .filter((_, n) => n % step === 0)
      .map((ms) =>
        draw(
          'text',
          {
            x: plan.xPx(index, ms),
            y: HOUR_LINE_PX,
            'font-size': 12,
            'text-anchor': 'middle',
            fill: paint('quiet'),
          },
          [clock(ms, input.timeZone).replace(/^0/u, '').replace(':00', '')],
        ),
      ),
  ])
}

/** A rule through all rows at one instant, with its flag in the head. */
const flag = (
  words: string,
  at: { readonly day: number; readonly ms: number },
  colour: TokenName,
  plan: BoardPlan,
): Drawing => {
  const x = plan.xPx(at.day, at.ms)
  const leftwards = x - plan.dayLeftPx(at.day) > textWidthPx(words, 13) + 8
  return part('flag', words, words, [
    draw('path', {
      d: `M${coordinate(x)} ${FLAG_LINE_PX - 13}V${coordinate(plan.greensBottomPx)}`,
      stroke: paint(colour),
      'stroke-width': 2.2,
      fill: 'none',
    }),
    haloText(
      {
        x: leftwards ? x - 6 : x + 6,
        y: FLAG_LINE_PX,
        'font-size': 13,
        'font-weight': 600,
        'text-anchor': leftwards ? 'end' : 'start',
        fill: paint(colour),
      },
      words,
    ),
  ])
}

/** All that lies behind the rows of a day. */
export const skyDrawing = (day: BoardDay, index: number, input: BoardInput, plan: BoardPlan): Drawing => {
  const width = plan.xPx(index, day.toMs) - plan.dayLeftPx(index)
  const heading = textWidthPx(dayHeading(day.date), 15) < width ? dayHeading(day.date) : dayWords(day.date)
  return draw('g', {}, [
    ...day.bands.map((band) => bandDrawing(band, index, input, plan)),
    hoursDrawing(day, index, input, plan),
    draw(
      'text',
      { x: plan.dayLeftPx(index), y: DAY_LINE_PX, 'font-size': 15, 'font-weight': 650, fill: paint('ink') },
      [heading],
    ),
    draw('path', {
      d: `M${coordinate(plan.dayLeftPx(index))} ${HEAD_PX}h${coordinate(width)}`,
      stroke: paint('ink'),
      'stroke-width': 1.2,
      fill: 'none',
    }),
  ])
}

/** What stands over the rows of a day: the last safe start, and now. */
export const flagsDrawing = (
  day: BoardDay,
  index: number,
  input: BoardInput,
  plan: BoardPlan,
): readonly (Drawing | null)[] => [
  day.lastSafeStartMs === null
    ? null
    : flag(
        `last safe start ${clock(day.lastSafeStartMs, input.timeZone)}`,
        { day: index, ms: day.lastSafeStartMs },
        'rust',
        plan,
      ),
  input.nowMs === undefined || input.nowMs < day.fromMs || input.nowMs >= day.toMs
    ? null
    : flag(`now ${clock(input.nowMs, input.timeZone)}`, { day: index, ms: input.nowMs }, 'ink', plan),
]
