/** A stretch of work that looks for its people. One object a run, written over at every try. */
export type CrewWanted = {
  step: number
  day: number
  crew: number
  /** Who worked the machine last, or -1. */
  holder: number
  /** The work itself starts no earlier; what the first of them does before (set-up, ways, filling) takes `lead` more. */
  start: number
  lead: number
  minutes: number
  /** Where the lead begins and where the work is. */
  from: number
  to: number
  /** The work is over by then. */
  end: number
  /** Whether the hours in which it may be worked are let go. */
  anyHour: boolean
}

/**
 * What a machine must do before a step: minutes in all, minutes from the filling on (-1: nothing is filled), where it begins, and whether it uses what was
 * filled before.
 */
export type Lead = { minutes: number; afterLoad: number; from: number; uses: boolean }

/** A way to do a step: machine and people, its place among the machine's tasks of that day, and its lead. */
export type Found = {
  start: number
  machine: number
  minutes: number
  gap: number
  day: number
  lead: number
  afterLoad: number
  from: number
  uses: boolean
  readonly people: Int32Array
}

/** A stretch that looks for its time in a person's day: not before `atLeast`, begun before `limit`. One object a run, written over. */
export type Stretch = {
  atLeast: number
  limit: number
  minutes: number
  from: number
  to: number
}

/** A step that looks for its time. */
export type StepWanted = {
  readonly green: number
  readonly step: number
  /** It starts no earlier, and is over by `end`. */
  readonly from: number
  readonly end: number
  /** Whether the hours in which it may be worked are let go: a pin that stands over them. */
  readonly anyHour: boolean
}

/** Who is best for a place in a crew so far: with the start, and the start with reluctance counted. One object a run, written over. */
export type Choice = { best: number; start: number; who: number }

/** A stretch of work as it is written into a person's day. One object a run, written over. */
export type Entry = { day: number; start: number; end: number; from: number; to: number; post: number }
