import { describe, expect, it } from 'vitest'
import { makePlan } from '../make-plan.ts'
import { demoInput } from '../testing/demo.ts'
import { weatherSky } from '../weather-sky.ts'
import { checkPlanAt } from './check-again.ts'
import type { DayFact } from './facts.ts'
import type { Field } from './field.ts'
import { coursesOf, isInTime } from './judge-field.ts'
import { replan } from './make-replan.ts'
import { planProblemOf } from './plan-problem.ts'
import { brokenOf } from './replan.ts'
import { inWork, type Broken } from './repair.ts'
import { savedTogether } from './save-together.ts'
import { situationOf } from './situation.ts'

const opened = <T>(read: { readonly ok: true; readonly value: T } | { readonly ok: false }): T => {
  if (read.ok) return read.value
  throw new Error('the demo cannot be planned')
}
const demo = demoInput()
const plan = opened(makePlan({ ...demo, schedules: 20 }))
const problem = opened(planProblemOf(plan, demo.course, demo.weather))
const base = { course: demo.course, weather: demo.weather, problem, plan }

const brokenAt = (clock: string, facts: readonly DayFact[] = []): Broken =>
  brokenOf(
    opened(
      situationOf({ ...base, tasks: plan.tasks, facts, now: `2026-08-10T${clock}:00+01:00` }, weatherSky),
    ),
  )

const inTime = ({ problem: own, marks }: Broken, field: Field): ReadonlySet<number> =>
  new Set(
    coursesOf(own, field.tasks, marks)
      .filter((course) => isInTime(own, course))
      .map(({ green }) => green),
  )

describe('greens in work, saved together', () => {
  // The plan that is followed finishes them all in time, so there is a way.
  it.each(['08:40', '10:30', '12:50'])('are all found a way where there is one (%s)', (clock) => {
    const broken = brokenAt(clock)
    const greens = new Set(inWork(broken))
    expect(greens.size).toBeGreaterThan(1)
    const field = savedTogether(broken, greens)
    expect(field).not.toBeNull()
    if (field === null) return
    expect([...inTime(broken, field)]).toEqual(expect.arrayContaining([...greens]))
    const before = new Set(broken.stood.tasks)
    expect(field.tasks).toEqual(expect.arrayContaining([...before]))
    const added = field.tasks.filter((task) => !before.has(task))
    expect(added.every(({ startMin }) => startMin >= broken.stood.nowMin)).toBe(true)
    expect(added.every(({ green }) => green === null || greens.has(green))).toBe(true)
  })

  it('are given up where it rains in five minutes', () => {
    const rain: DayFact = {
      kind: 'rain',
      from: '2026-08-10T10:35:00+01:00',
      until: '2026-08-10T20:00:00+01:00',
      mmPerH: 2,
    }
    const broken = brokenAt('10:30', [rain])
    expect(savedTogether(broken, new Set(inWork(broken)))).toBeNull()
  })
})

describe('a green that waits for sand over night', () => {
  const now = '2026-08-11T08:30:00+01:00'
  const facts: readonly DayFact[] = [{ kind: 'sandShort', sand: 'damp', massT: 0, at: now }]
  // The demo's lorry comes on Wednesday at 09:30.
  const LORRY = '2026-08-12T09:30:00+01:00'

  it('is finished when the sand has come, before greens that nobody has opened', () => {
    const made = opened(replan({ ...base, facts, now }))
    const waiting = made.caught.filter(({ reason }) => reason === 'sandTooLate').map(({ green }) => green)
    expect(waiting.length).toBeGreaterThan(0)
    const rows = made.plan.openings.filter(({ green }) => waiting.includes(green))
    for (const { finished } of rows) {
      expect(Date.parse(finished ?? '')).toBeGreaterThan(Date.parse(LORRY))
      expect((finished ?? '').slice(0, 10)).toBe(LORRY.slice(0, 10))
    }
    expect(opened(checkPlanAt({ ...base, plan: made.plan, facts, now })).violations).toEqual([])
  })
})
