import { expect, it } from 'vitest'
import type { Plan, PlanTask } from '@swardwright/engine'
import { staysLeft, staysOf } from './crew-view.ts'

const at = (time: string) => `2026-08-10T${time}:00+01:00`

const task = (
  id: string,
  green: string | null,
  operation: string,
  from: string,
  to: string,
  people = ['ann'],
) => ({ id, green, operation, people, start: at(from), finish: at(to) }) as unknown as PlanTask

const plan = {
  tasks: [
    task('4', 'b', 'core', '07:50', '08:20'),
    task('1', 'a', 'core', '06:30', '07:00'),
    task('2', 'a', 'scarify', '07:10', '07:40'),
    task('3', 'b', 'move', '07:40', '07:50'),
    task('5', 'a', 'dragIn', '10:00', '10:30'),
    task('6', 'c', 'core', '08:00', '09:00', ['ben']),
  ],
} as unknown as Plan

const stays = staysOf(plan, '2026-08-10', 'ann', 'Europe/London')
const ids = (left: typeof stays) =>
  left.map((stay) => `${stay.green}:${stay.tasks.map(({ id }) => id).join(',')}`)
const nothing = () => ({ done: false, begun: false, stopped: false })

it('gathers one person’s steps by green in the order of the day, without moves and without others', () => {
  expect(ids(stays)).toEqual(['a:1,2', 'b:4', 'a:5'])
  expect(staysOf(plan, '2026-08-11', 'ann', 'Europe/London')).toEqual([])
})

it('leaves out what the plan’s clock is past', () => {
  const left = staysLeft(stays, { atMs: Date.parse(at('07:05')), finished: new Set(), told: nothing })
  expect(ids(left)).toEqual(['a:2', 'b:4', 'a:5'])
})

it('leaves out a step told done and a green told finished, and keeps one that was begun and not ended', () => {
  const told = ({ id }: PlanTask) => ({ done: id === '4', begun: id === '1', stopped: false })
  const left = staysLeft(stays, { atMs: Date.parse(at('07:45')), finished: new Set(), told })
  expect(ids(left)).toEqual(['a:1', 'a:5'])
  expect(ids(staysLeft(stays, { atMs: 0, finished: new Set(['a']), told: nothing }))).toEqual(['b:4'])
})

it('keeps a step that was broken off, however late it is, until it is told done', () => {
  const told = ({ id }: PlanTask) => ({ done: false, begun: false, stopped: id === '2' })
  const left = staysLeft(stays, { atMs: Date.parse(at('12:00')), finished: new Set(), told })
  expect(ids(left)).toEqual(['a:2'])
})
