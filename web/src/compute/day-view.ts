import { isOperation, type Plan, type PlanTask } from '@swardwright/engine'
import { dateAt, type WorkState } from '@swardwright/present'

/** A green on a working day: where it stands, and what is still to do. */
export type GreenOnDay = {
  readonly green: string
  readonly state: WorkState
  readonly opened: string
  readonly finished: string | null
  /** Its tasks that are not done yet, in order. */
  readonly todo: readonly PlanTask[]
}

/** What somebody recorded: greens that are finished whatever the plan says. */
export type Recorded = { readonly finished: ReadonlySet<string> }

const atOrBefore = (instant: string | null, atMs: number): boolean =>
  instant !== null && Date.parse(instant) <= atMs

const stateAt = (opening: Plan['openings'][number], atMs: number): WorkState => {
  if (!atOrBefore(opening.opened, atMs)) return 'ready'
  if (atOrBefore(opening.dressed, atMs)) return 'dressed'
  return atOrBefore(opening.cleared, atMs) ? 'cleared' : 'opened'
}

/**
 * The greens of one day in the order of opening. By the plan's clock a green is opened, cleared and dressed; it is finished only
 * once somebody says so, or the plan's time for it is past and the day is over.
 */
export const greensOnDay = (
  plan: Plan,
  date: string,
  atMs: number,
  known: { readonly timeZone: string; readonly recorded: Recorded },
): readonly GreenOnDay[] =>
  plan.openings
    .filter((opening) => dateAt(opening.opened, known.timeZone) === date)
    .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))
    .map((opening) => {
      const done = known.recorded.finished.has(opening.green)
      return {
        green: opening.green,
        state: done ? 'finished' : stateAt(opening, atMs),
        opened: opening.opened,
        finished: opening.finished,
        todo: done
          ? []
          : plan.tasks.filter(
              (task) =>
                task.green === opening.green && isOperation(task.operation) && Date.parse(task.finish) > atMs,
            ),
      }
    })

/** The next green to open: the first that is ready. */
export const nextGreen = (greens: readonly GreenOnDay[]): GreenOnDay | null =>
  greens.find((green) => green.state === 'ready') ?? null

/** Greens that lie open in some way, those that must be finished first in front. */
export const unfinishedGreens = (greens: readonly GreenOnDay[]): readonly GreenOnDay[] =>
  greens.filter((green) => green.state !== 'ready' && green.state !== 'finished')

/** Of the greens that lie open, the one that the plan finishes first. */
export const firstToFinish = (open: readonly GreenOnDay[]): GreenOnDay | null =>
  open.toSorted((a, b) => Date.parse(a.finished ?? '') - Date.parse(b.finished ?? ''))[0] ?? null

/** Parts of a day for the table of posts, on the course's clock. */
export const PARTS_OF_DAY = [
  { word: 'morning', toMin: 10 * 60 },
  { word: 'midday', toMin: 13 * 60 },
  { word: 'afternoon', toMin: 24 * 60 },
] as const
