import type { WeatherProblem } from '@swardwright/journal'
import { clock, dayAndClock, dateAt } from './times.ts'

/** What was wrong with the last try to reach a weather service: a sentence without a full stop. */
export const weatherProblemWords = (problem: WeatherProblem, timeZone: string): string => {
  switch (problem.type) {
    case 'timedOut':
      return `the weather service did not answer within ${Math.round(problem.afterMs / 1000)} seconds`
    case 'unreachable':
      return 'the weather service can’t be reached'
    case 'status':
      return `the weather service failed (HTTP ${problem.status})`
    case 'tooOften':
      return problem.retryAt === null
        ? 'the weather service was asked too often'
        : `the weather service was asked too often, and is left alone until ${clock(problem.retryAt, timeZone)}`
    case 'tooLarge':
      return `the answer is larger than ${Math.round(problem.maxBytes / 1_000_000)} MB, so it was not read`
    case 'notJson':
      return {
        page: 'a web page came instead of weather (a log-in page of the network, perhaps)',
        half: 'only half of the answer arrived',
        empty: 'the answer is empty',
      }[problem.what]
    case 'otherUnit':
      return `${problem.field} came in ${problem.received ?? 'an unnamed unit'} though ${problem.asked} was asked for, so it was not used`
    case 'unreadable':
      return problem.reason
    case 'noPlace':
      return 'no green of the course has a place yet'
  }
}

/** How old something is, in the coarsest unit that tells it: 'just now', '40 minutes old', '3 hours old', '2 days old'. */
export const ageWords = (fromMs: number, nowMs: number): string => {
  const minutes = Math.max(0, Math.floor((nowMs - fromMs) / 60_000))
  if (minutes < 2) return 'just come in'
  if (minutes < 120) return `${minutes} minutes old`
  const hours = Math.floor(minutes / 60)
  return hours < 48 ? `${hours} hours old` : `${Math.floor(hours / 24)} days old`
}

/** When something was fetched, short where it was today. */
export const fetchedWords = (fetchedMs: number, nowMs: number, timeZone: string): string =>
  dateAt(fetchedMs, timeZone) === dateAt(nowMs, timeZone)
    ? clock(fetchedMs, timeZone)
    : dayAndClock(fetchedMs, timeZone)
