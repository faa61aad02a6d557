import { describe, expect, it } from 'vitest'
import { makePlan } from '../make-plan.ts'
import { demoInput } from '../testing/demo.ts'
import { checkPlanAt } from './check-again.ts'
import type { DayFact } from './facts.ts'
import { replan } from './make-replan.ts'
import { planProblemOf } from './plan-problem.ts'

const opened = <T>(read: { readonly ok: true; readonly value: T } | { readonly ok: false }): T => {
  if (read.ok) return read.value
  throw new Error('the demo cannot be planned')
}

/* The demo with six tenths of a set in the shed and the rest to come on the second morning: by then no more than half of its greens are cored. */
const demo = demoInput()
const tineSets = [
  {
    id: 'tines',
    holeDiameterMm: 10,
    coreDiameterMm: 8,
    sets: 0.6,
    deliveries: [{ date: '2026-08-11', time: '07:00', sets: 2 }],
  },
]
const course = { ...demo.course, tineSets }
const plan = opened(makePlan({ ...demo, course, schedules: 20 }))
const problem = opened(planProblemOf(plan, course, demo.weather))
const base = { course, weather: demo.weather, problem, now: '2026-08-10T10:30:00+01:00' }

const rulesOf = (tasks: typeof plan, facts: readonly DayFact[]): readonly string[] => {
  const checked = opened(checkPlanAt({ ...base, plan: tasks, facts }))
  return [...new Set(checked.violations.map(({ rule }) => rule))]
}

describe('a delivery of tines that comes later', () => {
  const late: DayFact = {
    kind: 'deliveryLate',
    store: 'tines',
    date: '2026-08-11',
    until: '2026-08-13T07:00:00+01:00',
  }

  it('breaks the old plan, and the plan made again waits for it', () => {
    expect(rulesOf(plan, [])).toEqual([])
    expect(rulesOf(plan, [late])).toContain('tinesGone')
    const made = opened(replan({ ...base, plan, facts: [late] }))
    expect(rulesOf(made.plan, [late])).toEqual([])
    expect(made.changes.some(({ kind }) => kind === 'greenPutOff')).toBe(true)
  })

  it('that does not come at all leaves greens, each with the tines that it lacks', () => {
    const never: DayFact = { ...late, until: null }
    const made = opened(replan({ ...base, plan, facts: [never] }))
    expect(rulesOf(made.plan, [never])).toEqual([])
    const left = made.plan.unplanned
    expect(left.length).toBeGreaterThan(0)
    expect(new Set(left.map(({ reason }) => reason))).toEqual(new Set(['tinesShort']))
  })
})
