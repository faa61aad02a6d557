import { describe, expect, it } from 'vitest'
import { randomCourse } from '../../course/random-course.ts'
import { WEATHER_PORTS } from '../make-plan.ts'
import { isCleanSchedule } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import type { Problem } from '../problem.ts'
import { readProblem } from '../read-problem.ts'
import { scoreOf } from '../score.ts'
import { randomOf } from '../search/random.ts'
import { attemptSets } from './attempts.ts'
import { writeBegin } from './begin.ts'
import { decode } from './decode.ts'
import { arrange, forget, forgetList, generate, listSchedule, newMade } from './generate.ts'
import { groundOf } from './ground.ts'
import { judgeGreens, judgePeople, judgeTravel } from './judge.ts'
import { newLaid, readLaid } from './laid.ts'
import { changeList } from './list-moves.ts'
import { change } from './moves.ts'
import { pinsOf } from './pins.ts'
import { copyRecipe, plainRecipe } from './recipe.ts'
import { newRun, type Run } from './run.ts'
import { solve } from './solve.ts'

const DAYS = 7

const problemOf = (seed: number, greens: number): Problem => {
  const made = randomCourse({ seed, greens, days: DAYS })
  const read = readProblem({ ...made, days: DAYS }, WEATHER_PORTS)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return read.value
}

const runOf = (problem: Problem): Run => {
  const ground = groundOf(problem)
  const run = newRun({
    ground,
    nowMin: 0,
    attempts: attemptSets(problem).at(-1) ?? [],
    pins: pinsOf(ground, undefined),
    hints: null,
    recipe: plainRecipe(
      ground,
      problem.greens.map((_, index) => index),
    ),
  })
  writeBegin(run)
  arrange(run, run.recipe.order)
  return run
}

describe('a schedule grown on from the one before', () => {
  it.each([1, 2, 3, 4, 5, 6])('is the one that is grown from nothing (random course %i)', (seed) => {
    const problem = problemOf(seed, 8)
    const run = runOf(problem)
    const other = runOf(problem)
    const made = newMade(run.ground)
    const random = randomOf(seed)
    for (let round = 0; round < 40; round++) {
      forget(made, change(run.recipe, random, false))
      arrange(run, run.recipe.order)
      generate(run, made)
      other.recipe = run.recipe
      const fresh = newMade(run.ground)
      generate(other, fresh)
      expect([...made.ends]).toEqual([...fresh.ends])
      expect(decode(run)).toEqual(decode(other))
    }
  })

  it.each([21, 22, 23, 24, 26, 28])(
    'is so too where its steps are listed one by one (random course %i)',
    (seed) => {
      const problem = problemOf(seed, 7)
      const run = runOf(problem)
      const other = runOf(problem)
      const made = newMade(run.ground)
      generate(run, made)
      expect([...made.ends].every((end) => end >= 0)).toBe(true)
      const laid = newLaid(run.ground)
      const random = randomOf(seed)
      const current = plainRecipe(run.ground, run.recipe.order)
      listSchedule(run, current)
      readLaid(run, laid)
      const compiled = compileProblem(problem)
      let whole = 0
      let stale = 0
      for (let round = 0; round < 60; round++) {
        copyRecipe(current, run.recipe)
        const from = changeList(run, run.recipe, laid, random, seed % 2 === 0)
        forgetList(made, Math.min(from, stale))
        stale = from
        generate(run, made)
        other.recipe = run.recipe
        const fresh = newMade(run.ground)
        generate(other, fresh)
        expect([...made.ends]).toEqual([...fresh.ends])
        expect(decode(run)).toEqual(decode(other))
        if ([...made.ends].some((end) => end < 0)) continue
        whole++
        expect(isCleanSchedule(compiled, { tasks: decode(run), unplanned: [] })).toBe(true)
      }
      expect(whole).toBeGreaterThan(0)
    },
  )

  it.each([11, 12, 13, 14])('is judged as the score judges its tasks (random course %i)', (seed) => {
    const problem = problemOf(seed, 7)
    const run = runOf(problem)
    const made = newMade(run.ground)
    generate(run, made)
    const left = [...made.ends].filter((end) => end < 0).length + problem.excluded.length
    const { workedSum, ...judged } = judgeGreens(run, made, 0)
    const { overtimeMin } = judgePeople(run)
    const tasks = decode(run)
    expect({ ...judged, overtimeMin, travelMin: judgeTravel(run) }).toEqual(scoreOf(problem, tasks, left))
    const worked = problem.greens.map(({ steps }, green) => {
      const finish = Math.max(
        0,
        ...tasks.filter((task) => task.green === green).map((task) => task.finishMin),
      )
      return finish * steps.reduce((sum, step) => sum + Math.min(...step.minutesByMachine.values()), 0)
    })
    expect(workedSum).toBe(worked.reduce((sum, one) => sum + one, 0))
  })
})

describe('the search', () => {
  const problem = problemOf(9, 7)

  it('ends with the best so far when it is asked to stop', () => {
    let asked = 0
    const { schedules, schedule } = solve(problem, { seed: 1, schedules: 10_000, stop: () => ++asked > 5 })
    expect(schedules).toBeLessThan(20)
    expect(schedule.tasks.length).toBeGreaterThan(0)
  })

  it('tells its progress about fifty times on the way', () => {
    const told: number[] = []
    solve(problem, { seed: 1, schedules: 200, onProgress: ({ schedules }) => told.push(schedules) })
    expect(new Set(told).size).toBeGreaterThanOrEqual(25)
    expect(told).toEqual([...told].sort((a, b) => a - b))
  })
})
