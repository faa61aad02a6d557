import { describe, expect, it } from 'vitest'
import type { Plan, PlanTask } from '../plan.ts'
import type { Problem } from '../problem.ts'
import { check, isCleanSchedule } from './check.ts'
import { compileProblem } from './compile.ts'
import { smallProblem } from './small-course.ts'
import { SMALL_UNPLANNED, smallTasks, written } from './small-plan.ts'

/*
 * The plan of `small-plan.ts` under skies and caps that it breaks. Green a, opened at 501, can't be finished before 704 by anybody, reckoned by hand: core to 531, collect 20 to 551, dress
 * 10 to 561, to the bay 5, load 8, back 5 and dress 10 to 589, dry 100 to 689, drag in 15 to 704.
 */
const pinned = (...pins: readonly (readonly [string, number | null])[]): Plan['pins'] =>
  pins.map(([green, minute]) => ({
    green,
    date: '2026-08-10',
    opens: minute === null ? null : written(minute),
  }))

const rainAt = (start: number, end: number): Problem => ({ ...smallProblem(), rain: [{ start, end }] })

const settings = (change: Partial<Problem['settings']>): Problem => {
  const base = smallProblem()
  return { ...base, settings: { ...base.settings, ...change } }
}

const found = (problem: Problem, pins: Plan['pins'], tasks: readonly PlanTask[] = smallTasks()) =>
  check(compileProblem(problem), { tasks: [...tasks], unplanned: SMALL_UNPLANNED, pins }).map(
    ({ rule, green, asPinned }) => `${rule} ${green ?? ''} ${asPinned === true ? 'as pinned' : 'fault'}`,
  )

describe('a rule broken under a pin', () => {
  it('is the price of the pin where nobody could keep it; the same rule on a green that is not pinned is a fault', () => {
    expect(found(rainAt(650, 660), pinned(['a', 501]))).toEqual([
      'openInRain a as pinned',
      'openInRain b fault',
    ])
  })

  it('is a fault without the pin, and under a pin that is not kept', () => {
    expect(found(rainAt(650, 660), undefined)).toEqual(['openInRain a fault', 'openInRain b fault'])
    expect(found(rainAt(650, 660), pinned(['a', 502]))).toContain('openInRain a fault')
  })

  it('is a fault where the plan could have kept it under the same pin, to the minute', () => {
    const later = smallTasks().map((task) =>
      task.id === 'drag-a' ? { ...task, start: written(690), finish: written(705) } : task,
    )
    expect(found(rainAt(703, 713), pinned(['a', 501]))).toContain('openInRain a as pinned')
    expect(found(rainAt(704, 714), pinned(['a', 501]))).not.toContain('openInRain a as pinned')
    expect(found(rainAt(704, 714), pinned(['a', 501]), later)).toContain('openInRain a fault')
  })

  it('is the price of a day alone only where no dry stretch of that day is long enough', () => {
    // Ann can be at a by 501 at the soonest, so a is finished by 704 where the rain comes at 704; rain at 650 and again from 700 leaves no stretch.
    const twice = {
      ...smallProblem(),
      rain: [
        { start: 600, end: 610 },
        { start: 760, end: 960 },
      ],
    }
    expect(found(twice, pinned(['a', null]))).toContain('openInRain a as pinned')
    const once = {
      ...smallProblem(),
      rain: [
        { start: 600, end: 610 },
        { start: 890, end: 960 },
      ],
    }
    // From 610 on: core 640, collect 660, dress 698, dry 798, drag in 813.
    expect(found(once, pinned(['a', null]))).toContain('openInRain a fault')
  })

  it('counts pinned greens alone against the cap', () => {
    const one = settings({ openGreensCap: 1 })
    expect(found(one, pinned(['a', 501], ['b', 551]))).toEqual(['tooManyOpen b as pinned'])
    expect(found(one, pinned(['b', 551]))).toEqual(['tooManyOpen b fault'])
  })

  it('lets the check of the first green go where both are pinned, not where the other could have come after', () => {
    const slow = settings({ firstGreenCheckMin: 30 })
    expect(found(slow, pinned(['a', 501], ['b', 551]))).toEqual(['firstGreenUnchecked b as pinned'])
    expect(found(slow, pinned(['b', 551]))).toEqual(['firstGreenUnchecked b fault'])
  })

  it('never excuses what cannot be: a machine on two tasks at once', () => {
    const twice = smallTasks().map((task) =>
      task.id === 'core-b' ? { ...task, start: written(520), finish: written(560) } : task,
    )
    const rules = found(smallProblem(), pinned(['a', 501], ['b', 520]), twice)
    expect(rules).toContain('machineTwice b fault')
    expect(rules).toContain('personTwice b fault')
  })

  it('must be named in `pinRisks` where the plan states them', () => {
    const compiled = compileProblem(rainAt(650, 660))
    const plan = { tasks: [...smallTasks()], unplanned: SMALL_UNPLANNED, pins: pinned(['a', 501]) }
    const rules = (pinRisks: NonNullable<Plan['pinRisks']>) =>
      check(compiled, { ...plan, pinRisks }).map(({ rule }) => rule)
    const told = {
      rule: 'openInRain' as const,
      green: 'a',
      at: written(650),
      by: 10,
      tasks: ['core-a', 'drag-a'],
    }
    expect(rules([told])).not.toContain('figureWrong')
    expect(rules([])).toContain('figureWrong')
    expect(rules([told, { ...told, green: 'b' }])).toContain('figureWrong')
  })

  it('leaves a schedule clean for callers that compare many, and only then', () => {
    const problem = rainAt(703, 713)
    const tasks = smallTasks()
      .filter(({ green }) => green !== 'b')
      .map((task) => ({
        kind: task.operation,
        green: task.green === null ? null : 0,
        pass: task.pass,
        load: task.load,
        machine: problem.machines.findIndex(({ id }) => id === task.machine),
        people: task.people.map((id) => problem.people.findIndex((person) => person.id === id)),
        startMin: (Date.parse(task.start) - problem.originMs) / 60_000,
        finishMin: (Date.parse(task.finish) - problem.originMs) / 60_000,
      }))
      .filter(({ startMin, kind }) => !(kind === 'move' && startMin === 589))
    const schedule = { tasks, unplanned: [{ green: 1, reason: 'noTimeLeft' as const, facts: {} }] }
    const pin = { kind: 'green' as const, green: 0, day: 0, openMin: 501 }
    const withPin = { ...problem, committed: { nowMin: 0, tasks: [], pins: [pin] } }
    expect(isCleanSchedule(compileProblem(withPin), schedule)).toBe(true)
    expect(isCleanSchedule(compileProblem(problem), schedule)).toBe(false)
  })
})
