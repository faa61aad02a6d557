import { coordinate, draw, part, type Drawing, type DrawingChild } from '../drawing.ts'
import { STATE_WORDS } from '../operation-words.ts'
import { haloText } from '../halo-text.ts'
import { textWidthPx } from '../text-fit.ts'
import { clockRange, durationWords } from '../times.ts'
import { paint } from '../tokens.ts'
import {
  isOnDay,
  type BoardGreen,
  type BoardInput,
  type BoardPerson,
  type BoardPlan,
  type BoardState,
  type BoardTask,
} from './board-input.ts'
import { postBlocks, type PostBlock } from './posts.ts'
import type { Tightest } from './risk.ts'

/** Thickness of a green's line by its state, px: what lies open is thick. */
export const STATE_PX: Readonly<Record<BoardState['state'], number>> = {
  opened: 9,
  cleared: 6.5,
  dressed: 4,
  finished: 1.6,
}

/** Size of the letters, px. */
const LETTER_PX = 11

/** A finish with less than this to spare is marked in rust, min. Ours: about the time that one green's last steps take. */
export const TIGHT_MIN = 60

/** Distance of the line below the middle of its row: letters stand above it. */
const LINE_BELOW_PX = 6

const stateLine = (
  state: BoardState,
  day: number,
  y: number,
  input: BoardInput,
  plan: BoardPlan,
): Drawing => {
  const [from, to] = [plan.xPx(day, state.fromMs), plan.xPx(day, state.toMs)]
  const words = `${STATE_WORDS[state.state].word} ${clockRange(state.fromMs, state.toMs, input.timeZone)}`
  return part('state', state.state, words, [
    draw('path', {
      d: `M${coordinate(from)} ${coordinate(y)}H${coordinate(to)}`,
      stroke: paint(state.state === 'finished' ? 'leaf' : 'ink'),
      'stroke-width': STATE_PX[state.state],
      fill: 'none',
    }),
  ])
}

/** Letters over a task; left out where there is no room for them, the tick stays. */
const taskMark = (
  task: BoardTask,
  box: { readonly from: number; readonly to: number; readonly y: number },
  shown: boolean,
): Drawing => {
  const { from, to, y } = box
  return part('task', task.id, task.words, [
    draw('rect', { x: from, y: y - 20, width: Math.max(4, to - from), height: 28, fill: 'transparent' }),
    draw('path', {
      d: `M${coordinate(from)} ${coordinate(y - 7)}v5`,
      stroke: paint('quiet'),
      'stroke-width': 0.8,
      fill: 'none',
    }),
    shown
      ? draw(
          'text',
          {
            x: (from + to) / 2,
            y: y - 8,
            'font-size': LETTER_PX,
            'font-weight': 600,
            'text-anchor': 'middle',
            fill: paint('ink'),
          },
          [task.letters],
        )
      : null,
  ])
}

/** Which tasks get their letters: from the left, each that stands clear of the one before. */
const lettered = (
  tasks: readonly BoardTask[],
  middleOf: (task: BoardTask) => number,
): ReadonlySet<string> => {
  const shown = new Set<string>()
  let rightPx = -Infinity
  for (const task of [...tasks].sort((a, b) => a.fromMs - b.fromMs)) {
    const half = textWidthPx(task.letters, LETTER_PX) / 2 + 1
    if (middleOf(task) - half < rightPx) continue
    shown.add(task.id)
    rightPx = middleOf(task) + half
  }
  return shown
}

/** The wait between the last dressing and the next task, in its own word where there is room. */
const dryingWord = (green: BoardGreen, day: number, y: number, plan: BoardPlan): DrawingChild => {
  const dressed = green.states.find((state) => state.state === 'dressed')
  if (dressed === undefined) return null
  const next = green.tasks.filter((task) => task.fromMs >= dressed.fromMs).map((task) => task.fromMs)
  if (next.length === 0) return null
  const [from, to] = [plan.xPx(day, dressed.fromMs), plan.xPx(day, Math.min(...next))]
  if (to - from < textWidthPx('drying', 11) + 6) return null
  return draw(
    'text',
    { x: (from + to) / 2, y: y - 8, 'font-size': 11, 'text-anchor': 'middle', fill: paint('quiet') },
    ['drying'],
  )
}

