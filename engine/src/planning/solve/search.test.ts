import { describe, expect, it } from 'vitest'
import { randomCourse } from '../../course/random-course.ts'
import { WEATHER_PORTS } from '../make-plan.ts'
import type { Problem } from '../problem.ts'
import { readProblem } from '../read-problem.ts'
import { scoreOf } from '../score.ts'
import { randomOf } from '../search/random.ts'
import { attemptSets } from './attempts.ts'
import { writeBegin } from './begin.ts'
import { decode } from './decode.ts'
import { arrange, forget, generate, newMade } from './generate.ts'
import { groundOf } from './ground.ts'
import { judgeGreens, judgePeople, judgeTravel } from './judge.ts'
import { change } from './moves.ts'
import { pinsOf } from './pins.ts'
import { plainRecipe } from './recipe.ts'
import { changeSteps } from './step-moves.ts'
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
    const made = newMade(8)
    const random = randomOf(seed)
    for (let round = 0; round < 40; round++) {
      // A kept plan is changed in its order, in its people, or in what is wished for single steps.
      const isStep = round % 2 === 1
      forget(made, isStep ? changeSteps(run.ground, run.recipe, random) : change(run.recipe, random, false))
      arrange(run, run.recipe.order)
      generate(run, made)
      other.recipe = run.recipe
      const fresh = newMade(8)
      generate(other, fresh)
      expect([...made.ends]).toEqual([...fresh.ends])
      expect(decode(run)).toEqual(decode(other))
    }
  })

  it.each([11, 12, 13, 14])('is judged as the score judges its tasks (random course %i)', (seed) => {
    const problem = problemOf(seed, 7)
    const run = runOf(problem)
    const made = newMade(problem.greens.length)
    generate(run, made)
    const left = [...made.ends].filter((end) => end < 0).length + problem.excluded.length
    const { finishSumMin: _, ...judged } = judgeGreens(run, made, 0)
    const { overtimeMin } = judgePeople(run)
    expect({ ...judged, overtimeMin, travelMin: judgeTravel(run) }).toEqual(
      scoreOf(problem, decode(run), left),
    )
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
