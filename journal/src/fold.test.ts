import { describe, expect, it } from 'vitest'
import type { Entry } from './entry.ts'
import { fold, initialState } from './fold.ts'
import { EXAMPLE_PLAN, EXAMPLE_PRESCRIPTION } from './kindExamples.ts'
import { entryOf, idOf, smallCourse } from './testing/entries.ts'

const factsOf = (...entries: readonly Entry[]) => fold(initialState, entries).facts

const setUp = entryOf(
  'courseChanged',
  { changes: [{ part: 'course', do: 'put', value: smallCourse }] },
  { number: 1 },
)
const setGreen = (number: number, fields: object, minute = number) =>
  entryOf('courseChanged', { changes: [{ part: 'greens', do: 'set', id: 'g1', fields }] }, { number, minute })
const note = (number: number, words: string, minute = number) =>
  entryOf('noteWritten', { words }, { number, minute })
const strike = (number: number, target: Entry, minute = number) =>
  entryOf('struck', { entry: target.id, reason: 'wrong' }, { number, minute })
const wordsOf = (...entries: readonly Entry[]) =>
  factsOf(...entries).notes.map((written) => written.value.words)

describe('a fold', () => {
  it('of nothing knows nothing', () => {
    expect(fold(initialState, [])).toBe(initialState)
    expect(initialState.facts.course).toBeNull()
  })

  it('knows the course as it was set up and then changed', () => {
    const { course } = factsOf(setUp, setGreen(2, { areaM2: 512 }))
    expect(course?.greens.map((green) => green.areaM2)).toEqual([512, 400])
  })

  it('[J11] keeps changes of two people to different fields of one green', () => {
    const green = factsOf(setUp, setGreen(3, { weak: true }), setGreen(2, { areaM2: 512 })).course?.greens[0]
    expect(green).toMatchObject({ weak: true, areaM2: 512 })
  })

  it('[J11] keeps the later of two changes to one field, even when it comes in first', () => {
    const late = setGreen(3, { areaM2: 600 })
    const early = setGreen(2, { areaM2: 500 })
    expect(factsOf(setUp, late, early).course?.greens[0]?.areaM2).toBe(600)
  })

  it('[J12] lists a change that had nothing to work on', () => {
    const lost = entryOf(
      'courseChanged',
      { changes: [{ part: 'greens', do: 'set', id: 'g9', fields: { weak: true } }] },
      { number: 2 },
    )
    const facts = factsOf(setUp, lost)
    expect(facts.course).toEqual(smallCourse)
    expect(facts.setAside).toEqual([{ entry: lost.id, error: { type: 'noItem', part: 'greens', id: 'g9' } }])
  })

  it('knows the prescription and the plan settled last', () => {
    const prescribed = entryOf('prescriptionSettled', { prescription: EXAMPLE_PRESCRIPTION }, { number: 2 })
    const planned = entryOf('planSettled', { plan: EXAMPLE_PLAN }, { number: 3 })
    const again = entryOf('planSettled', { plan: { ...EXAMPLE_PLAN, seed: 7 } }, { number: 4 })
    const facts = factsOf(again, planned, prescribed)
    expect(facts.prescription?.value).toEqual(EXAMPLE_PRESCRIPTION)
    expect(facts.plan).toMatchObject({ entry: again.id, at: again.at, author: 'manager', value: { seed: 7 } })
  })

  it('[J13] drops typed rain once a newer forecast is there', () => {
    const typed = (number: number) =>
      entryOf('rainTyped', { from: '2026-08-11', to: '2026-08-11', spells: [] }, { number })
    const forecast = entryOf(
      'forecastReceived',
      { source: 'file', forecast: { hourly: { time: ['2026-08-10T00:00'] } } },
      { number: 3 },
    )
    const facts = factsOf(typed(2), forecast, typed(4))
    expect(facts.forecast?.entry).toBe(forecast.id)
    expect(facts.typedRain.map((rain) => rain.entry)).toEqual([typed(4).id])
  })

  it('knows what was finished', () => {
    const task = entryOf('taskFinished', { green: 'g1', operation: 'core' }, { number: 2 })
    const green = entryOf('greenFinished', { green: 'g1' }, { number: 3, author: 'Ada' })
    const facts = factsOf(task, green)
    expect(facts.tasksFinished.map((done) => done.value)).toEqual([{ green: 'g1', operation: 'core' }])
    expect(facts.greensFinished).toEqual([
      { entry: green.id, author: 'Ada', at: '2026-08-10T06:03:00.000Z', value: { green: 'g1' } },
    ])
  })

  it('keeps the headings driven, the latest last, whatever came in first', () => {
    const driven = (number: number, headingDeg: number) =>
      entryOf('runsDriven', { green: 'g1', operation: 'cut', headingDeg }, { number })
    expect(factsOf(driven(3, 75), driven(2, 60)).runsDriven.map((one) => one.value.headingDeg)).toEqual([
      60, 75,
    ])
  })

  it('knows which problems are over', () => {
    const first = entryOf('problemReported', { problem: 'machineOut', machine: 'corer' }, { number: 2 })
    const second = entryOf('problemReported', { problem: 'other', words: 'gate locked' }, { number: 3 })
    const solved = entryOf('problemSolved', { problem: first.id }, { number: 4 })
    const { problems } = factsOf(solved, second, first)
    expect(problems.map((problem) => [problem.entry, problem.solved?.entry ?? null])).toEqual([
      [first.id, solved.id],
      [second.id, null],
    ])
  })

  it('joins rain that began twice, and leaves out an end without a beginning', () => {
    const began = (number: number) => entryOf('rainBegan', { mmPerH: 2 }, { number })
    const ended = (number: number) => entryOf('rainEnded', {}, { number })
    expect(factsOf(ended(1), began(2), began(3), ended(4), began(5)).rain).toEqual([
      { began: '2026-08-10T06:02:00.000Z', ended: '2026-08-10T06:04:00.000Z', mmPerH: 2 },
      { began: '2026-08-10T06:05:00.000Z', ended: null, mmPerH: 2 },
    ])
  })

  it('[J5] takes an entry once', () => {
    const state = fold(initialState, [note(1, 'dew'), note(1, 'dew')])
    expect(state.entries).toHaveLength(1)
    expect(fold(state, [note(1, 'dew')])).toBe(state)
  })

  it('[J7] leaves the state and the entries that it is given as they were', () => {
    const before = fold(initialState, [setUp, note(5, 'late')])
    const copy = structuredClone(before)
    const entries = Object.freeze([note(3, 'early'), note(2, 'earlier')])
    fold(before, entries)
    fold(before, [note(9, 'after')])
    expect(before).toEqual(copy)
    expect(entries.map((entry) => entry.body['words'])).toEqual(['early', 'earlier'])
  })

  it('throws when courses are mixed', () => {
    const other = entryOf('noteWritten', { words: 'x' }, { number: 2, course: 'other' })
    expect(() => fold(initialState, [note(1, 'dew'), other])).toThrow('one course')
  })
})

