import { describe, expect, it } from 'vitest'
import { fold, initialState } from './fold.ts'
import { judgeEntry } from './judgeEntry.ts'
import { MORNING_MS, entryOf } from './testing/entries.ts'

const context = { course: 'demo', role: 'crew', nowMs: MORNING_MS } as const
const base = entryOf('problemReported', { problem: 'other', words: 'gate locked' }, { number: 3 })
const inVersion = (version: number, body: Record<string, unknown>) => ({ ...base, version, body })

describe('problemReported', () => {
  // As phones wrote them before version 2; these bodies never change.
  it.each([
    { problem: 'machineOut', machine: 'corer', words: 'belt gone' },
    { problem: 'personOut', person: 'ann' },
    { problem: 'green', green: 'g07', words: 'torn holes' },
    { problem: 'other', words: 'sand is short' },
  ])('[J10] [J14] in version 1 is still taken and read as it was: $problem', (body) => {
    const old = inVersion(1, body)
    expect(judgeEntry(old, context)).toEqual({ ok: true, value: old })
    expect(fold(initialState, [old]).facts.problems.map(({ value }) => value)).toEqual([body])
  })

  it.each([
    { problem: 'late', until: '2026-08-10T09:00:00+01:00', person: 'ann' },
    { problem: 'slower', machine: 'corer', factor: 1.5 },
    { problem: 'sandShort', sand: 'damp', massT: 4 },
  ])('[J14] in version 2 also tells $problem', (body) => {
    const told = inVersion(2, body)
    expect(judgeEntry(told, context)).toEqual({ ok: true, value: told })
    expect(fold(initialState, [told]).facts.problems.map(({ value }) => value)).toEqual([body])
  })

  it.each([0, 0.5, 200])('[J14] in version 3 also tells that so many sets of tines are left: %d', (sets) => {
    const body = { problem: 'tinesShort', store: 'tines-10-8', sets, words: 'a stone' }
    const told = inVersion(3, body)
    expect(judgeEntry(told, context)).toEqual({ ok: true, value: told })
    const state = fold(initialState, [told])
    expect(state.facts.problems.map(({ value, solved }) => [value, solved])).toEqual([[body, null]])
    const solved = entryOf('problemSolved', { problem: told.id }, { number: 4 })
    expect(fold(state, [solved]).facts.problems[0]?.solved?.entry).toBe(solved.id)
    const struck = entryOf('struck', { entry: told.id, reason: 'miscounted' }, { number: 4 })
    expect(fold(state, [struck]).facts.problems).toEqual([])
  })

  it.each([
    ['body.sets', { problem: 'tinesShort', store: 'tines-10-8' }],
    ['body.sets', { problem: 'tinesShort', store: 'tines-10-8', sets: -1 }],
    ['body.sets', { problem: 'tinesShort', store: 'tines-10-8', sets: 201 }],
    ['body.store', { problem: 'tinesShort', sets: 1 }],
    ['body.massT', { problem: 'tinesShort', store: 'tines-10-8', sets: 1, massT: 2 }],
  ])('[J20] in version 3 is refused by the name of the field %s: %j', (field, body) => {
    expect(judgeEntry(inVersion(3, body), context)).toMatchObject({
      ok: false,
      error: { id: base.id, why: 'bad-body', field },
    })
  })

  it.each([
    ['body.until', { problem: 'late' }],
    ['body.until', { problem: 'late', until: 'nine' }],
    ['body.factor', { problem: 'slower', machine: 'corer', factor: 0 }],
    ['body.factor', { problem: 'slower', machine: 'corer', factor: 12 }],
    ['body.machine', { problem: 'slower', factor: 2 }],
    ['body.massT', { problem: 'sandShort', sand: 'damp' }],
    ['body.massT', { problem: 'sandShort', sand: 'damp', massT: -1 }],
    ['body.massT', { problem: 'sandShort', sand: 'damp', massT: '4' }],
    ['body.sand', { problem: 'sandShort', sand: 'wet', massT: 4 }],
    ['body.problem', { problem: 'flood' }],
    ['body.massT', { problem: 'other', words: 'sand is short', massT: 4 }],
  ])('[J20] in version 2 is refused by the name of the field %s: %j', (field, body) => {
    const bad = inVersion(2, body)
    expect(judgeEntry(bad, context)).toMatchObject({
      ok: false,
      error: { id: base.id, why: 'bad-body', field },
    })
  })

  it('with a bad body in a damaged store is kept, tells nothing, and hides no other entry', () => {
    const bad = inVersion(2, { problem: 'sandShort', sand: 'damp', massT: -1 })
    const good = entryOf('problemReported', { problem: 'slower', machine: 'corer', factor: 2 }, { number: 4 })
    const state = fold(initialState, [bad, good])
    expect(state.entries.map((read) => [read.entry.id, read.type])).toEqual([
      [bad.id, 'badBody'],
      [good.id, 'known'],
    ])
    expect(state.facts.problems.map(({ entry }) => entry)).toEqual([good.id])
  })
})
