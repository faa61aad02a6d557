import { describe, expect, it } from 'vitest'
import { clockLines, reasonSentences, runRanges } from './told.ts'

describe('words of the runs', () => {
  it('gather runs into ranges', () => {
    expect(runRanges([1, 2, 3, 7])).toBe('1 to 3 and 7')
    expect(runRanges([5])).toBe('5')
  })

  it('name six lines of the clock, turned with the line of play', () => {
    expect(clockLines(0).map(({ words }) => words)).toEqual([
      '12 to 6',
      '1 to 7',
      '2 to 8',
      '3 to 9',
      '4 to 10',
      '5 to 11',
    ])
    // With 12 o'clock at 40 degrees, 2 to 8 lies 60 degrees on: 100.
    expect(clockLines(40)[2]).toEqual({ headingDeg: 100, words: '2 to 8' })
  })

  it('say what was driven last time, on the club’s own day, and what another heading costs', () => {
    const how = { twelveDeg: 0, timeMin: 12.4, timeZone: 'Europe/London' }
    const reason = { by: 'chosen', lastDeg: 62, dropped: [], isNearLast: true, bestMin: 11.9 } as const
    const last = { headingDeg: 62, at: '2026-06-10T23:30:00.000Z' }
    // Half past eleven at night in UTC is the next day in London in summer.
    expect(reasonSentences(reason, last, how)).toEqual([
      'Last time, Thu 11 June, it was driven 2 to 8 (62°)',
      'That is nearly the same line again',
      'It takes 0.5 min more than the best heading',
    ])
    expect(reasonSentences({ ...reason, isNearLast: false, bestMin: null }, null, how)).toEqual([
      'Nobody has noted yet how it was driven last time',
    ])
  })
})