/** One green on one day: its line, its letters, the word for waiting. */
const greenOnDay = (
  green: BoardGreen,
  row: number,
  day: number,
  input: BoardInput,
  plan: BoardPlan,
): Drawing | null => {
  const hours = input.days[day]
  if (hours === undefined) return null
  const y = plan.greenPx(row) + LINE_BELOW_PX
  const states = green.states.filter((state) => isOnDay(state, hours))
  const tasks = green.tasks.filter((task) => isOnDay(task, hours))
  if (states.length + tasks.length === 0) return null
  const shown = lettered(tasks, (task) => (plan.xPx(day, task.fromMs) + plan.xPx(day, task.toMs)) / 2)
  return draw('g', {}, [
    ...states.map((state) => stateLine(state, day, y, input, plan)),
    ...tasks.map((task) =>
      taskMark(
        task,
        { from: plan.xPx(day, task.fromMs), to: plan.xPx(day, task.toMs), y },
        shown.has(task.id),
      ),
    ),
    tasks.length > 0 ? dryingWord(green, day, y, plan) : null,
  ])
}

/** A green's row over all days. */
export const greenRow = (green: BoardGreen, row: number, input: BoardInput, plan: BoardPlan): Drawing =>
  draw('g', { 'data-part': 'green', 'data-id': green.id }, [
    ...input.days.map((_, day) => greenOnDay(green, row, day, input, plan)),
    green.note === undefined
      ? null
      : draw(
          'text',
          { x: plan.dayLeftPx(0) + 4, y: plan.greenPx(row) + 4, 'font-size': 12, fill: paint('rust') },
          [green.note],
        ),
  ])

/** From the tightest finish to the stop that threatens it: dashed, with the time to spare. */
export const spareLine = (tightest: Tightest, day: number, plan: BoardPlan): Drawing => {
  const y = plan.greenPx(tightest.green) + LINE_BELOW_PX
  const [from, to] = [plan.xPx(day, tightest.finishMs), plan.xPx(day, tightest.stopMs)]
  const words = `${durationWords(tightest.spareMin)} to spare`
  const inside = to - from >= textWidthPx(words, 12) + 8
  const colour = paint(tightest.spareMin < TIGHT_MIN ? 'rust' : 'quiet')
  return part('spare', String(day), words, [
    draw('path', {
      d: `M${coordinate(from + 2)} ${coordinate(y)}H${coordinate(to)}M${coordinate(to)} ${coordinate(y - 6)}v12`,
      stroke: colour,
      'stroke-width': 1.6,
      'stroke-dasharray': '5 3',
      fill: 'none',
    }),
    haloText(
      {
        x: inside ? (from + to) / 2 : to + 5,
        y: inside ? y - 7 : y + 4,
        'font-size': 12,
        'font-weight': 600,
        'text-anchor': inside ? 'middle' : 'start',
        fill: colour,
      },
      words,
    ),
  ])
}

const blockDrawing = (block: PostBlock, from: number, to: number, y: number): Drawing => {
  const long = [block.letters, ...block.greens].join(' ')
  const short = block.greens.length < 2 ? block.letters : `${block.letters} ${block.greens[0]}\u2026`
  const words = [long, short, block.letters].find((text) => to - from >= textWidthPx(text, 11) + 4)
  return part('post', block.id, block.words.join('\n'), [
    draw('rect', {
      x: from + 0.5,
      y: y - 10,
      width: Math.max(1.5, to - from - 1),
      height: 20,
      fill: paint('wash'),
      stroke: paint('ink'),
      'stroke-width': 0.8,
    }),
    words === undefined
      ? null
      : draw('text', { x: from + 4, y: y + 4, 'font-size': 11, fill: paint('ink') }, [words]),
  ])
}

/** A person's row: a box a post, with the machine's letters and its greens. */
export const personRow = (person: BoardPerson, row: number, input: BoardInput, plan: BoardPlan): Drawing =>
  draw(
    'g',
    { 'data-part': 'person', 'data-id': person.id },
    input.days.flatMap((hours, day) =>
      postBlocks(person.tasks.filter((task) => isOnDay(task, hours))).map((block) =>
        blockDrawing(block, plan.xPx(day, block.fromMs), plan.xPx(day, block.toMs), plan.personPx(row)),
      ),
    ),
  )
