import { describe, expect, it } from 'vitest'
import type { WeatherProblem } from '@swardwright/journal'
import { ageWords, fetchedWords, weatherProblemWords } from './weather-words.ts'

const LONDON = 'Europe/London'
const AT = Date.parse('2026-08-10T06:00:00Z')

describe('words about the weather service', () => {
  it.each<[WeatherProblem, string]>([
    [{ type: 'timedOut', afterMs: 8000 }, 'the weather service did not answer within 8 seconds'],
    [{ type: 'unreachable' }, 'the weather service can’t be reached'],
    [{ type: 'status', status: 503 }, 'the weather service failed (HTTP 503)'],
    [{ type: 'tooOften', retryAt: null }, 'the weather service was asked too often'],
    [
      { type: 'tooOften', retryAt: '2026-08-10T06:30:00Z' },
      'the weather service was asked too often, and is left alone until 07:30',
    ],
    [{ type: 'tooLarge', maxBytes: 24_000_000 }, 'the answer is larger than 24 MB, so it was not read'],
    [{ type: 'notJson', what: 'half' }, 'only half of the answer arrived'],
    [
      { type: 'otherUnit', field: 'hourly_units.precipitation', asked: 'mm', received: null },
      'hourly_units.precipitation came in an unnamed unit though mm was asked for, so it was not used',
    ],
    [{ type: 'unreadable', reason: 'times must be full hours' }, 'times must be full hours'],
    [{ type: 'noPlace' }, 'no green of the course has a place yet'],
  ])('tell %j', (problem, words) => {
    expect(weatherProblemWords(problem, LONDON)).toBe(words)
  })

  it.each([
    [0, 'just come in'],
    [-5, 'just come in'],
    [119, '119 minutes old'],
    [120, '2 hours old'],
    [47 * 60 + 59, '47 hours old'],
    [48 * 60, '2 days old'],
  ])('tell the age of what came %i minutes ago', (minutes, words) => {
    expect(ageWords(AT, AT + minutes * 60_000)).toBe(words)
  })

  it('name the day only when it is another on the course’s calendar', () => {
    expect(fetchedWords(AT, AT + 3_600_000, LONDON)).toBe('07:00')
    // 23:30 UTC is already the next day in London.
    expect(fetchedWords(AT, Date.parse('2026-08-10T23:30:00Z'), LONDON)).toBe('Mon 10 Aug 07:00')
  })
})
