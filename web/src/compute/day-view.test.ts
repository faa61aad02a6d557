import { expect, it } from 'vitest'
import type { Plan } from '@swardwright/engine'
import { firstToFinish, greensOnDay, nextGreen, unfinishedGreens } from './day-view.ts'

const at = (time: string) => `2026-08-10T${time}:00+01:00`

const plan = {
  openings: [
    { green: 'b', opened: at('08:00'), cleared: at('09:30'), dressed: at('10:30'), finished: at('12:00') },
    { green: 'a', opened: at('06:30'), cleared: at('08:00'), dressed: at('09:00'), finished: at('10:30') },
    { green: 'c', opened: at('10:50'), cleared: at('12:00'), dressed: at('13:00'), finished: at('14:00') },
    { green: 'd', opened: '2026-08-11T06:30:00+01:00', cleared: null, dressed: null, finished: null },
  ],
  tasks: [
    { id: 't1', green: 'a', operation: 'core', start: at('06:30'), finish: at('07:00') },
    { id: 'm1', green: 'a', operation: 'move', start: at('10:15'), finish: at('10:35') },
    { id: 't2', green: 'a', operation: 'dragIn', start: at('10:20'), finish: at('10:45') },
    { id: 't3', green: 'b', operation: 'dragIn', start: at('11:20'), finish: at('12:00') },
  ],
} as unknown as Plan

const view = (time: string, finished: readonly string[] = []) =>
  greensOnDay(plan, '2026-08-10', Date.parse(at(time)), {
    timeZone: 'Europe/London',
    recorded: { finished: new Set(finished) },
  })

it('lists the greens of the day in the order of opening and no other day’s', () => {
  expect(view('05:45').map((one) => one.green)).toEqual(['a', 'b', 'c'])
})

it('goes by the plan’s clock for opened, cleared and dressed', () => {
  expect(view('08:30').map((one) => one.state)).toEqual(['cleared', 'opened', 'ready'])
  expect(view('10:42').map((one) => one.state)).toEqual(['dressed', 'dressed', 'ready'])
})

it('counts a green finished only once somebody says so', () => {
  expect(unfinishedGreens(view('11:00')).map((one) => one.green)).toEqual(['a', 'b', 'c'])
  expect(unfinishedGreens(view('11:00', ['a'])).map((one) => one.green)).toEqual(['b', 'c'])
})

it('names the first green that is not open yet as the next', () => {
  expect(nextGreen(view('10:42'))?.green).toBe('c')
  expect(nextGreen(view('13:00'))).toBeNull()
})

it('offers for finishing the green that the plan finishes first', () => {
  expect(firstToFinish(unfinishedGreens(view('11:30')))?.green).toBe('a')
  expect(firstToFinish(unfinishedGreens(view('11:30', ['a'])))?.green).toBe('b')
  expect(firstToFinish([])).toBeNull()
})

it('keeps of a green’s tasks those that are not over', () => {
  expect(view('10:30')[0]?.todo.map((task) => task.id)).toEqual(['t2'])
  expect(view('10:30', ['a'])[0]?.todo).toEqual([])
})
