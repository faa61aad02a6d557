import type { Plan, Violation } from '@swardwright/engine'
import { dateAt } from '@swardwright/present'
import type { Spell } from './typed-rain.ts'

/** Go or hold for one day of work, with the facts that say why. */
export type GoOrHold = {
  readonly go: boolean
  readonly greens: number
  /** First task and last finish of the day. */
  readonly start: string | null
  readonly finish: string | null
  /** When it rains first after work begins; null when it stays dry. */
  readonly rainFrom: string | null
  /** Dry minutes between the last finish and the rain; null without rain. */
  readonly spareMin: number | null
  readonly lastSafeStart: string | null
  /** First dragging in: the sand is dry by then. Null where nothing is dragged. */
  readonly firstDrag: string | null
  /** Hard rules that the plan breaks on this day by the weather and course of now. */
  readonly broken: readonly Violation[]
  /** What the manager's pins break that day: it goes ahead all the same, and is told. */
  readonly asPinned: readonly Violation[]
}

const MINUTE_MS = 60_000

const earliest = (instants: readonly string[]): string | null =>
  instants.toSorted((a, b) => Date.parse(a) - Date.parse(b))[0] ?? null

const latest = (instants: readonly string[]): string | null =>
  instants.toSorted((a, b) => Date.parse(b) - Date.parse(a))[0] ?? null

/** What a plan and the weather of now say about one day. HOLD when nothing is opened, or a hard rule breaks that day that no pin asks for. */
export const goOrHold = (
  plan: Plan,
  date: string,
  known: {
    readonly timeZone: string
    readonly rain: readonly Spell[]
    readonly violations: readonly Violation[]
  },
): GoOrHold => {
  const { timeZone } = known
  const tasks = plan.tasks.filter((task) => dateAt(task.start, timeZone) === date)
  const openings = plan.openings.filter((opening) => dateAt(opening.opened, timeZone) === date)
  const start = earliest(tasks.map((task) => task.start))
  const finish = latest(tasks.map((task) => task.finish))
  const rainFrom = earliest(
    known.rain
      .filter(
        (spell) =>
          dateAt(spell.start, timeZone) === date &&
          (start === null || Date.parse(spell.finish) > Date.parse(start)),
      )
      .map((spell) => spell.start),
  )
  const ofDay = known.violations.filter((one) => one.at !== null && dateAt(one.at, timeZone) === date)
  const broken = ofDay.filter((one) => one.asPinned !== true)
  return {
    go: openings.length > 0 && broken.length === 0,
    greens: openings.length,
    start,
    finish,
    rainFrom,
    spareMin:
      rainFrom === null || finish === null
        ? null
        : Math.round((Date.parse(rainFrom) - Date.parse(finish)) / MINUTE_MS),
    lastSafeStart: plan.days.find((day) => day.date === date)?.lastSafeStart ?? null,
    firstDrag: earliest(tasks.filter((task) => task.operation === 'dragIn').map((task) => task.start)),
    broken,
    asPinned: ofDay.filter((one) => one.asPinned === true),
  }
}
