import { describe, expect, it } from 'vitest'
import type { PlanTask } from '../plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { standsANight } from './broken-plans.ts'
import { check, checkPlan, isCleanSchedule } from './check.ts'
import { compileProblem } from './compile.ts'
import { parseInstant } from './instant.ts'
import { smallProblem } from './small-course.ts'
import { SMALL_UNPLANNED, smallTasks, written } from './small-plan.ts'

const problem = smallProblem()

const rulesOf = (tasks: readonly PlanTask[], of: Problem = problem): readonly string[] =>
  checkPlan(of, { tasks: [...tasks], unplanned: SMALL_UNPLANNED }).map(({ rule }) => rule)

const task = (of: string, id: string, change: Partial<PlanTask>): PlanTask => {
  const found = smallTasks().find((one) => one.id === of)
  if (found === undefined) throw new Error(`no task ${of}`)
  return { ...found, id, ...change }
}

describe('what is just allowed', () => {
  it('lets rain and dark begin in the minute in which the last green is finished', () => {
    const days = problem.days.map((day, index) => (index === 0 ? { ...day, darkMin: 741 } : day))
    expect(rulesOf(smallTasks(), { ...problem, days, rain: [{ start: 741, end: 900 }] })).toEqual([])
  })

  it('lets rain end in the minute in which the first green is opened', () => {
    expect(rulesOf(smallTasks(), { ...problem, rain: [{ start: 0, end: 501 }] })).toEqual([])
  })

  it('lets a cleared green stand a dry night where the club does', () => {
    const settings = { ...problem.settings, mayStandDryNight: true }
    expect(rulesOf(standsANight, { ...problem, settings, rain: [] })).toEqual([])
  })

  it('lets a break be just as long as the window leaves, at its edge', () => {
    // Ann rolls b until 810: 810 to 840 are her 30 minutes.
    const until810 = smallTasks().map((one) => (one.id === 'roll-b' ? { ...one, finish: written(810) } : one))
    expect(rulesOf(until810)).toEqual([])
  })

  it('lets a break stand beside work that touches its window at both ends', () => {
    const people = problem.people.map((one) =>
      one.id === 'cat' ? { ...one, breaks: [{ window: { start: 704, end: 726 }, minutes: 22 }] } : one,
    )
    expect(rulesOf(smallTasks(), { ...problem, people })).toEqual([])
  })

  it('lets a machine be moved to where it stands, in no time', () => {
    const idle = task('corer-b', 'again', { start: written(540), finish: written(540) })
    expect(rulesOf([...smallTasks(), idle])).toEqual([])
  })

  it('lets a task of no length fall into another of its person', () => {
    const idle = task('corer-b', 'again', { start: written(560), finish: written(560) })
    expect(rulesOf([...smallTasks(), idle])).toEqual([])
  })

  it('lets a machine be driven home and tasks take longer than they must', () => {
    const home = task('dresser-b1', 'home', { green: null, start: written(626), finish: written(640) })
    expect(rulesOf([...smallTasks(), home])).toEqual([])
  })

  it('reads seconds', () => {
    const walk = (start: string): readonly PlanTask[] =>
      smallTasks().map((one) => (one.id === 'water-b' ? { ...one, start } : one))
    expect(rulesOf(walk('2026-08-11T08:03:00.000+01:00'))).toEqual([])
    expect(rulesOf(walk('2026-08-11T08:02:59+01:00'))).toEqual(['noTravel'])
  })
})

describe('people who ride along', () => {
  // Bob's way from b (616) to a by 689 is no matter; the mat brings him back. Cat is at a until 704 and at b by 726.
  it('are where the machine went', () => {
    // Cat rides on the mat (704 to 707) and cannot be back at a, 2 minutes away, at 708.
    const people = problem.people.map((one) =>
      one.id === 'cat' ? { ...one, skills: new Set([...one.skills, 'collect' as const]) } : one,
    )
    const rides = smallTasks().map((one) => (one.id === 'mat-b' ? { ...one, people: ['bob', 'cat'] } : one))
    const back = task('collector-a', 'collector-back', {
      people: ['cat'],
      start: written(708),
      finish: written(711),
    })
    // The collector stands at b, where Cat is too: no way to walk.
    expect(rulesOf([...rides, back], { ...problem, people })).toEqual([])
    // On foot Cat would have come from a: 704 + 2 is still before 708; at 705 it is not.
    const soon = { ...back, start: written(705), finish: written(708) }
    expect(rulesOf([...smallTasks(), soon], { ...problem, people })).toEqual(['noTravel'])
  })
})

