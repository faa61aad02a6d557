import type { Attempt } from './attempts.ts'
import { NEVER } from '../spans.ts'
import type { Ground } from './ground.ts'
import type { Hints } from './hints.ts'
import type { PinnedSteps } from './pins.ts'
import type { Recipe } from './recipe.ts'
import { newTimeline, type Timeline } from './timeline.ts'
import type { Try } from './windows.ts'
import type { Choice, CrewWanted, Entry, Found, Lead, Stretch } from './wanted.ts'

/** Numbers of an entry in a person's day: when it starts and ends, where it begins and ends, the operation (-1: none). */
export const PERSON = { start: 0, end: 1, from: 2, to: 3, post: 4, size: 5 } as const

/**
 * Numbers of an entry in a machine's day: when its leads start, when its work starts and ends, where it ends, its record in the log (-1: it stood before), and
 * 1 where nothing may come right before it, since it uses what was filled before.
 */
export const MACHINE = { start: 0, work: 1, end: 2, place: 3, record: 4, closed: 5, size: 6 } as const

/** Numbers of a chain under way. */
export const CHAIN = { end: 0, dressed: 1, opened: 2, openedBy: 3, work: 4, size: 5 } as const

/** Offsets of the single numbers of a growing schedule. */
export type Scalars = {
  readonly records: number
  readonly draws: number
  readonly works: number
  /** Opening and end of the opening step of the green opened first; NEVER while there is none. */
  readonly firstOpened: number
  readonly firstChecked: number
  /** By kind of stock: what was drawn in all. */
  readonly drawn: number
  /** By machine: what lies in its hopper (0: nothing, else step + 1). */
  readonly loaded: number
  /** By phase: greens in a row that did not fit. */
  readonly misses: number
  /** By green, while its steps are placed one by one: end of its last step, of its last dressing (-1), start and end of its opening step (-1), its place among the greens in work. */
  readonly chain: number
  readonly size: number
}

/** Numbers of a record of the log before its people: step, machine, start, minutes. */
export const RECORD_HEAD = 4

/**
 * The one place in which schedules grow, again and again: all its arrays are made once and written over. What is written is remembered in `undo`, so that
 * a schedule can be taken back to any point and grown on from there.
 */
export type Run = {
  readonly ground: Ground
  readonly nowMin: number
  readonly attempts: readonly Attempt[]
  readonly pins: PinnedSteps
  readonly hints: Hints | null
  /** Rows `person * days + day` and `machine * days + day`. */
  readonly people: Timeline
  readonly machines: Timeline
  /** Placed steps: step, machine, start, minutes, people (-1 where fewer). */
  readonly log: Int32Array
  readonly record: number
  /** What was drawn from stock: kind, minute, amount. */
  readonly draws: Int32Array
  /** Greens in work: green, opening, finish, clearing. */
  readonly works: Int32Array
  readonly at: Scalars
  readonly scalars: Int32Array
  readonly begun: Begun
  /** By green: the window and the attempt by which it was placed last, as a recipe has them. */
  readonly tried: Int32Array
  undo: Int32Array
  undoLength: number
  recipe: Recipe
  /** Steps placed, taken back ones too: what the budget is paid for. */
  placed: number
  /** A schedule whose last step can't be over by then is not made to its end; NEVER where all are. What is made to its end does not depend on it. */
  cutoffMin: number
  /** Whether the schedule that stands was given up at the cutoff. */
  isCut: boolean
  readonly crew: Int32Array
  readonly scratch: {
    readonly wanted: CrewWanted
    readonly lead: Lead
    readonly found: Found
    readonly stretch: Stretch
    readonly choice: Choice
    readonly entry: Entry
  }
}

/**
 * How far each green is in what stands already: first step not done, end of the step before and of the last dressing (-1), start and end of the opening step (-1), its
 * place among the greens in work (-1), and where it is to be finished once it is opened. `hopeless` is 1 where a step that is left can be done by no machine; `movable` are the
 * greens that have steps left and are not hopeless.
 */
export type Begun = {
  readonly next: Int32Array
  readonly end: Int32Array
  readonly dressed: Int32Array
  readonly opened: Int32Array
  readonly openedBy: Int32Array
  readonly work: Int32Array
  readonly where: (Try | null)[]
  readonly hopeless: Uint8Array
  readonly movable: number[]
}

/** What a run is made for. */
export type RunSetting = Pick<Run, 'ground' | 'nowMin' | 'attempts' | 'pins' | 'hints' | 'recipe'>

/** Most entries in one person's or machine's day. */
const MOST_ENTRIES = 400

const scalarsOf = (ground: Ground): Scalars => {
  const drawn = 5
  const loaded = drawn + ground.supplies.length
  const misses = loaded + ground.machines
  const chain = misses + ground.windows.length
  const size = chain + ground.greens * CHAIN.size
  return {
    records: 0,
    draws: 1,
    works: 2,
    firstOpened: 3,
    firstChecked: 4,
    drawn,
    loaded,
    misses,
    chain,
    size,
  }
}

const newScratch = (mostCrew: number): Run['scratch'] => ({
  wanted: {
    step: 0,
    day: 0,
    crew: 1,
    holder: -1,
    start: 0,
    lead: 0,
    minutes: 0,
    from: 0,
    to: 0,
    end: 0,
    anyHour: false,
  },
  lead: { minutes: 0, afterLoad: -1, from: 0, uses: false },
  stretch: { atLeast: 0, limit: 0, minutes: 0, from: 0, to: 0 },
  choice: { best: 0, start: 0, who: -1 },
  entry: { day: 0, start: 0, end: 0, from: 0, to: 0, post: -1 },
  found: {
    start: 0,
    machine: 0,
    minutes: 0,
    gap: 0,
    day: 0,
    lead: 0,
    afterLoad: -1,
    from: 0,
    uses: false,
    people: new Int32Array(mostCrew),
  },
})

/** A run with room for its schedules, nothing begun. */
export const newRun = (setting: RunSetting): Run => {
  const { ground } = setting
  const { greens, mostCrew, steps } = ground
  const at = scalarsOf(ground)
  const stood = ground.problem.committed?.tasks.length ?? 0
  const room = Math.min(MOST_ENTRIES, steps + stood + 1)
  const record = RECORD_HEAD + mostCrew
  return {
    ...setting,
    people: newTimeline(ground.people * ground.days, room, PERSON.size),
    machines: newTimeline(ground.machines * ground.days, room, MACHINE.size),
    log: new Int32Array(record * Math.max(1, steps)),
    record,
    draws: new Int32Array(3 * (steps + stood + 1)),
    works: new Int32Array(4 * (greens + 1)),
    at,
    scalars: new Int32Array(at.size),
    begun: {
      next: Int32Array.from({ length: greens }, (_, green) => ground.firstStep[green] ?? 0),
      end: new Int32Array(greens),
      dressed: new Int32Array(greens).fill(-1),
      opened: new Int32Array(greens).fill(-1),
      openedBy: new Int32Array(greens).fill(-1),
      work: new Int32Array(greens).fill(-1),
      where: Array.from({ length: greens }, () => null),
      hopeless: new Uint8Array(greens),
      movable: [],
    },
    tried: new Int32Array(greens),
    undo: new Int32Array(4096),
    undoLength: 0,
    placed: 0,
    cutoffMin: NEVER,
    isCut: false,
    crew: new Int32Array(mostCrew),
    scratch: newScratch(mostCrew),
  }
}
