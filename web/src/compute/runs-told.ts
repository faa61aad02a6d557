import type {
  Coverage,
  DresserLoad,
  HeadingBan,
  Machine,
  Operation,
  Passes,
  PassSettings,
  Polygon,
  Course,
  Prescription,
  SandRunsError,
} from '@swardwright/engine'

/** One step of the chain with one machine that can do it. */
export type RunsChoice = {
  readonly key: string
  readonly operation: Operation
  readonly machine: Machine
  readonly passes: number
}

/** What is asked of one green. */
export type RunsAsk = {
  readonly course: Course
  readonly prescription: Prescription
  readonly green: string
  /** Which step and machine; the first where it is not one of the choices. */
  readonly key: string | null
  /** Heading of the first pass, degrees; null asks for the best. */
  readonly headingDeg: number | null
  /** Angle of each later pass from the one before. */
  readonly turnDeg: number | null
  /** The heading driven last, by operation. */
  readonly lastDeg: Readonly<Partial<Record<Operation, number>>>
}

/** One pass as told. */
export type PassTold = {
  readonly passes: Passes
  readonly areas: Coverage
  /** Extent of the green across the heading, m. */
  readonly extentM: number
  /** Slope felt sideways, %, where it is beyond what is told; null where it is less or not known. */
  readonly acrossPercent: number | null
  /** Runs, from 1, that leave the green towards a bunker. */
  readonly towards: readonly { readonly place: string; readonly runs: readonly number[] }[]
}

/** How the heading came about. */
export type HeadingReason = {
  readonly by: 'chosen' | 'best'
  /** The heading driven last time, where one is known. */
  readonly lastDeg: number | null
  /** Wishes that could not be kept, since no heading keeps all. */
  readonly dropped: readonly HeadingBan['reason'][]
  /** True when a chosen heading lies within 15 degrees of the last one. */
  readonly isNearLast: boolean
  /** The best heading's time for all passes, min; null where it is the one shown. */
  readonly bestMin: number | null
}

/** Dresser loads of the first pass. */
export type LoadsTold = {
  readonly loads: readonly DresserLoad[]
  readonly error: SandRunsError | null
  readonly boutM: number
  readonly rateKgPerM2: number
  /** Loads that the plan reckons with. */
  readonly planned: number
}

/** The runs of one machine over one green. */
export type RunsTold = {
  readonly choices: readonly RunsChoice[]
  readonly choice: RunsChoice
  readonly settings: PassSettings
  readonly polygon: Polygon
  readonly isApproximate: boolean
  readonly turnDeg: number
  readonly told: readonly PassTold[]
  readonly reason: HeadingReason
  readonly sand: LoadsTold | null
  readonly bunkers: readonly { readonly name: string; readonly ring: Polygon['outer'] }[]
}
