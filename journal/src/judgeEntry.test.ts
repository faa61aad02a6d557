import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { CLOCK_AHEAD_MAX_MS, judgeEntry } from './judgeEntry.ts'
import { kind } from './kind.ts'
import { KINDS } from './kinds.ts'
import { readEntry } from './readEntry.ts'
import { MORNING_MS, entryOf } from './testing/entries.ts'

const note = entryOf('noteWritten', { words: 'dew until nine' }, { number: 1 })
const context = { course: 'demo', role: 'manager', nowMs: MORNING_MS } as const

/** A kind that has changed twice: `mm` became `depthMm`, then a reason was asked for; version 1 is no longer taken. */
const CHANGED = {
  probed: kind({
    meaning: 'Somebody probed.',
    version: 3,
    acceptedFrom: 2,
    roles: ['manager', 'crew'],
    body: v.strictObject({ depthMm: v.number(), why: v.string() }),
    lifts: [({ mm, ...rest }) => ({ ...rest, depthMm: mm }), (body) => ({ ...body, why: 'not told' })],
    example: { depthMm: 40, why: 'soft' },
  }),
}
const probed = (version: number, body: Record<string, unknown>) => ({
  ...note,
  kind: 'probed',
  version,
  body,
})

describe('judging an entry', () => {
  it('[J20] takes a good one, without what is foreign in its envelope', () => {
    const stored = { ...note, seq: 12, receivedAt: note.at, skewMs: 0 }
    expect(judgeEntry(stored, context)).toEqual({ ok: true, value: note })
  })

  it('[J20] drops nothing unsaid: refuses a field of the envelope that nobody knows', () => {
    expect(judgeEntry({ ...note, mood: 'good' }, context)).toEqual({
      ok: false,
      error: { id: note.id, why: 'bad-body', field: 'mood', expected: 'absent' },
    })
  })

  // Days of the Gregorian calendar: ISO 8601, 5.2.1 (April has 30, 2026 and 2100 are no leap years, 2024 is).
  it.each([
    ['2026-02-30T10:00:00Z', false],
    ['2026-02-29T10:00:00.000Z', false],
    ['2026-04-31T10:00:00+01:00', false],
    ['2026-01-01T25:00:00Z', false],
    ['0000-01-01T00:00:00Z', false],
    ['2024-02-29T10:00:00Z', true],
  ])('[J1] has a time that exists: %s', (at, isTaken) => {
    const judged = judgeEntry({ ...note, at }, context)
    expect(judged.ok).toBe(isTaken)
    if (!judged.ok) expect(judged.error).toMatchObject({ field: 'at', expected: 'a time that exists' })
    const late = entryOf('problemReported', { problem: 'late', until: at }, { number: 3 })
    expect(judgeEntry(late, context).ok).toBe(isTaken)
  })

  it('[J20] says the whole accepted range with its unit', () => {
    const reading = entryOf('measureTaken', { measure: 'speed', green: 'g1', rollM: 9 }, { number: 4 })
    expect(judgeEntry(reading, context)).toMatchObject({
      error: { why: 'bad-body', field: 'body.rollM', expected: 'a number from 0 to 8 m' },
    })
  })

  it('[J20] names the field of the envelope or the body that is wrong', () => {
    expect(judgeEntry({ ...note, at: 'noon' }, context)).toEqual({
      ok: false,
      error: {
        id: note.id,
        why: 'bad-body',
        field: 'at',
        expected: 'a time with its offset such as 2026-08-10T06:30:00+01:00',
      },
    })
    const bad = judgeEntry({ ...note, body: { text: 'x' } }, context)
    expect(bad).toMatchObject({ ok: false, error: { why: 'bad-body', field: 'body.words' } })
  })

  it('[J20] gives the id back as it was sent', () => {
    expect(judgeEntry({ ...note, id: 'mine' }, context)).toMatchObject({
      error: { id: 'mine', why: 'bad-body', field: 'id' },
    })
  })

  it('refuses an entry of another course', () => {
    expect(judgeEntry({ ...note, course: 'other' }, context)).toMatchObject({
      error: { why: 'bad-body', field: 'course', expected: 'demo' },
    })
  })

  it('[J20] refuses an entry longer than a million characters as too large', () => {
    const long = { ...note, body: { words: 'x'.repeat(1_000_001) } }
    expect(judgeEntry(long, context)).toEqual({
      ok: false,
      error: {
        id: note.id,
        why: 'too-large',
        field: 'entry',
        expected: 'at most 1000000 characters of JSON',
      },
    })
  })

  it.each(['at', 'recordedAt'])('[J21] takes %s up to a day ahead and refuses one beyond', (field) => {
    const ahead = (ms: number) => ({
      ...note,
      [field]: new Date(MORNING_MS + CLOCK_AHEAD_MAX_MS + ms).toISOString(),
    })
    expect(judgeEntry(ahead(0), context).ok).toBe(true)
    expect(judgeEntry(ahead(1), context)).toMatchObject({
      ok: false,
      error: { id: note.id, why: 'clock', field },
    })
  })

  it.each([1, -1])('[J21] refuses all of a sender whose clock is a day off', (sign) => {
    const skewed = (ms: number) => judgeEntry(note, { ...context, skewMs: sign * (CLOCK_AHEAD_MAX_MS + ms) })
    expect(skewed(0).ok).toBe(true)
    expect(skewed(1)).toMatchObject({ error: { why: 'clock', field: 'sentAt' } })
  })

  it('[J21] takes an entry from weeks ago', () => {
    expect(judgeEntry(note, { ...context, nowMs: MORNING_MS + 60 * CLOCK_AHEAD_MAX_MS }).ok).toBe(true)
  })

  it('[J22] takes from a role only the kinds of the table', () => {
    const change = entryOf('courseChanged', KINDS.courseChanged.example, { number: 2 })
    expect(judgeEntry(change, { ...context, role: 'deputy' }).ok).toBe(true)
    expect(judgeEntry(change, { ...context, role: 'crew' })).toEqual({
      ok: false,
      error: {
        id: change.id,
        why: 'not-allowed',
        field: 'kind',
        expected: 'one for the role crew; courseChanged is for manager, deputy',
      },
    })
    expect(judgeEntry(note, { ...context, role: 'crew' }).ok).toBe(true)
    expect(judgeEntry(note, { ...context, role: 'committee' }).ok).toBe(false)
  })

  it('[J23] takes unknown kinds from those who decide only', () => {
    const unknown = { ...note, kind: 'droneFlown', body: { heightM: 20 } }
    expect(judgeEntry(unknown, context)).toEqual({ ok: true, value: unknown })
    expect(judgeEntry(unknown, { ...context, role: 'crew' })).toMatchObject({ error: { why: 'not-allowed' } })
  })

  it('[J14] refuses a version that is too old, and takes one that is newer unread', () => {
    const judged = (version: number, body: Record<string, unknown>) =>
      judgeEntry(probed(version, body), { ...context, kinds: CHANGED })
    expect(judged(1, { mm: 40 })).toEqual({
      ok: false,
      error: { id: note.id, why: 'too-old', field: 'version', expected: 'from 2 to 3' },
    })
    expect(judged(2, { depthMm: 40 }).ok).toBe(true)
    expect(judged(3, { depthMm: 40 })).toMatchObject({ error: { why: 'bad-body', field: 'body.why' } })
    expect(judged(4, { whatever: true }).ok).toBe(true)
  })
})

describe('reading an entry', () => {
  it.each([
    [1, { mm: 40 }, { depthMm: 40, why: 'not told' }],
    [2, { depthMm: 40 }, { depthMm: 40, why: 'not told' }],
    [3, { depthMm: 40, why: 'soft' }, { depthMm: 40, why: 'soft' }],
  ])('[J10] lifts version %i to today and leaves the entry as it was', (version, body, lifted) => {
    const entry = probed(version, body)
    expect(readEntry(entry, CHANGED)).toMatchObject({ type: 'known', known: { version: 3, body: lifted } })
    expect(entry).toEqual(probed(version, body))
  })
})
