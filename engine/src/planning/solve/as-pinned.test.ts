import { describe, expect, it } from 'vitest'
import { check } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import { smallProblem as handProblem } from '../check/small-course.ts'
import type { Pin } from '../committed.ts'
import { planTasks } from '../schedule-to-plan.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { openedGreens } from '../score.ts'
import { solve } from './solve.ts'

const SCHEDULES = 40

/** Without the watering by hand: the search plans work with machines. */
const smallProblem = (): Problem => {
  const problem = handProblem()
  const greens = problem.greens.map((green) => ({
    ...green,
    steps: green.steps.filter(({ operation }) => operation !== 'water'),
  }))
  return { ...problem, greens }
}

const pinOn = (green: number, openMin: number | null, day = 0): Pin => ({
  kind: 'green',
  green,
  day,
  openMin,
})

const solved = (problem: Problem, pins: readonly Pin[]) => {
  const pinnedProblem = { ...problem, committed: { nowMin: 0, tasks: [], pins } }
  const { schedule } = solve(pinnedProblem, { seed: 1, schedules: SCHEDULES })
  const opened = new Map(openedGreens(problem, schedule.tasks).map((one) => [one.green, one.opened]))
  const found = check(compileProblem(pinnedProblem), {
    tasks: [...planTasks(problem, schedule.tasks)],
  }).filter(({ rule }) => rule !== 'notAccountedFor')
  return {
    opened,
    left: schedule.unplanned.map(({ green }) => green),
    risks: found.filter(({ asPinned }) => asPinned === true).map(({ rule, green }) => `${rule} ${green}`),
    faults: found.filter(({ asPinned }) => asPinned !== true),
    tasks: schedule.tasks,
  }
}

const rainAt = (start: number, end: number): Problem => ({ ...smallProblem(), rain: [{ start, end }] })

const lastOf = (tasks: readonly ScheduledTask[], kind: ScheduledTask['kind']): number =>
  Math.max(...tasks.filter((task) => task.kind === kind).map(({ finishMin }) => finishMin))

/* By hand, green a opened at 501 is finished at 704 at the soonest: `as-pinned.test.ts` of the checker. */
describe('a pin that breaks a rule', () => {
  it('stands: the green is opened in time to be caught by the rain, and nothing else is wrong with the plan', () => {
    const { opened, risks, faults, left } = solved(rainAt(650, 660), [pinOn(0, 501)])
    expect(opened.get(0)).toBe(501)
    expect(risks).toEqual(['openInRain a'])
    expect(faults).toEqual([])
    expect(left).toEqual([])
  })

  it('breaks as few as will do: none where the green can be kept dry, and no more than the cap where that is all', () => {
    expect(solved(rainAt(704, 760), [pinOn(0, 501)])).toMatchObject({ risks: [], faults: [] })
    const base = smallProblem()
    const capped = { ...base, settings: { ...base.settings, openGreensCap: 1 } }
    const crowd = solved(capped, [pinOn(0, 501), pinOn(1, 551)])
    expect(crowd).toMatchObject({ risks: ['tooManyOpen b'], faults: [], left: [] })
    expect([crowd.opened.get(0), crowd.opened.get(1)]).toEqual([501, 551])
  })

  it('stands in hours that cannot be worked, for the pinned step alone: the rest waits for its hours', () => {
    const base = smallProblem()
    const workable = new Map(base.workable).set('core', [{ start: 600, end: 900 }])
    const { opened, risks, faults, tasks } = solved({ ...base, workable }, [pinOn(0, 520)])
    expect(opened.get(0)).toBe(520)
    expect(risks).toEqual(['notWorkable a'])
    expect(faults).toEqual([])
    expect(lastOf(tasks, 'dragIn')).toBeLessThanOrEqual(900)
  })

  it('stands for a day on which it rains in every hour that is long enough', () => {
    const wet = {
      ...smallProblem(),
      rain: Array.from({ length: 12 }, (_, n) => ({ start: 400 + n * 60, end: 410 + n * 60 })),
    }
    const { opened, faults, risks } = solved(wet, [pinOn(0, null)])
    expect(opened.get(0)).toBeLessThan(1440)
    expect(faults).toEqual([])
    expect(risks).toContain('openInRain a')
  })

  it('is refused where it cannot be: the corer needs 15 minutes of setting up and 6 of way from 480', () => {
    const { opened, left } = solved(smallProblem(), [pinOn(0, 500)])
    expect(opened.has(0)).toBe(false)
    expect(left).toContain(0)
  })
})
