import {
  HOUR_MS,
  instantOf,
  type Course,
  type Plan,
  type PlanOpening,
  type PlanTask,
  type WeatherHours,
} from '@swardwright/engine'
import type {
  BoardDay,
  BoardGreen,
  BoardInput,
  BoardPerson,
  BoardState,
  BoardTask,
} from './board/board-input.ts'
import { listed } from './numbers.ts'
import { HAND_LETTER, machineLetters, taskTodo } from './operation-words.ts'
import { darkSpans, skyBands } from './sky-hours.ts'
import { clockRange, dateAt, instantMs } from './times.ts'

/** A plan with what the board needs besides it. */
export type PlanBoardInput = Pick<BoardInput, 'view' | 'scope' | 'nowMs'> & {
  readonly course: Course
  readonly plan: Plan
  readonly weather: WeatherHours | null
  /** Dates to show, with the greens worked on them; all days with work and all greens when left out. */
  readonly dates?: readonly string[]
  /** All greens and people of the plan though some have no work on these dates, so that boards of single days stand side by side. */
  readonly allRows?: boolean
}

/** What the tasks of a plan are called on the board. */
const boardTask = (course: Course, plan: Plan, letters: ReadonlyMap<string, string>) => {
  const machines = new Map(course.machines.map((machine) => [machine.id, machine.name]))
  const people = new Map(course.people.map((person) => [person.id, person.name]))
  const greens = new Map(course.greens.map((green) => [green.id, green.name]))
  const pinned = new Set(plan.pins?.map(({ green }) => green))
  const risky = new Set(plan.pinRisks?.map(({ green }) => green))
  const pinWords = (green: string | null): readonly string[] =>
    green === null || !pinned.has(green) ? [] : [risky.has(green) ? 'pinned, at a risk' : 'pinned']
  const loads = new Map(plan.sand.map((sand) => [sand.green, sand.loads]))
  return (task: PlanTask): BoardTask => {
    const where = task.green === null ? [] : [greens.get(task.green) ?? task.green]
    const todo = taskTodo({ ...task, loads: task.green === null ? undefined : loads.get(task.green) })
    const machine = task.machine === null ? [] : [machines.get(task.machine) ?? task.machine]
    const who = task.people.map((id) => people.get(id) ?? id)
    return {
      id: task.id,
      operation: task.operation,
      fromMs: instantMs(task.start),
      toMs: instantMs(task.finish),
      letters: task.machine === null ? HAND_LETTER : (letters.get(task.machine) ?? '?'),
      words: [
        `${todo} ${clockRange(task.start, task.finish, course.timeZone)}`,
        ...where,
        ...machine,
        ...(who.length > 0 ? [listed(who)] : []),
        ...pinWords(task.green),
      ].join(', '),
    }
  }
}

/** The states of a green from its opening on; `finished` is drawn to the end of its day, `untilMs`. */
const statesOf = (
  opening: PlanOpening | undefined,
  untilMs: (ms: number) => number,
): readonly BoardState[] => {
  if (opening === undefined) return []
  const steps = (['opened', 'cleared', 'dressed', 'finished'] as const).flatMap((state) => {
    const at = opening[state]
    return at === null ? [] : [{ state, fromMs: instantMs(at) }]
  })
  return steps.map((step, n) => ({ ...step, toMs: steps[n + 1]?.fromMs ?? untilMs(step.fromMs) }))
}

/** Hours of a day from half an hour before the first task to an hour into the dark, or after the last task. */
const boardDay = (input: PlanBoardInput, date: string, tasks: readonly PlanTask[]): BoardDay => {
  const { course, plan, weather } = input
  const midnight = instantOf(date, 0, course.timeZone)
  const nextMidnight = instantOf(date, 1440, course.timeZone)
  const first = Math.min(...tasks.map((task) => instantMs(task.start)), midnight + 12 * HOUR_MS)
  const last = Math.max(...tasks.map((task) => instantMs(task.finish)), first + HOUR_MS)
  const night = darkSpans(course, { fromMs: midnight + 12 * HOUR_MS, toMs: nextMidnight }).at(-1)
  const fromMs = Math.floor((first - HOUR_MS / 2) / HOUR_MS) * HOUR_MS
  const wantedMs = Math.max(last, night === undefined ? last : night.fromMs) + HOUR_MS / 2
  const toMs = Math.min(nextMidnight, Math.ceil(wantedMs / HOUR_MS) * HOUR_MS)
  const safe = plan.days.find((day) => day.date === date)?.lastSafeStart ?? null
  return {
    date,
    fromMs,
    toMs,
    bands: skyBands(course, weather, { fromMs, toMs }),
    lastSafeStartMs: safe === null ? null : instantMs(safe),
  }
}

