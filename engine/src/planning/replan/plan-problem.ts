import type { Course } from '../../course/course.ts'
import type { Result } from '../../result.ts'
import { MINUTE_MS } from '../../time/zone.ts'
import type { WeatherHours } from '../../weather/hours.ts'
import type { PlanError } from '../plan-error.ts'
import type { PlanToCheck } from '../plan.ts'
import type { Problem } from '../problem.ts'
import { MAX_DAYS, readProblem, type Ports } from '../read-problem.ts'
import { weatherDryNeed, weatherSky } from '../weather-sky.ts'

/** Fewest days that a plan is made again on, and days kept free after its last task: room for greens that are put off. */
const LEAST_DAYS = 10
const SPARE_DAYS = 4

const PORTS: Ports = { sky: weatherSky, dryNeed: weatherDryNeed }

/** The problem that a plan is made again, or judged, on: as course, prescription and first day give it, with room after the last task. Takes a second on a phone, so it is read once and kept. */
export const planProblemOf = (
  plan: Pick<PlanToCheck, 'tasks' | 'start' | 'prescription'>,
  course: Course,
  weather: WeatherHours | null,
  ports: Ports = PORTS,
): Result<Problem, PlanError> => {
  const startMs = Date.parse(plan.start)
  const last = Math.max(startMs, ...plan.tasks.map((task) => Date.parse(task.finish)))
  const days = Math.ceil((last - startMs) / (1440 * MINUTE_MS)) + SPARE_DAYS
  return readProblem(
    {
      course,
      weather,
      prescription: plan.prescription,
      start: plan.start,
      days: Math.min(MAX_DAYS, Math.max(LEAST_DAYS, days)),
    },
    ports,
  )
}
