import { dayNumber, type WeekOutlook } from '@swardwright/engine'
import { coordinate, draw, part, sheet, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { backDates } from './weeks-words.ts'
import { patternDefinitions, patternFill } from './patterns.ts'
import { textWidthPx } from './text-fit.ts'
import { dayWords, monthName } from './times.ts'
import { paint } from './tokens.ts'

/** The weeks as one strip. */
export type WeekStripInput = {
  /** All candidates, by date: they set how long the strip is, also while some are not reckoned yet. */
  readonly firstDays: readonly string[]
  /** Those reckoned, by first day. */
  readonly weeks: readonly WeekOutlook[]
  /** Those put forward: each gets a line of its own with its work and its bracket. */
  readonly picks: readonly WeekOutlook[]
  /** What a column tells when it is touched. */
  readonly words: (week: WeekOutlook) => string
  readonly widthPx: number
  readonly scope: string
}

const EDGE_PX = 4
const MONTHS_PX = 18
const PLOT_PX = 92
const DAYS_PX = 20
const PICK_PX = 40
const TEXT_PX = 13
/** Widest column. */
const COLUMN_PX = 44

type Frame = { readonly x: (date: string) => number; readonly columnPx: number; readonly foot: number }

/** From the first candidate to the last day that is drawn: that of a bracket, or the end of the last candidate. */
const frameOf = ({ firstDays, weeks, picks, widthPx }: WeekStripInput): Frame => {
  const days = firstDays.map(dayNumber)
  const first = Math.min(...days)
  const gap = Math.min(7, ...days.slice(1).map((day, i) => day - (days[i] ?? day)))
  const ends = [...picks.flatMap(({ backBy }) => backBy.high ?? []), ...weeks.map(({ lastDay }) => lastDay)]
  const last = Math.max(
    first + gap,
    ...days.map((day) => day + gap),
    ...ends.map((date) => dayNumber(date) + 1),
  )
  const dayPx = (widthPx - 2 * EDGE_PX) / (last - first)
  return {
    x: (date) => EDGE_PX + (dayNumber(date) - first) * dayPx,
    columnPx: Math.min(COLUMN_PX, Math.max(2, gap * dayPx - 2)),
    foot: MONTHS_PX + PLOT_PX,
  }
}

const box = (x: number, foot: number, width: number, height: number) => ({
  x,
  y: foot - height,
  width,
  height,
})

/** One candidate: all its years as an empty column, those finished in time filled from below, those of them with a clash hatched on top. */
const column = (week: WeekOutlook, input: WeekStripInput, { x, columnPx, foot }: Frame): Drawing => {
  const left = x(week.firstDay)
  const unitPx = (PLOT_PX - 14) / Math.max(1, week.years.length)
  const [finishedPx, clearPx] = [week.finishedYears * unitPx, week.clearYears * unitPx]
  const isPick = input.picks.includes(week)
  const day = String(Number(week.firstDay.slice(8, 10)))
  const middle = left + columnPx / 2
  return part('week', week.firstDay, input.words(week), [
    draw('rect', { ...box(left, foot + DAYS_PX, columnPx, PLOT_PX + DAYS_PX), fill: 'transparent' }),
    draw('rect', { ...box(left, foot, columnPx, PLOT_PX - 14), fill: paint('wash'), stroke: paint('rule') }),
    draw('rect', { ...box(left, foot, columnPx, clearPx), fill: paint('turf') }),
    draw('rect', {
      ...box(left, foot - clearPx, columnPx, finishedPx - clearPx),
      fill: patternFill(input.scope, 'shut'),
    }),
    draw('rect', {
      ...box(left, foot, columnPx, finishedPx),
      fill: 'none',
      stroke: paint(isPick ? 'ink' : 'leaf'),
      'stroke-width': isPick ? 2.5 : 1,
    }),
    columnPx < 14
      ? null
      : haloText(
          {
            x: middle,
            y: foot - finishedPx - 4,
            'font-size': TEXT_PX,
            'font-weight': isPick ? 700 : 400,
            'text-anchor': 'middle',
            fill: paint('ink'),
          },
          String(week.finishedYears),
        ),
    columnPx < textWidthPx(day, TEXT_PX)
      ? null
      : draw(
          'text',
          {
            x: middle,
            y: foot + 15,
            'font-size': TEXT_PX,
            'font-weight': isPick ? 700 : 400,
            'text-anchor': 'middle',
            fill: paint(isPick ? 'ink' : 'quiet'),
          },
          [day],
        ),
  ])
}

const months = ({ firstDays }: WeekStripInput, { x }: Frame): readonly Drawing[] =>
  firstDays
    .filter((firstDay, i) => firstDay.slice(0, 7) !== firstDays[i - 1]?.slice(0, 7))
    .map((firstDay) =>
      draw('text', { x: x(firstDay), y: 13, 'font-size': TEXT_PX, 'font-weight': 650, fill: paint('ink') }, [
        monthName(Number(firstDay.slice(5, 7))),
      ]),
    )

/** The days of work as a solid bar, the time until the greens may be back dotted, and the bracket in which they are good again. */
const pickLine = (
  week: WeekOutlook,
  row: number,
  input: WeekStripInput,
  { x, columnPx, foot }: Frame,
): Drawing => {
  const y = foot + DAYS_PX + row * PICK_PX + 30
  const [start, end] = [x(week.firstDay), Math.max(x(week.lastDay), x(week.firstDay) + columnPx)]
  const words = `${dayWords(week.firstDay)}: good again ${backDates(week)}`
  const room = input.widthPx - EDGE_PX - textWidthPx(words, TEXT_PX)
  const right = input.widthPx - EDGE_PX
  const [from, by] = [week.backFrom.low, week.backBy.high]
  const back = from === null ? right : x(from)
  const bracket = `M${coordinate(back)} ${y - 6}v12M${coordinate(back)} ${y}H${coordinate(by === null ? right : x(by))}${by === null ? '' : 'm0 -6v12'}`
  return part('pick', week.firstDay, words, [
    draw(
      'text',
      {
        x: Math.max(EDGE_PX, Math.min(start, room)),
        y: y - 10,
        'font-size': TEXT_PX,
        'font-weight': 650,
        fill: paint('ink'),
      },
      [words],
    ),
    draw('rect', { ...box(start, y + 5, end - start, 10), fill: paint('ink') }),
    draw('path', {
      d: `M${coordinate(end + 2)} ${y}H${coordinate(back)}`,
      stroke: paint('quiet'),
      'stroke-width': 2,
      'stroke-dasharray': '2 4',
      fill: 'none',
    }),
    from === null
      ? null
      : draw('path', { d: bracket, stroke: paint('leaf'), 'stroke-width': 3, fill: 'none' }),
  ])
}

/** The weeks as one strip: height is the years finished in time, hatching those that meet a competition; below, for each week put forward, its work and when its greens are good again. Parts: `week`, `pick`. */
export const weekStrip = (input: WeekStripInput): Drawing => {
  const frame = frameOf(input)
  return sheet(
    {
      widthPx: input.widthPx,
      heightPx: frame.foot + DAYS_PX + input.picks.length * PICK_PX + 8,
      label: 'The weeks, each as high as the years in which it is finished in time',
    },
    [
      patternDefinitions(input.scope, ['shut']),
      ...months(input, frame),
      ...input.weeks.map((week) => column(week, input, frame)),
      draw('path', {
        d: `M${EDGE_PX} ${frame.foot}H${coordinate(input.widthPx - EDGE_PX)}`,
        stroke: paint('ink'),
        fill: 'none',
      }),
      ...input.picks.map((week, row) => pickLine(week, row, input, frame)),
    ],
  )
}
