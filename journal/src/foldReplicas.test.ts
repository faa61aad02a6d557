import { describe, expect, it } from 'vitest'
import * as fc from 'fast-check'
import type { Entry } from './entry.ts'
import { extend, fold, initialState, type JournalState } from './fold.ts'
import { snapshotOf, stateOf } from './snapshot.ts'
import { entryOf, idOf, smallCourse } from './testing/entries.ts'

/** Entries of all sorts, at few moments, so that ties, late entries and strikes of strikes are common. */
const entryArbitrary = (number: number): fc.Arbitrary<Entry> => {
  const target = fc.integer({ min: 0, max: 11 })
  const make = fc.integer({ min: 0, max: 4 }).chain((minute) =>
    fc.oneof(
      fc.constant(entryOf('noteWritten', { words: `note ${number}` }, { number, minute })),
      fc.constant(
        entryOf(
          'courseChanged',
          { changes: [{ part: 'course', do: 'put', value: smallCourse }] },
          { number, minute },
        ),
      ),
      fc
        .record({ areaM2: fc.integer({ min: 20, max: 900 }) })
        .map((fields) =>
          entryOf(
            'courseChanged',
            { changes: [{ part: 'greens', do: 'set', id: 'g1', fields }] },
            { number, minute },
          ),
        ),
      fc.constant(
        entryOf(
          'courseChanged',
          { changes: [{ part: 'greens', do: 'remove', id: 'g1' }] },
          { number, minute },
        ),
      ),
      fc
        .constantFrom('rainBegan' as const, 'rainEnded' as const)
        .map((kind) => entryOf(kind, {}, { number, minute })),
      fc.constant(entryOf('problemReported', { problem: 'other', words: `p${number}` }, { number, minute })),
      fc.constant({ ...entryOf('rainEnded', {}, { number, minute }), kind: 'cupMoved' }),
      target
        .map((at) => ({ to: at }))
        .map(({ to }) => ({ ...entryOf('rainEnded', {}, { number, minute }), kind: 'struck', body: { to } })),
    ),
  )
  return make
}

/** Twelve entries; a strike or a solution names one of the others. */
const journalArbitrary = fc
  .tuple(...Array.from({ length: 12 }, (_, number) => entryArbitrary(number)))
  .map((entries) =>
    entries.map((entry) =>
      entry.kind === 'struck'
        ? { ...entry, body: { entry: entries[Number(entry.body['to'])]?.id ?? idOf(99), reason: 'wrong' } }
        : entry,
    ),
  )

/** A way the entries reach a replica: any order, some of them twice, in parts of any size. */
const deliveryArbitrary = fc.record({
  order: fc.shuffledSubarray(
    Array.from({ length: 12 }, (_, index) => index),
    { minLength: 12 },
  ),
  again: fc.array(fc.integer({ min: 0, max: 11 }), { maxLength: 8 }),
  part: fc.integer({ min: 1, max: 20 }),
})

const deliver = (
  entries: readonly Entry[],
  way: { order: readonly number[]; again: readonly number[]; part: number },
) => {
  const sent = [...way.order, ...way.again].flatMap((index) => entries[index] ?? [])
  let state = initialState
  for (let from = 0; from < sent.length; from += way.part)
    state = fold(state, sent.slice(from, from + way.part))
  return state
}

/** A replica that goes by a snapshot after each part, and starts again from all it has where the snapshot does not do. */
const deliverBySnapshots = (
  entries: readonly Entry[],
  way: { order: readonly number[]; again: readonly number[]; part: number },
) => {
  const sent = [...way.order, ...way.again].flatMap((index) => entries[index] ?? [])
  let state: JournalState = initialState
  for (let from = 0; from < sent.length; from += way.part) {
    const next = extend(state, sent.slice(from, from + way.part))
    const whole = next ?? fold(initialState, sent.slice(0, from + way.part))
    const snapshot = snapshotOf(whole)
    state = (snapshot === null ? null : stateOf(snapshot)) ?? initialState
  }
  return state
}

describe('replicas', () => {
  it('[J6] three end in one state, whatever the order, parts and repeats of delivery', () => {
    fc.assert(
      fc.property(journalArbitrary, deliveryArbitrary, deliveryArbitrary, (entries, one, two) => {
        const whole = fold(initialState, entries)
        expect(deliver(entries, one)).toEqual(whole)
        expect(deliver(entries, two)).toEqual(whole)
        const third = deliverBySnapshots(entries, two)
        expect(third.facts).toEqual(whole.facts)
        expect(third.struck).toEqual(whole.struck)
      }),
      { seed: 2026, numRuns: 400 },
    )
  })

  it('[J6] the generator makes what the rule is about: struck notes, set-aside changes and unknown kinds', () => {
    const samples = fc
      .sample(journalArbitrary, { seed: 2026, numRuns: 200 })
      .map((entries) => fold(initialState, entries))
    expect(samples.some((state) => state.struck.size > 1)).toBe(true)
    expect(samples.some((state) => state.facts.setAside.length > 0)).toBe(true)
    expect(samples.some((state) => state.entries.some((read) => read.type === 'unknownKind'))).toBe(true)
    expect(samples.some((state) => state.facts.course !== null)).toBe(true)
  })
})
