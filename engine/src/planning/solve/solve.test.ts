import { describe, expect, it } from 'vitest'
import { randomCourse, type RandomWish } from '../../course/random-course.ts'
import { isCleanSchedule } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import { WEATHER_PORTS } from '../make-plan.ts'
import type { Problem } from '../problem.ts'
import { readProblem } from '../read-problem.ts'
import { compareScores, scoreOf } from '../score.ts'
import { writeBegin } from './begin.ts'
import { arrange, generate, newMade } from './generate.ts'
import { groundOf } from './ground.ts'
import { decode } from './decode.ts'
import { pinsOf } from './pins.ts'
import { plainRecipe } from './recipe.ts'
import { newRun } from './run.ts'
import { solve } from './solve.ts'

const DAYS = 7

const problemOf = (wish: RandomWish): Problem => {
  const made = randomCourse({ ...wish, days: DAYS })
  const read = readProblem({ ...made, days: DAYS }, WEATHER_PORTS)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return read.value
}

/** One schedule from an order, by the plain recipe: its tasks and how many greens it leaves out. */
const scheduleOf = (problem: Problem, order: readonly number[]) => {
  const ground = groundOf(problem)
  const attempts = [{ keepFixtures: true, overNight: false, lets: 0 as const }]
  const recipe = plainRecipe(ground, order)
  const run = newRun({ ground, nowMin: 0, attempts, pins: pinsOf(ground, undefined), hints: null, recipe })
  const made = newMade(ground)
  writeBegin(run)
  arrange(run, recipe.order)
  generate(run, made)
  return { tasks: decode(run), left: [...made.ends].filter((end) => end < 0).length }
}

const permutations = (items: readonly number[]): readonly (readonly number[])[] =>
  items.length < 2
    ? [items]
    : items.flatMap((item) =>
        permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]),
      )

const SEEDS = Array.from({ length: 24 }, (_, i) => i + 1)

describe('the solver', () => {
  it.each(SEEDS)('makes a plan that the independent checker finds clean (random course %i)', (seed) => {
    const problem = problemOf({ seed, greens: 1 + (seed % 9) })
    const { schedule } = solve(problem, { seed, schedules: 25 })
    expect(isCleanSchedule(compileProblem(problem), schedule)).toBe(true)
    const planned = new Set(schedule.tasks.flatMap((task) => (task.green === null ? [] : [task.green])))
    expect(planned.size + schedule.unplanned.length).toBe(problem.greens.length)
  })

  it.each([101, 102, 103, 104, 105, 106])(
    'leaves nothing out in a dry week with sand enough (random course %i)',
    (seed) => {
      const problem = problemOf({ seed, greens: 5, weather: 'dry', sand: 'enough' })
      const { schedule } = solve(problem, { seed, schedules: 60 })
      expect(schedule.unplanned).toEqual([])
    },
  )

  it.each([201, 202, 203, 204, 205, 206, 207, 208])(
    'never leaves out more greens than the plain rule "one green at a time, in the order of the file" (random course %i)',
    (seed) => {
      const problem = problemOf({ seed, greens: 8, weather: seed % 2 === 0 ? 'wet' : 'mixed' })
      const plain = { ...problem, settings: { ...problem.settings, openGreensCap: 1 } }
      const order = problem.greens.map((_, index) => index)
      const { left } = scheduleOf(plain, order)
      expect(solve(problem, { seed, schedules: 40 }).schedule.unplanned.length).toBeLessThanOrEqual(left)
    },
  )

  it.each([301, 302, 303])('finds the best of all orders of four greens (random course %i)', (seed) => {
    const problem = problemOf({ seed, greens: 4, weather: 'dry', sand: 'enough' })
    const scores = permutations([0, 1, 2, 3]).map((order) => {
      const { tasks, left } = scheduleOf(problem, order)
      return scoreOf(problem, tasks, left)
    })
    const best = scores.reduce((a, b) => (compareScores(b, a) < 0 ? b : a))
    // The search may also choose people and machines otherwise than the plain rule does, so it may be better, never worse. Travel is weighed against changes of post, so it is left out.
    const found = solve(problem, { seed, schedules: 400 }).score
    expect(compareScores({ ...found, travelMin: 0 }, { ...best, travelMin: 0 })).toBeLessThanOrEqual(0)
  })

  it('makes the same plan from the same problem, seed and count', () => {
    const problem = problemOf({ seed: 7, greens: 6 })
    const options = { seed: 11, schedules: 40 }
    expect(solve(problem, options)).toEqual(solve(problem, options))
  })

  it('spends the schedules it was given, and tells its progress', () => {
    const problem = problemOf({ seed: 8, greens: 6, weather: 'dry', sand: 'enough' })
    const told: number[] = []
    const { schedules } = solve(problem, {
      seed: 1,
      schedules: 50,
      onProgress: (progress) => told.push(progress.schedules),
    })
    expect(schedules).toBe(50)
    expect(told.every((count) => count <= 50)).toBe(true)
  })
})
