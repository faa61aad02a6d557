import { expect, it } from 'vitest'
import type { Plan, PlanTask } from '@swardwright/engine'
import { NO_STOP, stepsOn, stopEntries, stopFault, withoutBlankEnd, type PaperStop } from './paper-stops.ts'

const at = (time: string, date = '2026-08-10') => `${date}T${time}:00+01:00`

const task = (
  green: string | null,
  operation: string,
  start: string,
  covering: { readonly pass?: number; readonly load?: number } = {},
) => ({ pass: null, load: null, ...covering, green, operation, start }) as unknown as PlanTask

const plan = {
  tasks: [
    task('b', 'core', at('08:00'), { pass: 1 }),
    task('a', 'scarify', at('07:10'), { pass: 2 }),
    task('a', 'core', at('06:30'), { pass: 1 }),
    task('b', 'move', at('07:50')),
    task(null, 'setUp', at('06:00')),
    // What is left of a step that was broken off is a task of its own in a plan made again.
    task('a', 'scarify', at('11:00'), { pass: 2 }),
    task('a', 'dress', at('09:00'), { load: 2 }),
    task('b', 'dragIn', at('08:00', '2026-08-11'), { pass: 1 }),
  ],
} as unknown as Plan

const steps = stepsOn(plan, '2026-08-10', 'Europe/London')

/** London is an hour ahead of UTC in August: seven in the evening there. */
const known = {
  date: '2026-08-10',
  timeZone: 'Europe/London',
  nowMs: Date.parse('2026-08-10T18:00:00Z'),
  steps,
  finishedMs: (green: string) => (green === 'a' ? Date.parse(at('11:40')) : null),
}

const stopOf = (green: string, operation: string, rest: Partial<PaperStop> = {}): PaperStop => {
  const step = steps.find(({ covering }) => covering.green === green && covering.operation === operation)
  return { step: step?.key ?? '', time: '10:20', why: 'rain', words: '', ...rest }
}

it('offers the steps of the day green by green, each once, without moves, setting up and other days', () => {
  expect(steps.map(({ covering }) => covering)).toEqual([
    { green: 'a', operation: 'core', pass: 1 },
    { green: 'a', operation: 'scarify', pass: 2 },
    { green: 'a', operation: 'dress', load: 2 },
    { green: 'b', operation: 'core', pass: 1 },
  ])
  expect(new Set(steps.map(({ key }) => key)).size).toBe(4)
})

it('takes the time on the paper as when the step was broken off, with the reason and the words', () => {
  const stops = [
    stopOf('a', 'scarify', { words: ' belt slips ', why: 'machine' }),
    NO_STOP,
    stopOf('b', 'core', { time: '9:05' }),
  ]
  expect(stopEntries(stops, known)).toEqual([
    {
      body: { green: 'a', operation: 'scarify', pass: 2, why: 'machine', words: 'belt slips' },
      atMs: Date.parse('2026-08-10T09:20:00Z'),
    },
    {
      body: { green: 'b', operation: 'core', pass: 1, why: 'rain' },
      atMs: Date.parse('2026-08-10T08:05:00Z'),
    },
  ])
})

it('says what is wrong with a line, or still to come on it, and writes down none of these', () => {
  const wrong = [
    stopOf('b', 'core', { time: '24:00' }),
    stopOf('b', 'core', { time: '19:01' }),
    stopOf('b', 'core', { step: '' }),
    stopOf('b', 'core', { step: 'c core 1 ' }),
    stopOf('b', 'core', { time: ' ' }),
    stopOf('a', 'core', { time: '11:41' }),
    stopOf('b', 'core', { why: '' }),
    { ...NO_STOP, words: 'belt' },
  ]
  expect(wrong.map((stop) => stopFault(stop, known))).toEqual([
    'noClock',
    'afterNow',
    'noStep',
    'noStep',
    'noTime',
    'afterFinished',
    'noWhy',
    'noStep',
  ])
  expect(stopEntries(wrong, known)).toEqual([])
})

it('has nothing against an empty line, the minute of now and the minute in which the green was finished', () => {
  const right = [
    NO_STOP,
    stopOf('b', 'core', { time: '19:00' }),
    stopOf('a', 'core', { time: '11:40' }),
    stopOf('b', 'core', { time: '12:00' }),
  ]
  expect(right.map((stop) => stopFault(stop, known))).toEqual([null, null, null, null])
})

it('drops empty lines at the end only, so that no line moves while it is typed in', () => {
  const filled = stopOf('a', 'core')
  expect(withoutBlankEnd([NO_STOP, filled, NO_STOP, NO_STOP])).toEqual([NO_STOP, filled])
  expect(withoutBlankEnd([NO_STOP])).toEqual([])
})
