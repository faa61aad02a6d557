import { describe, expect, it } from 'vitest'
import { isoWithOffset } from '../../time/zone.ts'
import { makePlan } from '../make-plan.ts'
import { demoInput } from '../testing/demo.ts'
import { bailOut } from './bail-out.ts'
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

describe('tines that are short', () => {
  /* The demo's own shed: 2 sets for all greens but three, a delivery of one more on Wednesday at 09:30. A covering wears area / mean area / 12 (docs/planning.md, rule 10). */
  const own = { ...demo, schedules: 20 }
  const settled = opened(makePlan(own))
  const ground = {
    course: demo.course,
    weather: demo.weather,
    problem: opened(planProblemOf(settled, demo.course, demo.weather)),
  }
  const now = '2026-08-10T10:30:00+01:00'
  const COMES = '2026-08-12T09:30:00+01:00'
  const broken: DayFact = { kind: 'tinesShort', store: 'tines-10-8', sets: 0.2, at: now }
  const small = new Set(['g05', 'g07', 'g17'])
  const meanM2 = demo.course.greens.reduce((sum, { areaM2 }) => sum + areaM2, 0) / demo.course.greens.length
  const wornSets = (tasks: typeof plan, from: string, until: string): number =>
    tasks.tasks
      .filter(
        ({ operation, green, start }) =>
          operation === 'core' && !small.has(green ?? '') && start >= from && start < until,
      )
      .reduce(
        (sum, { green }) =>
          sum + (demo.course.greens.find(({ id }) => id === green)?.areaM2 ?? 0) / meanM2 / 12,
        0,
      )
  const found = (tasks: typeof plan, facts: readonly DayFact[]): readonly string[] => {
    const checked = opened(checkPlanAt({ ...ground, now, plan: tasks, facts }))
    return checked.violations.map(({ rule }) => rule)
  }

  it('do the greens that they suffice for; the others are cored after the delivery', () => {
    expect(wornSets(settled, now, COMES)).toBeGreaterThan(0.2)
    expect(found(settled, [broken])).toContain('tinesGone')
    const made = opened(replan({ ...ground, now, plan: settled, facts: [broken] }))
    expect(found(made.plan, [broken])).toEqual([])
    const before = wornSets(made.plan, now, COMES)
    expect(before).toBeGreaterThan(0)
    expect(before).toBeLessThanOrEqual(0.2)
    expect(wornSets(made.plan, COMES, '2026-09')).toBeGreaterThan(0)
    expect(made.plan.unplanned.filter(({ reason }) => reason === 'tinesShort')).toEqual([])
    expect(made.changes.map(({ because }) => because.kind)).toContain('tinesShort')
  })

  it('leave greens, each with the tines that it lacks, where no more come', () => {
    const never: DayFact = { kind: 'deliveryLate', store: 'tines-10-8', date: '2026-08-12', until: null }
    const facts = [broken, never]
    const made = opened(replan({ ...ground, now, plan: settled, facts }))
    expect(found(made.plan, facts)).toEqual([])
    expect(wornSets(made.plan, now, '2026-09')).toBeLessThanOrEqual(0.2)
    expect(made.plan.unplanned.filter(({ reason }) => reason === 'tinesShort').length).toBeGreaterThan(0)
    expect(made.plan.unplanned.some(({ green }) => small.has(green))).toBe(false)
  })

  it('end the second coring of a green in work, also in the bail-out', () => {
    const twice = {
      ...demo.prescription,
      groups: demo.prescription.groups.map((group) => ({
        ...group,
        chain: group.chain.map((step) => (step.operation === 'core' ? { ...step, passes: 2 } : step)),
      })),
    }
    const plenty = {
      ...demo.course,
      tineSets: demo.course.tineSets?.map((one) => ({ ...one, sets: 6 })) ?? [],
    }
    const coredTwice = opened(makePlan({ ...own, course: plenty, prescription: twice }))
    const second = coredTwice.tasks.find(
      ({ operation, pass, green }) => operation === 'core' && pass === 2 && !small.has(green ?? ''),
    )
    // A minute before the first second coring begins, so its green has been cored once.
    const at = isoWithOffset(Date.parse(second?.start ?? '') - 60_000, demo.course.timeZone)
    const input = {
      course: plenty,
      weather: demo.weather,
      problem: opened(planProblemOf(coredTwice, plenty, demo.weather)),
      plan: coredTwice,
      now: at,
      rainInMin: 180,
    }
    const cored = (facts: readonly DayFact[]): readonly string[] =>
      opened(bailOut({ ...input, facts })).people.flatMap(({ tasks }) =>
        tasks.filter(({ operation }) => operation === 'core').map(({ green }) => green),
      )
    expect(cored([])).toContain(second?.green)
    expect(cored([{ ...broken, sets: 0, at }])).toEqual([])
  })

  it('are told of a kind that the club counts, and when they were counted', () => {
    const errorOf = (fact: DayFact) => {
      const made = replan({ ...ground, now, plan: settled, facts: [fact] })
      return made.ok ? null : made.error
    }
    expect(errorOf({ ...broken, store: 'bay' })).toMatchObject({
      field: 'store',
      problem: 'unknown',
      accepted: ['tines-10-8', 'tines-8-6'],
    })
    expect(errorOf({ ...broken, at: '2026-08-10T10:31:00+01:00' })).toMatchObject({
      field: 'at',
      problem: 'afterNow',
    })
  })
})
