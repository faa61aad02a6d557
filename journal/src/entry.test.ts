import * as fc from 'fast-check'
import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { atMsOf, compareEntries, entrySchema, momentFromMs, nextMomentMs } from './entry.ts'
import { entryOf, idOf } from './testing/entries.ts'

const note = entryOf('noteWritten', { words: 'dew until nine' }, { number: 1 })

describe('an entry', () => {
  it('[J1] is taken with all its fields', () => {
    expect(v.parse(entrySchema, note)).toEqual(note)
  })

  it.each([
    ['id', 'not-an-id'],
    ['id', note.id.toUpperCase()],
    ['course', ''],
    ['course', 'a/b'],
    ['device', ''],
    ['at', '2026-08-10'],
    ['at', '2026-13-10T10:00:00Z'],
    ['recordedAt', '2026-08-10T10:00:00'],
    ['kind', 'Note written'],
    ['version', 0],
    ['version', 1.5],
    ['body', 'words'],
    ['body', null],
  ])('[J1] is refused with %s = %j', (field, value) => {
    expect(v.is(entrySchema, { ...note, [field]: value })).toBe(false)
  })

  it('[J4] has its moment, however it is written', () => {
    // The platform's own reading of ISO 8601 is the judge.
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1600-01-01'), max: new Date('2400-01-01'), noInvalidDate: true }),
        (date) => {
          expect(atMsOf({ at: date.toISOString() })).toBe(Date.parse(date.toISOString()))
        },
      ),
      { seed: 4, numRuns: 500 },
    )
    expect(atMsOf({ at: '2026-08-10T07:00:00+01:00' })).toBe(Date.UTC(2026, 7, 10, 6))
    expect(atMsOf({ at: '2024-02-29T23:59:59.999Z' })).toBe(Date.UTC(2024, 1, 29, 23, 59, 59, 999))
  })

  it('[J4] comes before another by the moment, not by how its time is written', () => {
    const early = { at: '2026-08-10T09:00:00+02:00', id: idOf(9) }
    const late = { at: '2026-08-10T07:30:00Z', id: idOf(1) }
    expect(compareEntries(early, late)).toBeLessThan(0)
    expect(compareEntries(late, early)).toBeGreaterThan(0)
  })

  it('[J4] comes before another of the same moment by its id', () => {
    const a = { at: '2026-08-10T07:00:00Z', id: idOf(1) }
    const b = { at: '2026-08-10T08:00:00+01:00', id: idOf(2) }
    expect(compareEntries(a, b)).toBeLessThan(0)
    expect(compareEntries(a, a)).toBe(0)
  })

  it('[J3] lies after the last one of its device even when the clock went back', () => {
    expect(nextMomentMs(null, 1000)).toBe(1000)
    expect(nextMomentMs(1000, 2000)).toBe(2000)
    expect(nextMomentMs(1000, 1000)).toBe(1001)
    expect(nextMomentMs(1000, 10)).toBe(1001)
    expect(momentFromMs(0)).toBe('1970-01-01T00:00:00.000Z')
  })
})
