import type { Problem, Schedule, ScheduledTask } from '../problem.ts'
import { scoreOf, type Score } from '../score.ts'
import { recordToRecord } from '../search/acceptance.ts'
import { budgetOf, type Budget } from '../search/budget.ts'
import { randomOf } from '../search/random.ts'
import { walk } from '../search/walk.ts'
import { attemptSets, type Attempt } from './attempts.ts'
import { writeBegin } from './begin.ts'
import { decode } from './decode.ts'
import { arrange, forget, generate, newMade, type Made } from './generate.ts'
import { groundOf, type Ground } from './ground.ts'
import { hintsOf } from './hints.ts'
import { judgeGreens, judgePeople, judgeTravel, type Judged } from './judge.ts'
import { change } from './moves.ts'
import { pinsOf } from './pins.ts'
import { copyRecipe, plainRecipe, type Recipe } from './recipe.ts'
import { newRun, type Run } from './run.ts'
import { startOrders } from './start-orders.ts'
import { whyLeft } from './why-left.ts'

/** A schedule to stay near to, and what moving away from it costs: whole numbers, judged after the greens and before the finish. */
export type Near = {
  readonly tasks: readonly ScheduledTask[]
  readonly penalty: (tasks: readonly ScheduledTask[]) => number
}

/** How a search is run. Same problem, seed and count of schedules: same result, on every machine. */
export type SolveOptions = {
  readonly seed: number
  /** Complete schedules to spend, at least 1; what is rebuilt of one counts as its share. */
  readonly schedules: number
  /** Told after every improvement and fifty times in between; changes nothing. */
  readonly onProgress?: (progress: { readonly schedules: number; readonly best: Score }) => void
  /** Asked once a schedule; true ends the search with the best so far. */
  readonly stop?: () => boolean
  /** Greens (indices) in the order to begin from: that of the plan before. */
  readonly startOrder?: readonly number[]
  readonly near?: Near
}

/** The best schedule found, its score, and the schedules really spent. */
export type Solved = { readonly schedule: Schedule; readonly score: Score; readonly schedules: number }

/** What a change of post weighs in the tail of the objective, minutes of travel. */
const POST_CHANGE_MIN = 3

/** How far behind the record a current order may fall, in quarters of a minute of the guide (record-to-record travel, Dueck 1993). */
const RECORD_SLACK = 80

/** Above every guide: what comes before the finish weighs more. */
const GUIDE_ROOM = 2 ** 22

type Best = {
  readonly judged: Judged
  readonly penalty: number
  readonly tail: readonly [number, number]
  readonly recipe: Recipe
  readonly tasks: readonly ScheduledTask[]
  readonly left: readonly number[]
}

/** What a search holds while it runs. */
type Search = {
  readonly run: Run
  readonly made: Made
  readonly budget: Budget
  readonly options: SolveOptions
  readonly stoodMin: number
  best: Best | null
}

const leadCost = (judged: Judged): number =>
  (judged.unfinishedGreens * 256 + judged.fixtureClashes) * 1024 + judged.shutGreenDays

/** What leads the walk: all that comes before the finish, then the mean finish of the greens and a quarter of the last, in quarters of a minute. */
const guideOf = (judged: Judged, greens: number): number =>
  leadCost(judged) * GUIDE_ROOM +
  Math.min(GUIDE_ROOM - 1, Math.floor((judged.finishSumMin * 4) / Math.max(1, greens)) + judged.finishMin)

const isBetter = (a: Pick<Best, 'judged' | 'penalty' | 'tail'>, b: Best): boolean => {
  const [lead, other] = [leadCost(a.judged), leadCost(b.judged)]
  if (lead !== other) return lead < other
  if (a.penalty !== b.penalty) return a.penalty < b.penalty
  if (a.judged.finishMin !== b.judged.finishMin) return a.judged.finishMin < b.judged.finishMin
  return a.tail[0] !== b.tail[0] ? a.tail[0] < b.tail[0] : a.tail[1] < b.tail[1]
}

const leftOf = (made: Made): readonly number[] =>
  [...made.ends].flatMap((end, green) => (end < 0 ? [green] : []))

