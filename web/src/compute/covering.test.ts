import { expect, it } from 'vitest'
import type { PlanTask } from '@swardwright/engine'
import { coveringOf } from './covering.ts'

const task = (more: Partial<PlanTask>): PlanTask => ({
  id: 't',
  green: 'a',
  operation: 'scarify',
  pass: null,
  load: null,
  machine: null,
  people: [],
  start: '2026-08-10T06:30:00+01:00',
  finish: '2026-08-10T07:00:00+01:00',
  ...more,
})

it('names green, operation and pass or load of a step, and leaves out what it has not', () => {
  expect(coveringOf(task({ pass: 2 }))).toEqual({ green: 'a', operation: 'scarify', pass: 2 })
  expect(coveringOf(task({ operation: 'dress', load: 3 }))).toEqual({
    green: 'a',
    operation: 'dress',
    load: 3,
  })
})

it('is none for what nobody ticks', () => {
  expect(coveringOf(task({ operation: 'move' }))).toBeNull()
  expect(coveringOf(task({ operation: 'load' }))).toBeNull()
  expect(coveringOf(task({ green: null }))).toBeNull()
})
