import { describe, expect, it } from 'vitest'
import { checkPlanAgainst, makePlan, WEATHER_PORTS } from './make-plan.ts'
import { isCleanSchedule } from './check/check.ts'
import { compileProblem } from './check/compile.ts'
import { lastSafeStart } from './last-safe-start.ts'
import { openLater } from './later.ts'
import type { Plan } from './plan.ts'
import { readProblem } from './read-problem.ts'
import { openedGreens } from './score.ts'
import { solve } from './solve/solve.ts'
import { demoInput, rainEarlier } from './testing/demo.ts'

const SCHEDULES = 60

const planOf = (input: Parameters<typeof makePlan>[0]): Plan => {
  const made = makePlan({ ...input, schedules: SCHEDULES })
  if (!made.ok) throw new Error(JSON.stringify(made.error))
  return made.value
}

const demo = demoInput()
const weather = demo.weather
if (weather === null) throw new Error('the demo has its forecast')

describe('the demo course', () => {
  const plan = planOf(demo)

  it('gets a plan for all nineteen greens that the checker finds clean', () => {
    expect(plan.openings).toHaveLength(19)
    expect(plan.unplanned).toEqual([])
    expect(plan.feasible).toBe(true)
    expect(checkPlanAgainst(plan, demo)).toEqual({ ok: true, value: [] })
  })

  it('keeps every green out of the rain of the second afternoon', () => {
    // The forecast has rain in the hours labelled 16:00 to 22:00 of the second day, so from 15:00 on.
    const rain = [Date.parse('2026-08-11T15:00:00+01:00'), Date.parse('2026-08-11T22:00:00+01:00')] as const
    for (const { opened, finished } of plan.openings)
      expect(Date.parse(finished ?? '') <= rain[0] || Date.parse(opened) >= rain[1]).toBe(true)
  })

  it('with the rain two hours earlier catches no green; what is no longer done that day is done later', () => {
    const wet = { ...demo, weather: rainEarlier(weather, 2) }
    const earlier = planOf(wet)
    expect(checkPlanAgainst(earlier, wet)).toEqual({ ok: true, value: [] })
    // The rain now falls from 13:00 to 20:00 of the second day.
    const [from, to] = [Date.parse('2026-08-11T13:00:00+01:00'), Date.parse('2026-08-11T20:00:00+01:00')]
    for (const { opened, finished } of earlier.openings)
      expect(Date.parse(finished ?? '') <= from || Date.parse(opened) >= to).toBe(true)
    expect(earlier.openings.length + earlier.unplanned.length).toBe(19)
    // The old plan, judged under the new sky, has greens caught.
    const judged = checkPlanAgainst(plan, wet)
    expect(judged.ok && judged.value.some(({ rule }) => rule === 'openInRain')).toBe(true)
  })

  it('says what it took for granted when there is no forecast', () => {
    expect(planOf({ ...demo, weather: null }).assumed).toContain('no-forecast')
  })

  it('is told as far as it was found when the search is asked to stop', () => {
    let asked = 0
    const made = makePlan({ ...demo, schedules: 100_000, stop: () => ++asked > 5 })
    expect(made.ok && made.value.schedules).toBeLessThan(20)
    expect(made.ok && checkPlanAgainst(made.value, demo)).toEqual({ ok: true, value: [] })
  })

  it('plans the same again from the same seed, and needs no more than plain data', () => {
    expect(planOf(demo)).toEqual(plan)
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan)
  })
})

describe('the last safe start', () => {
  const read = readProblem({ ...demo, days: 7 }, WEATHER_PORTS)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  const problem = read.value
  const { schedule } = solve(problem, { seed: 1, schedules: SCHEDULES })
  const compiled = compileProblem(problem)
  const opened = openedGreens(problem, schedule.tasks)
  const lastOfDay = problem.days.flatMap(
    (day) => opened.findLast((o) => o.opened >= day.startMin && o.opened < day.endMin) ?? [],
  )

  it.each(lastOfDay.map((o) => [problem.greens[o.green]?.id ?? '', o] as const))(
    'of %s is clean to the minute, and no later minute of that day is',
    (_id, { green, opened: planned }) => {
      const judge = (tasks: typeof schedule.tasks): boolean =>
        isCleanSchedule(compiled, { ...schedule, tasks })
      const safe = lastSafeStart(problem, schedule.tasks, green, judge)
      if (safe === null) throw new Error('a planned green has a last safe start')
      expect(safe).toBeGreaterThanOrEqual(planned)
      const dark = problem.days.find((day) => planned < day.endMin)?.darkMin ?? 0
      const openAt = openLater(problem, schedule.tasks, green)
      const cleanAt = (minute: number): boolean => {
        const moved = openAt(minute)
        return moved !== null && judge(moved)
      }
      expect(cleanAt(safe)).toBe(true)
      const later = Array.from({ length: dark - safe }, (_, i) => safe + 1 + i)
      expect(later.filter(cleanAt)).toEqual([])
    },
  )
})