/** Generates the recipe of the run, pays for it, keeps it when it is the best, and returns its guide. */
const judge = (search: Search): number => {
  const { budget, made, options, run, stoodMin } = search
  run.placed = 0
  generate(run, made)
  budget.spend(Math.max(1, run.placed))
  const judged = judgeGreens(run, made, stoodMin)
  const { best } = search
  const guide = guideOf(judged, run.ground.greens)
  if (best !== null && options.near === undefined) {
    const [lead, other] = [leadCost(judged), leadCost(best.judged)]
    if (lead > other || (lead === other && judged.finishMin > best.judged.finishMin)) return guide
  }
  const tasks = options.near === undefined ? null : decode(run)
  const penalty = options.near?.penalty(tasks ?? []) ?? 0
  const people = judgePeople(run)
  const tail = [people.overtimeMin, judgeTravel(run) + POST_CHANGE_MIN * people.postChanges] as const
  const found = { judged, penalty, tail }
  if (best !== null && !isBetter(found, best)) return guide
  const recipe = plainRecipe(run.ground, run.recipe.order)
  copyRecipe(run.recipe, recipe)
  search.best = { ...found, recipe, tasks: tasks ?? decode(run), left: leftOf(made) }
  return guide
}

const runOf = (ground: Ground, attempts: readonly Attempt[], near: Near | undefined): Run => {
  const { committed } = ground.problem
  const order = ground.problem.greens.map((_, index) => index)
  const run = newRun({
    ground,
    nowMin: committed?.nowMin ?? 0,
    attempts,
    pins: pinsOf(ground, committed),
    hints: near === undefined ? null : hintsOf(ground, near.tasks),
    recipe: plainRecipe(ground, order),
  })
  writeBegin(run)
  return run
}

/** Begins with the orders worth trying; leaves the best of them in the run and returns its guide. */
const begin = (search: Search, orders: readonly (readonly number[])[]): number => {
  const { budget, made, run } = search
  let guide = Infinity
  const first = plainRecipe(run.ground, run.recipe.order)
  for (const order of orders) {
    if (guide < Infinity && budget.isOver()) break
    run.recipe.order.set(order)
    arrange(run, run.recipe.order)
    forget(made, 0)
    const cost = judge(search)
    if (cost >= guide) continue
    guide = cost
    copyRecipe(run.recipe, first)
  }
  copyRecipe(first, run.recipe)
  forget(made, 0)
  return guide
}

const searchWith = (search: Search, orders: readonly (readonly number[])[]): void => {
  const { budget, made, options, run } = search
  const random = randomOf(options.seed)
  const firstCost = begin(search, orders)
  const current = plainRecipe(run.ground, run.recipe.order)
  copyRecipe(run.recipe, current)
  const candidate = run.recipe
  let stale = true
  const propose = (): number => {
    copyRecipe(current, candidate)
    const changed = change(candidate, random)
    arrange(run, candidate.order)
    if (changed === 'all' || stale) forget(made, 0)
    stale = changed === 'all'
    return judge(search)
  }
  const take = (): void => {
    copyRecipe(candidate, current)
    stale = false
  }
  walk({ propose, take, keep: () => {} }, { budget, accepts: recordToRecord(RECORD_SLACK), firstCost })
}

/** Searches for a good schedule. */
export const solve = (problem: Problem, options: SolveOptions): Solved => {
  const ground = groundOf(problem)
  const stoodMin = (problem.committed?.tasks ?? []).reduce((last, task) => Math.max(last, task.finishMin), 0)
  const activities = Math.max(1, ground.steps)
  const orders = options.startOrder === undefined ? startOrders(problem) : [options.startOrder]
  let best: Best | null = null
  let spent = 0
  let last: Run | null = null
  for (const [index, attempts] of attemptSets(problem).entries()) {
    const schedules = index === 0 ? options.schedules : Math.max(1, Math.floor(options.schedules / 2))
    const budget = budgetOf({
      schedules,
      activities,
      ...(options.stop === undefined ? {} : { stop: options.stop }),
    })
    const run = runOf(ground, attempts, options.near)
    const search: Search = { run, made: newMade(ground.greens), budget, options, stoodMin, best }
    searchWith(search, orders)
    spent += Math.min(schedules, budget.schedules())
    best = search.best
    last = run
    if (best === null || best.left.length === 0) break
  }
  const tasks = best?.tasks ?? []
  const left = best?.left ?? []
  const unplanned = left.flatMap((green) => (last === null ? [] : [{ green, ...whyLeft(last, green) }]))
  const score = scoreOf(problem, tasks, left.length + problem.excluded.length)
  options.onProgress?.({ schedules: spent, best: score })
  return { schedule: { tasks, unplanned }, score, schedules: spent }
}
