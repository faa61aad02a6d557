import type { Committed } from './committed.ts'
import type { Effect, MachineKind, Operation, TaskKind } from './operations.ts'
import type { Settings } from '../course/course.ts'

/**
 * Whole minutes from the origin, local midnight of the first day. Integers: the search and the checker never round.
 * A span is half open: [start, end).
 */
export type Span = { readonly start: number; readonly end: number }

/** One calendar day of the horizon, on the course's clock. */
export type ProblemDay = {
  readonly date: string
  readonly startMin: number
  readonly endMin: number
  readonly sunriseMin: number
  /** Sunset, or the hour the club set. */
  readonly darkMin: number
}

/** A stretch in which a break of `minutes` must stay free. */
export type ProblemBreak = { readonly window: Span; readonly minutes: number }

export type ProblemMachine = {
  readonly id: string
  readonly kind: MachineKind
  readonly operations: readonly Operation[]
  readonly crew: number
  readonly setUpMin: number
  readonly hopperT: number | null
  readonly loadMin: number
  /** When the machine may be used. */
  readonly available: readonly Span[]
  /** Minutes to drive it from place to place: row `from * places + to`. */
  readonly travelMin: Int32Array
}

export type ProblemPerson = {
  readonly id: string
  readonly skills: ReadonlySet<Operation>
  /** Time at work on renovation, course set-up and packing up taken off, overtime included. */
  readonly shifts: readonly Span[]
  /** Where ordinary time ends on each shift: minutes after it are overtime. Same length as `shifts`. */
  readonly ordinaryEndMin: readonly number[]
  readonly breaks: readonly ProblemBreak[]
}

/** One thing to be done on a green. The steps of a green are worked strictly in order. */
export type ProblemStep = {
  readonly operation: Operation
  /** Covering, from 1. */
  readonly pass: number
  /** Dresser load, from 1; null for all but `dress`. */
  readonly load: number | null
  /** Minutes of work by machine id; only these machines can do it. */
  readonly minutesByMachine: ReadonlyMap<string, number>
  readonly effects: readonly Effect[]
  /** Sand of this load, dry tonnes; 0 for all but `dress`. */
  readonly sandT: number
  /** Least wait after the step before, minutes. */
  readonly lagMin: number
  /** True when the step belongs to a later day than the step before. */
  readonly nextDay: boolean
  /** Water that must leave the sand before this step, mm; 0 when nothing has to dry. */
  readonly dryNeedMm: number
  /** Tines that it wears; absent where it tines nothing or the club keeps no count of such tines. */
  readonly tines?: TineUse
}

/** What a covering takes of the tine sets: which kind (index into the kinds of `tine-sets.ts`), and so many sets of it. */
export type TineUse = { readonly kind: number; readonly sets: number }

export type ProblemGreen = {
  readonly id: string
  /** Index into the places of the problem. */
  readonly place: number
  readonly weak: boolean
  readonly steps: readonly ProblemStep[]
  readonly sand: {
    readonly kind: 'damp' | 'kilnDried'
    readonly lowT: number
    readonly likelyT: number
    readonly highT: number
    readonly loads: number
  }
  /** Fixtures that name this green. */
  readonly fixtures: readonly Span[]
}

/** Sand of one kind over time. */
export type ProblemStore = {
  readonly kind: 'damp' | 'kilnDried'
  readonly place: number
  readonly stockT: number
  readonly deliveries: readonly { readonly atMin: number; readonly massT: number }[]
}

/** Tine sets of one kind over time. */
export type ProblemTines = {
  /** Number of the kind: entries of one kind count together. */
  readonly kind: number
  readonly sets: number
  readonly deliveries: readonly { readonly atMin: number; readonly sets: number }[]
}

/** A green left out before the search: why. */
export type Excluded = {
  readonly green: string
  readonly reason: 'noMachine' | 'noSkill' | 'servicesNotLocated' | 'notPrescribed' | 'sandShort'
  readonly facts: Readonly<Record<string, unknown>>
}

/** Everything that the solver and the checker both read, and the only thing they share. Immutable; checked once when made. */
export type Problem = {
  readonly originMs: number
  readonly timeZone: string
  readonly days: readonly ProblemDay[]
  readonly horizonMin: number
  /** Ids of places: 0 is the shed, then sand bays, then greens. */
  readonly places: readonly string[]
  /** Minutes for a person between places: row `from * places + to`. */
  readonly personTravelMin: Int32Array
  readonly machines: readonly ProblemMachine[]
  readonly people: readonly ProblemPerson[]
  readonly greens: readonly ProblemGreen[]
  readonly excluded: readonly Excluded[]
  readonly stores: readonly ProblemStore[]
  /** Entry by entry of the course's `tineSets`; absent where the club keeps no count. */
  readonly tines?: readonly ProblemTines[]
  /** Spans in which it rains, in order, not touching. */
  readonly rain: readonly Span[]
  /** When each operation may be worked, in order, not touching. */
  readonly workable: ReadonlyMap<Operation, readonly Span[]>
  /** Water that has evaporated from lying sand since the origin, mm, at each full hour of the horizon (length hours + 1, never falling). */
  readonly driedMm: Float64Array
  readonly settings: Settings
  readonly assumed: readonly string[]
  /** What stands already; absent when the plan is the first and nothing is pinned. */
  readonly committed?: Committed
}

/** A task in minutes. `place` is where it ends; a move also starts elsewhere. */
export type ScheduledTask = {
  readonly kind: TaskKind
  /** Index of the green, null where there is none. */
  readonly green: number | null
  readonly pass: number | null
  readonly load: number | null
  /** Index of the machine, null for hand work. */
  readonly machine: number | null
  /** Indices of people. */
  readonly people: readonly number[]
  readonly startMin: number
  readonly finishMin: number
}

/** What a solver returns: tasks in start order, and the greens it could not place with the reason. */
export type Schedule = {
  readonly tasks: readonly ScheduledTask[]
  readonly unplanned: readonly {
    readonly green: number
    readonly reason: 'noWindow' | 'noTimeLeft' | 'sandShort' | 'tinesShort' | 'skipped'
    readonly facts: Readonly<Record<string, unknown>>
  }[]
}