describe('a strike', () => {
  const a = note(1, 'a')
  const b = note(2, 'b')

  it('[J8] takes an entry out of what counts, and keeps it', () => {
    const state = fold(initialState, [a, b, strike(3, a)])
    expect(state.facts.notes.map((written) => written.value.words)).toEqual(['b'])
    expect(state.entries).toHaveLength(3)
    expect(state.struck.get(a.id)).toEqual({ by: strike(3, a).id, reason: 'wrong' })
  })

  it('[J8] counts when its own clock puts it before what it strikes, and when it comes in first', () => {
    expect(wordsOf(strike(3, a, 0), a, b)).toEqual(['b'])
    expect(fold(fold(initialState, [strike(3, a)]), [b, a]).facts.notes).toHaveLength(1)
  })

  it('[J8] counts for an entry that comes in on top of it', () => {
    const later = note(9, 'later')
    const state = fold(fold(initialState, [a, strike(3, later)]), [later])
    expect(state.facts.notes.map((written) => written.value.words)).toEqual(['a'])
  })

  it('[J8] that is struck by a later one does not count', () => {
    const first = strike(3, a)
    expect(wordsOf(a, b, first, strike(4, first))).toEqual(['a', 'b'])
    const second = strike(4, first)
    expect(wordsOf(a, b, first, second, strike(5, second))).toEqual(['b'])
  })

  it('[J8] is not undone by an earlier one, so two cannot undo each other', () => {
    const late = strike(5, a)
    const early = entryOf('struck', { entry: late.id, reason: 'no' }, { number: 4 })
    expect(wordsOf(a, b, late, early)).toEqual(['b'])
  })

  it('undoes a change of the course', () => {
    const change = setGreen(2, { areaM2: 512 })
    expect(factsOf(setUp, change, strike(3, change)).course).toEqual(smallCourse)
  })

  it('[J8] of something that is not there changes nothing', () => {
    const stray = entryOf('struck', { entry: idOf(77), reason: 'stray' }, { number: 3 })
    expect(wordsOf(a, b, stray)).toEqual(['a', 'b'])
  })
})

describe('an entry of another version', () => {
  it('[J9] is kept when its kind is unknown or its version newer', () => {
    const unknown = { ...note(1, 'x'), kind: 'droneFlown', body: { heightM: 20 } }
    const newer = { ...note(2, 'y'), version: 2 }
    const state = fold(initialState, [unknown, newer])
    expect(state.entries.map((read) => read.type)).toEqual(['unknownKind', 'newerVersion'])
    expect(state.entries.map((read) => read.entry)).toEqual([unknown, newer])
    expect(state.facts.notes).toEqual([])
  })

  it('is kept and told apart when its body is damaged', () => {
    const damaged = { ...note(1, 'x'), body: { words: 7 } }
    expect(fold(initialState, [damaged]).entries).toMatchObject([
      { type: 'badBody', entry: damaged, field: 'words', expected: 'a text' },
    ])
  })
})
