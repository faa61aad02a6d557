import type { CalculationError } from '../../catalogue/errors.ts'
import type { Course } from '../../course/course.ts'
import { ok, type Result } from '../../result.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import { memberOf } from '../../weather/members.ts'
import type { Problem } from '../problem.ts'
import type { ReadSky } from '../sky.ts'

/** A problem under one weather that may come: the same work, crew and days under another sky. */
export type Scenario = Problem

/** The problem under each member of an ensemble. Errors: a threshold of the club's that is out of range. */
export const scenariosOf = (
  problem: Problem,
  course: Course,
  ensemble: WeatherHours,
  sky: ReadSky,
): Result<readonly Scenario[], CalculationError> => {
  const scenarios: Scenario[] = []
  for (let member = 0; member < ensemble.members; member++) {
    const { originMs, days, horizonMin } = problem
    const read = sky({ course, weather: memberOf(ensemble, member), originMs, days, horizonMin })
    if (!read.ok) return read
    const { rain, workable, driedMm } = read.value
    scenarios.push({ ...problem, rain, workable, driedMm })
  }
  return ok(scenarios)
}
