import type { Plan, PlanTask } from '@swardwright/engine'
import type { BodyOf } from '@swardwright/journal'
import { BREAK_REASONS, dateAt } from '@swardwright/present'
import { coveringOf, type Covering } from './covering.ts'
import { momentOf, timeFault, type SheetDay } from './paper-sheet.ts'

/** A step broken off, as it is typed in from a paper sheet; a field is empty until something is typed or chosen. */
export type PaperStop = {
  /** Key of the step, see `stepsOn`. */
  readonly step: string
  /** Clock on that day, 'HH:MM'. */
  readonly time: string
  readonly why: string
  readonly words: string
}

/** A line on which nothing stands yet. */
export const NO_STOP: PaperStop = { step: '', time: '', why: '', words: '' }

/** A step that can be broken off on a day. */
export type SheetStep = { readonly key: string; readonly covering: Covering; readonly task: PlanTask }

/** The steps of a day, green by green in the order in which work begins there. A step that a plan made again has in several parts is one. */
export const stepsOn = (plan: Plan, date: string, timeZone: string): readonly SheetStep[] => {
  const byGreen = new Map<string, Map<string, SheetStep>>()
  const tasks = plan.tasks
    .filter((task) => dateAt(task.start, timeZone) === date)
    .toSorted((a, b) => Date.parse(a.start) - Date.parse(b.start))
  for (const task of tasks) {
    const covering = coveringOf(task)
    if (covering === null) continue
    const { green, operation, pass = '', load = '' } = covering
    const key = [green, operation, pass, load].join(' ')
    const own = byGreen.get(green) ?? new Map<string, SheetStep>()
    byGreen.set(green, own)
    if (!own.has(key)) own.set(key, { key, covering, task })
  }
  return [...byGreen.values()].flatMap((own) => [...own.values()])
}

/** Whether nothing stands on the line. */
export const isBlank = (stop: PaperStop): boolean =>
  [stop.step, stop.time, stop.why, stop.words].every((text) => text.trim() === '')

/** The lines without the empty ones at their end. */
export const withoutBlankEnd = (stops: readonly PaperStop[]): readonly PaperStop[] =>
  stops.slice(0, stops.findLastIndex((stop) => !isBlank(stop)) + 1)

/** What a line is checked against: the day, its steps, and when a green was finished (epoch milliseconds; null where it was not). */
export type StopsKnown = SheetDay & {
  readonly steps: readonly SheetStep[]
  readonly finishedMs: (green: string) => number | null
}

/** What is wrong with a line; `noStep`, `noTime` and `noWhy` say what is still to come. */
export type StopFault = 'noStep' | 'noTime' | 'noClock' | 'afterNow' | 'afterFinished' | 'noWhy'

const stepOf = (stop: PaperStop, { steps }: StopsKnown): SheetStep | undefined =>
  steps.find(({ key }) => key === stop.step)

/** The first thing that is wrong with a line; null when it is right, or empty. */
export const stopFault = (stop: PaperStop, known: StopsKnown): StopFault | null => {
  if (isBlank(stop)) return null
  const timeIs = timeFault(stop.time, known)
  if (timeIs !== null) return timeIs
  const step = stepOf(stop, known)
  if (step === undefined) return 'noStep'
  const atMs = momentOf(stop.time, known)
  if (atMs === null) return 'noTime'
  const finishedMs = known.finishedMs(step.covering.green)
  if (finishedMs !== null && finishedMs < atMs) return 'afterFinished'
  return BREAK_REASONS.some(({ id }) => id === stop.why) ? null : 'noWhy'
}

/** What a line of paper becomes. */
export type StopEntry = { readonly body: BodyOf<'taskStopped'>; readonly atMs: number }

/** The entries of all lines that are right; the others are left out. */
export const stopEntries = (stops: readonly PaperStop[], known: StopsKnown): readonly StopEntry[] =>
  stops.flatMap((stop) => {
    const [step, atMs] = [stepOf(stop, known), momentOf(stop.time, known)]
    const why = BREAK_REASONS.find(({ id }) => id === stop.why)?.id
    const words = stop.words.trim()
    if (stopFault(stop, known) !== null || step === undefined || atMs === null || why === undefined) return []
    return [{ body: { ...step.covering, why, ...(words === '' ? {} : { words }) }, atMs }]
  })
