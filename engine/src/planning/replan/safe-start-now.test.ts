import { describe, expect, it } from 'vitest'
import { judgeSchedule } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import { openLater } from '../later.ts'
import { makePlan } from '../make-plan.ts'
import { demoInput } from '../testing/demo.ts'
import { weatherSky } from '../weather-sky.ts'
import type { DayFact } from './facts.ts'
import { replan } from './make-replan.ts'
import { planProblemOf } from './plan-problem.ts'
import { lastSafeStartNow } from './safe-start-now.ts'
import { situationIn } from './situation.ts'

const opened = <T>(
  read: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown },
): T => {
  if (read.ok) return read.value
  throw new Error(JSON.stringify(read.error))
}

const demo = demoInput()
const plan = opened(makePlan({ ...demo, schedules: 20 }))
const problem = opened(planProblemOf(plan, demo.course, demo.weather))
const at = (clock: string): string => `2026-08-10T${clock}:00+01:00`
const minuteOf = (instant: string): number => (Date.parse(instant) - problem.originMs) / 60_000

/** The plan as the facts have it, and the green that is opened next on the day. */
const dayAt = (now: string, facts: readonly DayFact[]) => {
  const base = { course: demo.course, weather: demo.weather, problem, plan, facts, now }
  const made = opened(replan(base)).plan
  const next = made.openings
    .filter((one) => one.opened >= now && one.opened < '2026-08-11')
    .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))[0]
  if (next === undefined) throw new Error('nothing is opened any more on this day')
  return { input: { ...base, plan: made }, next }
}

/**
 * What the definition asks, by the checker alone: the green opened at a minute, its own later steps moved as they must and all others unchanged or
 * later. Answers with when it is finished, minutes; null where a rule is broken.
 */
const openedAt = (input: ReturnType<typeof dayAt>['input'], id: string) => {
  const { problem: left, oldTasks } = opened(situationIn({ ...input, tasks: input.plan.tasks }, weatherSky))
  const green = left.greens.findIndex((one) => one.id === id)
  const openAt = openLater(left, oldTasks, green)
  const compiled = compileProblem(left)
  return (minute: number): number | null => {
    const tasks = openAt(minute)
    if (tasks === null) return null
    const unplanned = left.greens.flatMap((_, index) =>
      tasks.some((task) => task.green === index)
        ? []
        : [{ green: index, reason: 'noTimeLeft' as const, facts: {} }],
    )
    if (judgeSchedule(compiled, { tasks, unplanned }).faults.length > 0) return null
    return Math.max(...tasks.filter((task) => task.green === green).map((task) => task.finishMin))
  }
}

describe('the last safe start at a minute of the day', () => {
  const RAIN_MIN = minuteOf(at('16:00'))
  const days: readonly (readonly [string, readonly DayFact[]])[] = [
    ['nothing has happened', []],
    [
      'the corer stands still for half an hour',
      [{ kind: 'machineOut', machine: 'corer', from: at('07:30'), until: at('08:00') }],
    ],
    ['rain is told from four', [{ kind: 'rain', from: at('16:00'), until: at('19:00'), mmPerH: 2 }]],
  ]

  it.each(days)('is clean to the minute and no longer one minute later, where %s', (_what, facts) => {
    const { input, next } = dayAt(at('07:00'), facts)
    const safe = opened(lastSafeStartNow(input, next.green))
    if (safe === null) throw new Error('a green that is still to be opened has a last safe start')
    expect(Date.parse(safe)).toBeGreaterThanOrEqual(Date.parse(next.opened))
    const finishAt = openedAt(input, next.green)
    expect(finishAt(minuteOf(safe))).not.toBeNull()
    expect(finishAt(minuteOf(safe) + 1)).toBeNull()
  })

  it('leaves the green finished before the rain that is told', () => {
    const { input, next } = dayAt(at('07:00'), days[2]?.[1] ?? [])
    const safe = opened(lastSafeStartNow(input, next.green)) ?? ''
    expect(openedAt(input, next.green)(minuteOf(safe))).toBeLessThanOrEqual(RAIN_MIN)
  })

  it('is none for a green that lies open, and none for one that the plan does not open', () => {
    const first = plan.openings.toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))[0]
    const { input } = dayAt(at('07:00'), [])
    expect(opened(lastSafeStartNow(input, first?.green ?? ''))).toBeNull()
    expect(opened(lastSafeStartNow(input, 'nowhere'))).toBeNull()
  })

  it('gives back what is wrong with the moment or a fact', () => {
    const { input, next } = dayAt(at('07:00'), [])
    expect(lastSafeStartNow({ ...input, now: 'noon' }, next.green)).toEqual({
      ok: false,
      error: { type: 'badNow', received: 'noon' },
    })
    const fact: DayFact = { kind: 'machineOut', machine: 'roller-9', from: at('07:00'), until: null }
    expect(lastSafeStartNow({ ...input, facts: [fact] }, next.green)).toMatchObject({
      ok: false,
      error: { type: 'badFact', field: 'machine', received: 'roller-9' },
    })
  })
})
