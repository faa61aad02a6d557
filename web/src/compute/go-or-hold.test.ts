import { expect, it } from 'vitest'
import type { Plan, Violation } from '@swardwright/engine'
import { goOrHold } from './go-or-hold.ts'

const at = (time: string) => `2026-08-11T${time}:00+01:00`

const plan = {
  tasks: [
    { operation: 'core', start: at('06:30'), finish: at('07:00') },
    { operation: 'dragIn', start: at('11:20'), finish: at('11:40') },
    { operation: 'roll', start: at('14:00'), finish: at('14:20') },
  ],
  openings: [{ green: 'a', opened: at('06:30') }],
  days: [{ date: '2026-08-11', lastSafeStart: at('09:10'), finish: at('14:20') }],
} as unknown as Plan

const rain = [{ start: at('16:00'), finish: at('18:00'), mmPerH: 1 }]
const known = { timeZone: 'Europe/London', rain, violations: [] as readonly Violation[] }

it('goes when greens are opened and no rule is broken, and tells the minutes to spare before the rain: 14:20 to 16:00', () => {
  expect(goOrHold(plan, '2026-08-11', known)).toMatchObject({
    go: true,
    greens: 1,
    finish: at('14:20'),
    rainFrom: at('16:00'),
    spareMin: 100,
    firstDrag: at('11:20'),
    lastSafeStart: at('09:10'),
  })
})

it('pays no heed to rain that is over before work begins', () => {
  const early = [{ start: at('02:00'), finish: at('04:00'), mmPerH: 1 }]
  expect(goOrHold(plan, '2026-08-11', { ...known, rain: early }).rainFrom).toBeNull()
})

it('holds when a hard rule is broken that day, and not for another day’s', () => {
  const broken: Violation = { rule: 'openInRain', green: 'a', at: at('13:00'), by: 60, tasks: [] }
  expect(goOrHold(plan, '2026-08-11', { ...known, violations: [broken] }).go).toBe(false)
  const other = { ...broken, at: '2026-08-12T13:00:00+01:00' }
  expect(goOrHold(plan, '2026-08-11', { ...known, violations: [other] }).go).toBe(true)
})

it('goes where a rule is broken as the manager pinned it, and tells it', () => {
  const pinned: Violation = {
    rule: 'openInRain',
    green: 'a',
    at: at('13:00'),
    by: 60,
    tasks: [],
    asPinned: true,
  }
  expect(goOrHold(plan, '2026-08-11', { ...known, violations: [pinned] })).toMatchObject({
    go: true,
    broken: [],
    asPinned: [pinned],
  })
})

it('holds on a day on which nothing is opened', () => {
  expect(goOrHold(plan, '2026-08-12', known).go).toBe(false)
})