/** Greens in the order in which they are opened, then those the plan leaves out, in playing order. */
const greensInOrder = (course: Course, plan: Plan): readonly string[] => {
  const opened = [...plan.openings]
    .sort((a, b) => instantMs(a.opened) - instantMs(b.opened))
    .map((opening) => opening.green)
  return [...opened, ...course.greens.map((green) => green.id).filter((id) => !opened.includes(id))]
}

/** The tasks of a day, by when they start. Told by instants: the dates of hundreds of tasks take longer to write than to compare. */
const tasksOn = (plan: Plan, date: string, timeZone: string): readonly PlanTask[] => {
  const [fromMs, toMs] = [instantOf(date, 0, timeZone), instantOf(date, 1440, timeZone)]
  return plan.tasks.filter((task) => {
    const startMs = instantMs(task.start)
    return startMs >= fromMs && startMs < toMs
  })
}

/** The first day with work; null where there is none. */
const firstDate = (plan: Plan, timeZone: string): string | null =>
  plan.tasks.length === 0
    ? null
    : dateAt(Math.min(...plan.tasks.map((task) => instantMs(task.start))), timeZone)

/** What stands in a person's box for a green: its number, or the first letters of a practice green. */
export const shortGreenName = (course: Course, id: string | null): string => {
  const green = course.greens.find((candidate) => candidate.id === id)
  if (green === undefined) return ''
  return green.hole === null ? green.name.slice(0, 3) : String(green.hole)
}

/** The board of a plan: its days with work, the greens in the order they are opened, and everybody who has a task. */
export const boardFromPlan = (input: PlanBoardInput): BoardInput => {
  const { course, plan, view, scope } = input
  const letters = machineLetters(course.machines)
  const wordTask = boardTask(course, plan, letters)
  const dates =
    input.dates ?? [...new Set(plan.tasks.map((task) => dateAt(task.start, course.timeZone)))].sort()
  const tasksOf = dates.map((date) => tasksOn(plan, date, course.timeZone))
  const days = dates.map((date, n) => boardDay(input, date, tasksOf[n] ?? []))
  const untilMs = (ms: number): number => days.find((day) => ms >= day.fromMs && ms < day.toMs)?.toMs ?? ms
  const shown = tasksOf.flat()
  const isWhole = input.dates === undefined || input.allRows === true
  const atWork = isWhole ? new Set(plan.tasks.flatMap((task) => task.people)) : null
  // Said once, at the left of the first day.
  const hasNotes = !isWhole || dates[0] === firstDate(plan, course.timeZone)
  const green = (id: string): BoardGreen[] => {
    const found = course.greens.find((candidate) => candidate.id === id)
    if (found === undefined) return []
    const tasks = shown.filter((task) => task.green === id && task.operation !== 'move').map(wordTask)
    const opening = plan.openings.find((candidate) => candidate.green === id)
    const states = statesOf(opening, untilMs)
    if (!isWhole && tasks.length === 0) return []
    const note = opening === undefined && hasNotes ? { note: 'not in this plan' } : {}
    return [{ id, name: found.name, hole: found.hole, tasks, states, ...note }]
  }
  const people = course.people.flatMap((person): BoardPerson[] => {
    const tasks = shown
      .filter((task) => task.people.includes(person.id))
      .map((task) => ({ ...wordTask(task), green: shortGreenName(course, task.green) }))
    const hasRow = atWork === null ? tasks.length > 0 : atWork.has(person.id)
    return !hasRow ? [] : [{ id: person.id, name: person.name, tasks }]
  })
  return {
    days,
    greens: greensInOrder(course, plan).flatMap(green),
    people,
    timeZone: course.timeZone,
    view,
    scope,
    ...(input.nowMs === undefined ? {} : { nowMs: input.nowMs }),
  }
}
