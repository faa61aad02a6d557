/**
 * The hard rules of a plan, each with a closed id. `docs/planning.md` words them.
 * A broken rule tells the green (or null), the minute, and by how much (minutes, tonnes or greens, as the rule counts).
 */
export const RULES = [
  'unknownId',
  'badTime',
  'machineTwice',
  'personTwice',
  'wrongMachine',
  'machineOut',
  'noSkill',
  'crewShort',
  'missingOperation',
  'extraOperation',
  'outOfOrder',
  'taskTooShort',
  'lagTooShort',
  'sameDay',
  'noSetUp',
  'noMove',
  'noTravel',
  'noRefill',
  'hopperOverfull',
  'stockGone',
  'tinesGone',
  'outsideShift',
  'breakMissed',
  'notWorkable',
  'openInRain',
  'openOvernight',
  'draggedBeforeDry',
  'tooManyOpen',
  'firstGreenUnchecked',
  'servicesNotLocated',
  'notAccountedFor',
  'pinMoved',
  'againstRecord',
  'figureWrong',
] as const

/** The id of a hard rule. */
export type Rule = (typeof RULES)[number]

/** One broken rule. */
export type Violation = {
  readonly rule: Rule
  /** Green id, or null where none is concerned. */
  readonly green: string | null
  /** When, ISO 8601 with offset, or null where the rule has no moment. */
  readonly at: string | null
  /** By how much: minutes, or tonnes or greens where the rule counts those. */
  readonly by: number
  /** The tasks concerned, by id. */
  readonly tasks: readonly string[]
  /** True where it is the price of the manager's pin: what was pinned can't be had without it. */
  readonly asPinned?: true
}
