import { describe, expect, it } from 'vitest'
import type { Entry } from './entry.ts'
import { extend, fold, initialState, type JournalState } from './fold.ts'
import { KINDS, KIND_NAMES } from './kinds.ts'
import { FOLD_VERSION, snapshotOf, stateOf, type Snapshot } from './snapshot.ts'
import { entryOf, smallCourse } from './testing/entries.ts'

const note = (number: number, minute = number) =>
  entryOf('noteWritten', { words: `note ${number}` }, { number, minute })
const setUp = entryOf(
  'courseChanged',
  { changes: [{ part: 'course', do: 'put', value: smallCourse }] },
  { number: 1 },
)
const strike = (number: number, target: Entry) =>
  entryOf('struck', { entry: target.id, reason: 'wrong' }, { number })

/** Through text and back, as a browser's database keeps it. */
const reopened = (state: JournalState): JournalState => {
  const kept: Snapshot | null = JSON.parse(JSON.stringify(snapshotOf(state)))
  const opened = kept === null ? null : stateOf(kept)
  if (opened === null) throw new Error('a snapshot of today opens')
  return opened
}

const early = [setUp, note(2), note(3), strike(4, note(2))]
const whole = fold(initialState, early)

describe('a snapshot', () => {
  it('[J15] says the same as the entries it stands for', () => {
    expect(reopened(whole).facts).toEqual(whole.facts)
    expect(reopened(whole).struck).toEqual(whole.struck)
  })

  it('[J15] with later entries on top says the same as all entries together, from snapshot to snapshot', () => {
    let state: JournalState | null = reopened(whole)
    for (const number of [5, 6, 7]) {
      state = extend(state, [note(number), note(number), setUp])
      if (state === null) throw new Error('these lie on top')
      state = reopened(state)
    }
    expect(state.facts).toEqual(fold(whole, [note(5), note(6), note(7)]).facts)
  })

  it('[J15] asks for all entries when one comes late or strikes something', () => {
    expect(extend(reopened(whole), [note(9, 2)])).toBeNull()
    expect(extend(reopened(whole), [strike(9, note(3))])).toBeNull()
    expect(() => fold(reopened(whole), [note(9, 2)])).toThrow('extended')
    expect(extend(reopened(whole), [note(3), setUp])?.facts).toEqual(whole.facts)
  })

  it('[J15] of another version of the fold is thrown away', () => {
    const kept = snapshotOf(whole)
    expect(kept?.foldVersion).toBe(FOLD_VERSION)
    expect(kept === null ? null : stateOf({ ...kept, foldVersion: FOLD_VERSION + 1 })).toBeNull()
  })

  it('[J15] of nothing is none', () => {
    expect(snapshotOf(initialState)).toBeNull()
  })

  it('[J3] keeps the latest moment of each device', () => {
    const kept = snapshotOf(fold(reopened(whole), [note(8)]), snapshotOf(whole)?.latestMs)
    expect(kept?.latestMs).toEqual({ phone: Date.parse(note(8).at) })
  })

  // Counted by hand from the table of kinds. Whoever adds a kind, a version of one or a field of facts comes by here and raises FOLD_VERSION.
  it('[J15] has version 7 for 23 kinds in 29 versions and 21 facts', () => {
    const versions = Object.values(KINDS).reduce((sum, { version }) => sum + version, 0)
    expect([FOLD_VERSION, KIND_NAMES.length, versions, Object.keys(whole.facts).length]).toEqual([
      7, 23, 29, 21,
    ])
  })
})

describe('facts', () => {
  it('[J9] of every kind but a strike change when its example is recorded', () => {
    for (const [index, kind] of KIND_NAMES.entries()) {
      if (kind === 'struck') continue
      const body: Entry['body'] = { ...KINDS[kind].example }
      const base = [
        { ...entryOf('rainBegan', {}, { number: 50 }) },
        {
          ...entryOf('problemReported', { problem: 'other', words: 'mud' }, { number: 51 }),
          id: KINDS.problemSolved.example.problem,
        },
      ]
      const start = fold(initialState, kind === 'rainBegan' ? [] : base)
      const entry: Entry = { ...note(60 + index), kind, version: 1, body }
      const { facts } = fold(start, [entry])
      expect(facts, kind).not.toEqual(start.facts)
    }
  })
})