describe('two dressers', () => {
  it('do not lend each other their loads', () => {
    const second = problem.machines.flatMap((one) =>
      one.id === 'dresser' ? [{ ...one, id: 'dresser-2', setUpMin: 0 }] : [],
    )
    const greens = problem.greens.map((green) => ({
      ...green,
      steps: green.steps.map((step) =>
        step.operation === 'dress'
          ? { ...step, minutesByMachine: new Map([...step.minutesByMachine, ['dresser-2', 10]]) }
          : step,
      ),
    }))
    const two = { ...problem, machines: [...problem.machines, ...second], greens }
    // The second dresser comes from the shed (6 minutes), empty, and spreads what the first has fetched.
    const tasks = smallTasks().map((one) => (one.id === 'dress-b1' ? { ...one, machine: 'dresser-2' } : one))
    const comes = task('dresser-b1', 'second', {
      machine: 'dresser-2',
      people: ['cat'],
      start: written(610),
      finish: written(616),
    })
    expect(rulesOf([...tasks, comes], two)).toEqual(['noRefill'])
  })
})

describe('loads', () => {
  it('are for the next green that the dresser dresses where they name none', () => {
    const bare = smallTasks().map((one) =>
      one.operation === 'load' ? { ...one, green: null, load: null } : one,
    )
    expect(rulesOf(bare)).toEqual([])
  })

  it('for a load number that no green has are extra', () => {
    const wrong = smallTasks().map((one) => (one.id === 'load-b1' ? { ...one, load: 7 } : one))
    expect(rulesOf(wrong)).toEqual(['extraOperation', 'noRefill'])
  })
})

describe('the clock change', () => {
  // London, 29 March 2026: the first day has 23 hours, and from 01:00 UTC the offset is +01:00. Minutes of the problem are elapsed minutes.
  const short = smallProblem([0, 1380, 2820, 4260], Date.UTC(2026, 2, 29), [
    '2026-03-29',
    '2026-03-30',
    '2026-03-31',
  ])
  const write = (minute: number): string => written(minute, 60, Date.UTC(2026, 2, 29))

  it('counts days as the course does and writes moments with the offset of the hour', () => {
    const tasks = [...smallTasks(1380 + 483, write)]
    expect(checkPlan(short, { tasks, unplanned: SMALL_UNPLANNED })).toEqual([])
    // 482 minutes after the second midnight (23:00 UTC): 07:02 UTC, on the clock 08:02.
    const early = [...smallTasks(1380 + 482, write)]
    expect(checkPlan(short, { tasks: early, unplanned: SMALL_UNPLANNED })).toEqual([
      { rule: 'noTravel', green: 'b', at: '2026-03-30T08:02:00+01:00', by: 1, tasks: ['water-b'] },
    ])
  })
})

describe('a schedule of minutes', () => {
  const compiled = compileProblem(problem)
  const indexIn = (list: readonly { readonly id: string }[], id: string | null): number | null =>
    id === null ? null : list.findIndex((one) => one.id === id)
  const minute = (text: string): number => (parseInstant(text) - problem.originMs) / 60_000
  const scheduled = smallTasks().map((one): ScheduledTask => ({
    kind: one.operation,
    green: indexIn(problem.greens, one.green),
    pass: one.pass,
    load: one.load,
    machine: indexIn(problem.machines, one.machine),
    people: one.people.flatMap((id) => indexIn(problem.people, id) ?? []),
    startMin: minute(one.start),
    finishMin: minute(one.finish),
  }))

  it('is judged as the plan that says the same', () => {
    expect(isCleanSchedule(compiled, { tasks: scheduled, unplanned: [] })).toBe(true)
    expect(isCleanSchedule(compiled, { tasks: scheduled.slice(1), unplanned: [] })).toBe(false)
  })

  it('must account for every green that is not excluded', () => {
    const onlyA = scheduled.filter(({ green }) => green !== 1)
    expect(isCleanSchedule(compiled, { tasks: onlyA, unplanned: [] })).toBe(false)
  })
})

describe('a plan with nothing in it', () => {
  it('leaves every green unaccounted for', () => {
    expect(check(compileProblem(problem), { tasks: [] }).map(({ rule, green }) => [rule, green])).toEqual([
      ['notAccountedFor', 'a'],
      ['notAccountedFor', 'b'],
      ['notAccountedFor', 'p'],
    ])
  })
})
