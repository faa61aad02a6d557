import { expect, it } from 'vitest'
import type { Course, Plan } from '@swardwright/engine'
import { initialState, type Facts } from '@swardwright/journal'
import { dayFacts, finishedGreens, type DayKnown } from './day-facts.ts'

const NO_FACTS = initialState.facts

/** Expected facts are written by hand from the entries, by the table of docs/replanning.md. London is an hour ahead of UTC in August. */
const at = (time: string) => `2026-08-10T${time}:00+01:00`
const utc = (time: string) => `2026-08-10T${time}:00.000Z`

const plan = {
  start: '2026-08-10',
  openings: [{ green: 'a', opened: at('06:30'), cleared: null, dressed: null, finished: at('10:30') }],
  tasks: [
    { id: 't1', green: 'a', operation: 'core', pass: 1, load: null, start: at('06:30'), finish: at('07:00') },
    { id: 't2', green: 'a', operation: 'dress', pass: 1, load: 2, start: at('08:30'), finish: at('16:00') },
  ],
} as unknown as Plan

const course = {
  timeZone: 'Europe/London',
  now: null,
  machines: [{ id: 'corer' }],
  people: [{ id: 'ann' }],
  tineSets: [{ id: 'tines-10-8' }],
} as unknown as Course

const known = (time: string, more: Partial<DayKnown> = {}): DayKnown => ({
  plan,
  course,
  settledAt: '2026-08-09T18:00:00.000Z',
  nowMs: Date.parse(at(time)),
  ...more,
})

const told = <T>(time: string, value: T) => ({ entry: `e${time}`, author: 'Ann', at: utc(time), value })
const journal = (more: Partial<Facts>): Facts => ({ ...NO_FACTS, ...more })

it('tells started, stopped and finished steps that the plan has, and no others', () => {
  const facts = journal({
    tasksStarted: [told('05:40', { green: 'a', operation: 'core', pass: 1 } as const)],
    tasksStopped: [told('05:50', { green: 'a', operation: 'core', pass: 1, why: 'machine' } as const)],
    tasksFinished: [
      told('07:45', { green: 'a', operation: 'dress', load: 2 } as const),
      told('07:50', { green: 'a', operation: 'roll' } as const),
      told('07:55', { green: 'z', operation: 'core' } as const),
    ],
  })
  expect(dayFacts(facts, known('09:00'))).toEqual([
    { kind: 'started', green: 'a', operation: 'core', pass: 1, at: at('06:40') },
    { kind: 'stopped', green: 'a', operation: 'core', pass: 1, at: at('06:50') },
    { kind: 'finished', green: 'a', operation: 'dress', load: 2, at: at('08:45') },
  ])
})

it('leaves out what lies after now and what was recorded before the days of the plan', () => {
  const facts = journal({
    greensFinished: [
      told('09:30', { green: 'a' }),
      { ...told('09:31', { green: 'a' }), at: '2026-08-07T09:00:00Z' },
    ],
  })
  expect(dayFacts(facts, known('10:00'))).toEqual([])
  expect(dayFacts(facts, known('10:30'))).toEqual([{ kind: 'finished', green: 'a', at: at('10:30') }])
})

it('tells of rain that has ended when it fell, and lets rain that falls now go on for an hour', () => {
  const facts = journal({
    rain: [
      { began: utc('06:00'), ended: utc('06:20'), mmPerH: null },
      { began: utc('08:00'), ended: null, mmPerH: 2.5 },
    ],
  })
  expect(dayFacts(facts, known('09:30'))).toEqual([
    { kind: 'rain', from: at('07:00'), until: at('07:20') },
    { kind: 'rain', from: at('09:00'), until: at('10:30'), mmPerH: 2.5 },
  ])
})

it('tells of outages until they are over or today ends, also of one told after the plan was settled and before its first day', () => {
  const solved = told('08:00', { problem: 'e06:00' })
  const facts = journal({
    problems: [
      { ...told('06:00', { problem: 'machineOut', machine: 'corer' } as const), solved },
      {
        ...told('06:00', { problem: 'personOut', person: 'ann' } as const),
        at: '2026-08-09T19:00:00Z',
        solved: null,
      },
      {
        ...told('06:00', { problem: 'personOut', person: 'ann' } as const),
        at: '2026-08-09T17:00:00Z',
        solved: null,
      },
      { ...told('06:10', { problem: 'machineOut', machine: 'sold' } as const), solved: null },
    ],
  })
  expect(dayFacts(facts, known('09:30'))).toEqual([
    { kind: 'machineOut', machine: 'corer', from: at('07:00'), until: at('09:00') },
    {
      kind: 'personOut',
      person: 'ann',
      from: '2026-08-09T20:00:00+01:00',
      until: '2026-08-11T00:00:00+01:00',
    },
  ])
})

it('tells of the late, of a slow machine and of the sand and tines that are left, until the problem is over', () => {
  const problems = [
    { ...told('05:30', { problem: 'late', person: 'ann', until: at('08:00') } as const), solved: null },
    { ...told('06:00', { problem: 'slower', machine: 'corer', factor: 1.5 } as const), solved: null },
    { ...told('07:00', { problem: 'sandShort', sand: 'damp', massT: 3 } as const), solved: null },
    { ...told('07:30', { problem: 'tinesShort', store: 'tines-10-8', sets: 0.5 } as const), solved: null },
    { ...told('07:30', { problem: 'tinesShort', store: 'sold', sets: 0.5 } as const), solved: null },
    { ...told('07:00', { problem: 'other', words: 'gate locked' } as const), solved: null },
  ]
  expect(dayFacts(journal({ problems }), known('09:30'))).toEqual([
    { kind: 'late', person: 'ann', at: at('08:00') },
    { kind: 'slower', machine: 'corer', factor: 1.5 },
    { kind: 'sandShort', sand: 'damp', massT: 3, at: at('08:00') },
    { kind: 'tinesShort', store: 'tines-10-8', sets: 0.5, at: at('08:30') },
  ])
  const over = problems.map((problem) => ({ ...problem, solved: told('08:00', { problem: problem.entry }) }))
  expect(dayFacts(journal({ problems: over }), known('09:30'))).toEqual([])
})

it('keeps a pin of a green that is not opened yet', () => {
  const pinned = { ...plan, pins: [{ green: 'a', date: '2026-08-10', opens: at('06:30') }] }
  expect(dayFacts(NO_FACTS, known('06:00', { plan: pinned }))).toEqual([
    { kind: 'pinned', green: 'a', at: at('06:30') },
  ])
  expect(dayFacts(NO_FACTS, known('07:00', { plan: pinned }))).toEqual([])
})

it('takes an entry as of the held moment where the clock of the course is held', () => {
  const held = known('10:00', {
    course: { ...course, now: at('10:00') },
    settledAt: '2026-11-25T09:00:00.000Z',
  })
  const late = { ...told('09:30', { green: 'a' }), at: '2026-11-25T09:10:00.000Z' }
  const old = { ...told('09:30', { green: 'a' }), at: '2026-11-24T09:10:00.000Z' }
  expect(finishedGreens(journal({ greensFinished: [old, late] }), held)).toEqual([
    { green: 'a', atMs: Date.parse(at('10:00')), entry: 'e09:30' },
  ])
})
