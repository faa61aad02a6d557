import { fail, ok, type Result } from '@swardwright/engine'
import type { ApiError } from '../errors.ts'
import type { LiveHub } from '../liveHub.ts'
import type { CourseRow, Storage } from '../storage/storage.ts'
import type { WeatherService } from '../weather/weatherService.ts'

/** What the handlers of all routes work with. */
export type Context = {
  readonly storage: Storage
  readonly hub: LiveHub
  readonly weather: WeatherService
  /** The server's clock, epoch milliseconds. */
  readonly clock: () => number
}

/** The course of that id, or the error that says it is not there. */
export const courseOf = async ({ storage }: Context, id: string): Promise<Result<CourseRow, ApiError>> => {
  const found = (await storage.journal.courses()).find((course) => course.id === id)
  return found === undefined ? fail({ type: 'courseUnknown', course: id }) : ok(found)
}
