import type { TaskKind } from '@swardwright/engine'
import type { WorkState } from '../operation-words.ts'

/** A stretch of time, epoch ms, half open. */
export type BoardSpan = { readonly fromMs: number; readonly toMs: number }

/** What the sky does behind the work. */
export const BAND_KINDS = ['rain', 'dew', 'frost', 'dusk'] as const

/** A band behind the rows; its pattern is that of its kind. */
export type BoardBand = BoardSpan & {
  readonly kind: (typeof BAND_KINDS)[number]
  /** What it tells on touch: 'rain 1.2 mm', 'dark'. */
  readonly words: string
}

/** One day as the board shows it. Hours outside [fromMs, toMs) are left out. */
export type BoardDay = BoardSpan & {
  readonly date: string
  readonly bands: readonly BoardBand[]
  readonly lastSafeStartMs: number | null
}

/** One task on a row. */
export type BoardTask = BoardSpan & {
  readonly id: string
  readonly operation: TaskKind
  /** Letters of the machine ('C', 'S2'), or of work by hand. */
  readonly letters: string
  /** What it tells on touch. */
  readonly words: string
}

/** A stretch of a green's work state. */
export type BoardState = BoardSpan & { readonly state: Exclude<WorkState, 'ready'> }

/** One green. */
export type BoardGreen = {
  readonly id: string
  readonly name: string
  /** Number of the hole; null for a practice green. */
  readonly hole: number | null
  readonly tasks: readonly BoardTask[]
  readonly states: readonly BoardState[]
  /** A word in place of work: 'not in this plan'. */
  readonly note?: string | undefined
}

/** One of the crew. */
export type BoardPerson = {
  readonly id: string
  readonly name: string
  /** `letters` of a person's task are the machine's; `green` the number or short name that stands beside it. */
  readonly tasks: readonly (BoardTask & { readonly green: string })[]
}

/** All that the board shows. */
export type BoardInput = {
  readonly days: readonly BoardDay[]
  readonly greens: readonly BoardGreen[]
  readonly people: readonly BoardPerson[]
  readonly timeZone: string
  readonly nowMs?: number | undefined
  readonly view: {
    /** Width of an hour; 36 px is the least that can be read, 44 fits a thumb, 60 a desk. */
    readonly pxPerHour: number
    /** Height of a green's row, 30 px or more. */
    readonly rowPx: number
    /** Width of the column of names. */
    readonly namesPx: number
  }
  /** Short word for the ids inside the drawing; different for each drawing of a page. */
  readonly scope: string
}

/** Space between two days, px. */
const DAY_GAP_PX = 18
/** Free edge at the left and right of the hours, px: half of an hour's figure stands there. */
const EDGE_PX = 16
const HOUR_MS = 3_600_000

/** Heights of the head: day, hours, names of the bands, flag of the last safe start. */
export const HEAD_PX = 78
/** Height of a person's row. */
export const PERSON_PX = 30
/** Space between greens and people, with the heading of the people. */
export const PEOPLE_GAP_PX = 30

/** Where things lie, px. Both parts of the board have the same height. */
export type BoardPlan = {
  readonly hoursWidthPx: number
  readonly heightPx: number
  readonly greensBottomPx: number
  /** Bottom of the lowest row. */
  readonly bottomPx: number
  readonly rowPx: number
  readonly dayLeftPx: (index: number) => number
  /** x of an instant on a day; instants outside are held at the day's edge. */
  readonly xPx: (day: number, ms: number) => number
  /** Middle of a green's row. */
  readonly greenPx: (index: number) => number
  /** Middle of a person's row. */
  readonly personPx: (index: number) => number
}

/** The layout of a board. */
export const boardPlan = (input: BoardInput): BoardPlan => {
  const { pxPerHour, rowPx } = input.view
  const lengths = input.days.map((day) => ((day.toMs - day.fromMs) / HOUR_MS) * pxPerHour)
  const lefts = lengths.map(
    (_, n) => EDGE_PX + lengths.slice(0, n).reduce((sum, length) => sum + length + DAY_GAP_PX, 0),
  )
  const greensBottomPx = HEAD_PX + input.greens.length * rowPx
  const peopleTopPx = greensBottomPx + PEOPLE_GAP_PX
  const bottomPx = input.people.length === 0 ? greensBottomPx : peopleTopPx + input.people.length * PERSON_PX
  return {
    hoursWidthPx: (lefts.at(-1) ?? EDGE_PX) + (lengths.at(-1) ?? 0) + EDGE_PX,
    heightPx: bottomPx + 8,
    greensBottomPx,
    bottomPx,
    rowPx,
    dayLeftPx: (index) => lefts[index] ?? 0,
    xPx: (index, ms) => {
      const day = input.days[index]
      if (day === undefined) return 0
      const held = Math.min(day.toMs, Math.max(day.fromMs, ms))
      return (lefts[index] ?? 0) + ((held - day.fromMs) / HOUR_MS) * pxPerHour
    },
    greenPx: (index) => HEAD_PX + (index + 0.5) * rowPx,
    personPx: (index) => peopleTopPx + (index + 0.5) * PERSON_PX,
  }
}

/** Whether a stretch touches a day as shown. */
export const isOnDay = (span: BoardSpan, day: BoardSpan): boolean =>
  span.fromMs < day.toMs && span.toMs > day.fromMs
