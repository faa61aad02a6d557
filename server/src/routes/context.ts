import { fail, ok, type Result } from '@swardwright/engine'
import type { Attempts } from '../access/attempts.ts'
import type { PasswordCost } from '../access/passwords.ts'
import type { ApiError } from '../errors.ts'
import type { JournalReader } from '../journalReader.ts'
import type { LiveHub } from '../liveHub.ts'
import type { CourseRow, Storage } from '../storage/storage.ts'
import type { WeatherService } from '../weather/weatherService.ts'

/** What the handlers of all routes work with. */
export type Context = {
  readonly storage: Storage
  readonly hub: LiveHub
  readonly weather: WeatherService
  /** What the journals say. */
  readonly reader: JournalReader
  /** Wrong guesses of secrets so far. */
  readonly attempts: Attempts
  /** The code that makes the first account from elsewhere; null where the server has none. */
  readonly setUpCode: string | null
  /** What a new password costs to check. */
  readonly passwordCost: PasswordCost
  /** The server's clock, epoch milliseconds. */
  readonly clock: () => number
}

/** The course of that id, or the error that says it is not there. */
export const courseOf = async ({ storage }: Context, id: string): Promise<Result<CourseRow, ApiError>> => {
  const found = (await storage.journal.courses()).find((course) => course.id === id)
  return found === undefined ? fail({ type: 'courseUnknown', course: id }) : ok(found)
}
