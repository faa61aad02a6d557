import { describe, expect, it } from 'vitest'
import { smallTasks } from '../check/small-plan.ts'
import { smallProblem } from '../check/small-course.ts'
import { tasksOfPlan } from '../plan-to-tasks.ts'
import type { Problem, Span } from '../problem.ts'
import { intersectSpans, NEVER } from '../spans.ts'
import { dayRisk, overScenarios } from './day-risk.ts'
import { dayPlans, playOut } from './play-out.ts'

/*
 * The plan made by hand in `check/small-plan.ts`: green a is in work from minute 501 to 704, green b from 551 to 741. What comes of it under each sky below is
 * read off those four minutes.
 */
const problem = smallProblem()
const tasks = tasksOfPlan(problem, { tasks: [...smallTasks()] })
const [plan] = dayPlans(problem, tasks)
if (plan === undefined) throw new Error('the plan opens greens on its first day')

const free = { lastOpenMin: [NEVER, NEVER, NEVER] }
const onlyA = { lastOpenMin: [501, NEVER, NEVER] }
const [A, B] = [0, 1]

const under = (rain: readonly Span[], more: Partial<Problem> = {}): Problem => ({ ...problem, rain, ...more })
const asPlanned = under([])
const rainAt700 = under([{ start: 700, end: 760 }])
const rainAt720 = under([{ start: 720, end: 760 }])
const shower = under([{ start: 540, end: 545 }])

describe('a day played out', () => {
  it('goes as planned under the sky it was planned for', () => {
    expect(plan.greens.map(({ openMin, finishMin }) => [openMin, finishMin])).toEqual([
      [501, 704],
      [551, 741],
    ])
    expect(playOut(plan, problem, free)).toEqual({ opened: [A, B], finished: [A, B], caught: [] })
  })

  it('catches the greens that are in work when rain comes, and no other', () => {
    expect(playOut(plan, rainAt700, free).caught).toEqual([A, B])
    expect(playOut(plan, rainAt720, free)).toEqual({ opened: [A, B], finished: [A], caught: [B] })
    expect(playOut(plan, shower, free).caught).toEqual([A])
    expect(playOut(plan, under([{ start: 741, end: 800 }]), free).caught).toEqual([])
  })

  it('opens no green after the last safe start, nor in rain', () => {
    expect(playOut(plan, rainAt720, onlyA)).toEqual({ opened: [A], finished: [A], caught: [] })
    const noCoring = new Map(problem.workable)
    noCoring.set('core', [])
    expect(playOut(plan, under([{ start: 480, end: 960 }], { workable: noCoring }), free).opened).toEqual([])
  })

  it('catches a green whose sand is not dry in time to be dragged in before dark', () => {
    // 0.5 mm at half the pace take 200 minutes: 589 + 200 = 789 for a, 826 for b; dragging takes 15 and may be done until 800 here.
    const slow = problem.driedMm.map((mm) => mm / 2)
    const workable = new Map(problem.workable)
    workable.set('dragIn', intersectSpans(workable.get('dragIn') ?? [], [{ start: 0, end: 804 }]))
    const outcome = playOut(plan, under([], { driedMm: slow, workable }), free)
    expect(outcome).toEqual({ opened: [A, B], finished: [A], caught: [B] })
  })

  it('leaves what it was given as it was', () => {
    const before = JSON.stringify([plan.tasks, rainAt700.rain])
    playOut(plan, rainAt700, free)
    expect(JSON.stringify([plan.tasks, rainAt700.rain])).toBe(before)
  })
})

describe('the chance of a caught green', () => {
  const skies = [asPlanned, rainAt700, rainAt720, shower]

  it('is the share of the skies that catch one', () => {
    expect(overScenarios(plan, skies, NEVER)).toEqual({ chance: 3 / 4, opened: 2, finished: 3 / 4 + 1 / 4 })
    expect(overScenarios(plan, skies, 501)).toMatchObject({ chance: 2 / 4, opened: 1, finished: 2 / 4 })
  })

  it('draws a curve over the openings, never falling, and reads the last safe start from it', () => {
    // Four skies: 0.8 less its standard error of 0.2 is 0.6.
    const risk = dayRisk(plan, skies, 0.8)
    expect(risk.curve.slice(0, 2)).toEqual([
      { green: A, openMin: 501, chance: 0.5 },
      { green: B, openMin: 551, chance: 0.75 },
    ])
    expect(risk.lastSafeStartMin).toBe(501)
    expect(dayRisk(plan, skies, 0.4).lastSafeStartMin).toBeNull()
    const chances = risk.curve.map(({ chance }) => chance)
    expect(chances).toEqual([...chances].sort((a, b) => a - b))
  })

  it('lets the last green be opened later where the level allows it', () => {
    // Rain at 800 only: b, opened at 566, is finished by 756; the curve goes on until it meets the rain.
    const risk = dayRisk(plan, [under([{ start: 800, end: 860 }])], 0.05)
    expect(risk.lastSafeStartMin).toBeGreaterThan(551)
    const over = risk.curve.find(({ chance }) => chance > 0)
    expect(over?.openMin).toBe((risk.lastSafeStartMin ?? 0) + 15)
  })
})
