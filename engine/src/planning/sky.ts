import type { CalculationError } from '../catalogue/errors.ts'
import type { Course } from '../course/course.ts'
import type { Result } from '../result.ts'
import type { WeatherHours } from '../weather/hours.ts'
import type { Operation } from './operations.ts'
import type { ProblemDay, Span } from './problem.ts'

/** What the planner asks of the weather. */
export type SkyWanted = {
  readonly course: Course
  readonly weather: WeatherHours | null
  readonly originMs: number
  readonly days: readonly ProblemDay[]
  readonly horizonMin: number
}

/** What the sky lets one do, in minutes from the origin. */
export type Sky = {
  readonly rain: readonly Span[]
  readonly workable: ReadonlyMap<Operation, readonly Span[]>
  /** Water gone from lying sand since the origin, mm, at each full hour. */
  readonly driedMm: Float64Array
  /** Minute at which the forecast ends, if it ends inside the horizon; later hours count as dry. */
  readonly forecastEndsMin: number | null
}

/** The weather's part in a plan, replaceable: a forecast, a record, a member of an ensemble. Errors: a threshold of the club's that is out of range. */
export type ReadSky = (wanted: SkyWanted) => Result<Sky, CalculationError>
