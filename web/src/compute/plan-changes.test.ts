import { expect, it } from 'vitest'
import type { Plan } from '@swardwright/engine'
import { movedToAnotherDay, planChanges } from './plan-changes.ts'

const plan = (openings: Readonly<Record<string, string>>, unplanned: Plan['unplanned'] = []): Plan =>
  ({
    openings: Object.entries(openings).map(([green, opened]) => ({
      green,
      opened,
      cleared: null,
      dressed: null,
      finished: null,
    })),
    unplanned,
  }) as unknown as Plan

const before = plan({
  a: '2026-08-10T06:30:00+01:00',
  b: '2026-08-11T09:00:00+01:00',
  c: '2026-08-11T10:00:00+01:00',
  d: '2026-08-11T11:00:00+01:00',
})

const after = plan(
  {
    a: '2026-08-10T06:30:00+01:00',
    b: '2026-08-11T08:00:00+01:00',
    c: '2026-08-12T06:30:00+01:00',
  },
  [{ green: 'd', reason: 'noTimeLeft', facts: {} }],
)

it('names the greens that open earlier, later or not at all, and none that stay', () => {
  const changes = planChanges(before, after)
  expect(changes.map(({ green, change }) => [green, change])).toEqual([
    ['b', 'earlier'],
    ['d', 'leftOut'],
    ['c', 'later'],
  ])
})

it('takes a green in again when the rain goes away', () => {
  expect(planChanges(after, before).find(({ green }) => green === 'd')?.change).toBe('tookIn')
})

it('tells apart what moves to another day from what only moves by hours', () => {
  expect(movedToAnotherDay(planChanges(before, after)).map(({ green }) => green)).toEqual(['d', 'c'])
})
