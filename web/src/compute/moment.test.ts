import { expect, it } from 'vitest'
import type { Plan } from '@swardwright/engine'
import { momentOf, workDays } from './moment.ts'

const ZONE = 'Europe/London'

const task = (start: string, finish: string) => ({ start: `${start}:00+01:00`, finish: `${finish}:00+01:00` })

const plan = {
  tasks: [
    task('2026-08-11T06:30', '2026-08-11T14:00'),
    task('2026-08-10T06:00', '2026-08-10T07:00'),
    task('2026-08-10T08:00', '2026-08-10T15:00'),
  ],
} as unknown as Plan

const at = (time: string) => momentOf(plan, Date.parse(`${time}:00+01:00`), ZONE)

it('gathers the tasks of a day from first start to last finish, days in order', () => {
  expect(workDays(plan, ZONE).map((day) => [day.date, new Date(day.finishMs).toISOString()])).toEqual([
    ['2026-08-10', '2026-08-10T14:00:00.000Z'],
    ['2026-08-11', '2026-08-11T13:00:00.000Z'],
  ])
})

it('is the evening before from the afternoon on, and still at a quarter to six', () => {
  expect(at('2026-08-09T19:00')).toEqual({ kind: 'eve', date: '2026-08-10' })
  expect(at('2026-08-10T05:45')).toEqual({ kind: 'eve', date: '2026-08-10' })
})

it('is the working day from the first task to the last', () => {
  expect(at('2026-08-10T10:42')).toEqual({ kind: 'day', date: '2026-08-10' })
  expect(at('2026-08-10T15:00')).toEqual({ kind: 'day', date: '2026-08-10' })
})

it('looks to the next working day once the last task is done', () => {
  expect(at('2026-08-10T15:01')).toEqual({ kind: 'eve', date: '2026-08-11' })
})

it('is plan-ahead days before, and afterwards once all is done', () => {
  expect(at('2026-08-07T10:00')).toEqual({ kind: 'ahead' })
  expect(at('2026-08-11T14:01')).toEqual({ kind: 'after' })
  expect(momentOf(null, 0, ZONE)).toEqual({ kind: 'ahead' })
})
