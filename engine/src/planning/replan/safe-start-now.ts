import { fail, ok, type Result } from '../../result.ts'
import { instantWriter } from '../schedule-to-plan.ts'
import type { ReadSky } from '../sky.ts'
import { weatherSky } from '../weather-sky.ts'
import type { ReplanInput } from './make-replan.ts'
import { lastSafeStartOf } from './safe-starts.ts'
import { situationIn, type SituationError } from './situation.ts'

/**
 * Last safe start of one green in a plan that was made, or made again, at `now`: outages, rain and paces are those of the facts. An instant of the course; null where the green is
 * not opened by the plan, or has been opened already. Errors: as `replan`.
 */
export const lastSafeStartNow = (
  input: ReplanInput,
  green: string,
  readSky: ReadSky = weatherSky,
): Result<string | null, SituationError> => {
  const read = situationIn({ ...input, tasks: input.plan.tasks }, readSky)
  if (!read.ok) return fail(read.error)
  const { problem, oldTasks } = read.value
  const index = problem.greens.findIndex(({ id }) => id === green)
  const minute = index < 0 ? null : lastSafeStartOf(problem, oldTasks, index)
  return ok(minute === null ? null : instantWriter(problem)(minute))
}
