import { isOperation } from '../operations.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { openedGreens, scoreOf, type Score } from '../score.ts'
import { budgetOf, type Budget } from '../search/budget.ts'
import { attemptSets, type Attempt } from './attempts.ts'
import { writeBegin } from './begin.ts'
import { decode } from './decode.ts'
import { generate, newMade } from './generate.ts'
import { groundOf, type Ground } from './ground.ts'
import { hintsOf } from './hints.ts'
import { scoreOfObjective } from './objective.ts'
import type { Near, SolveOptions, Solved } from './options.ts'
import { pinsOf } from './pins.ts'
import { copyRecipe, plainRecipe } from './recipe.ts'
import { newRun, type Run } from './run.ts'
import { searchRecipes } from './search.ts'
import { startOrders } from './start-orders.ts'
import type { Best, Search } from './trial.ts'
import { whyLeft } from './why-left.ts'

export type { SolveOptions, Solved } from './options.ts'

/** How often a search tells its progress besides its improvements. */
const TOLD = 50

const runOf = (
  ground: Ground,
  attempts: readonly Attempt[],
  near: Near | undefined,
  standing: readonly number[],
): Run => {
  const { committed } = ground.problem
  const run = newRun({
    ground,
    nowMin: committed?.nowMin ?? 0,
    attempts,
    pins: pinsOf(ground, committed, standing),
    hints: near === undefined ? null : hintsOf(ground, near.tasks),
    recipe: plainRecipe(ground, []),
  })
  writeBegin(run)
  run.recipe = plainRecipe(ground, run.begun.movable)
  return run
}

/** The orders to begin from: the one that was handed in, that in which the plan to stay near to opens its greens, or the usual ones. */
const ordersOf = (problem: Problem, { near, startOrder }: SolveOptions): readonly (readonly number[])[] => {
  if (startOrder === undefined && near === undefined) return startOrders(problem)
  const opened = startOrder ?? openedGreens(problem, near?.tasks ?? []).map(({ green }) => green)
  return [[...new Set([...opened, ...problem.greens.keys()])]]
}

/** The tasks of a schedule, generated once more: while it is searched for, only its recipe is kept. */
const tasksOf = ({ run, recipe }: Best): readonly ScheduledTask[] => {
  copyRecipe(recipe, run.recipe)
  generate(run, newMade(run.ground))
  return decode(run)
}

/** Tells progress: every improvement, and whenever another part of the budget is spent. */
const teller = (
  options: SolveOptions,
  budget: Budget,
  spent: number,
): ((isBest: boolean, best: Score | null) => void) => {
  const every = Math.max(1, Math.floor(options.schedules / TOLD))
  let next = every
  return (isBest, best) => {
    const schedules = Math.min(options.schedules, budget.schedules())
    if (best === null || options.onProgress === undefined || (!isBest && schedules < next)) return
    while (next <= schedules) next += every
    options.onProgress({ schedules: spent + schedules, best })
  }
}

const stoodOf = (problem: Problem): { readonly finishMin: number; readonly travelMin: number } =>
  scoreOf(problem, problem.committed?.tasks ?? [], 0)

/** What a search has found so far, and how many schedules it took. */
type Sought = { readonly best: Best | null; readonly spent: number }

/** Whether a schedule leaves out a green that somebody could do. */
const leavesMore = ({ left, run }: Best): boolean => left.some((green) => run.begun.hopeless[green] !== 1)

/** Searches with one set of attempts after the other while greens are left out. The pins on the greens of `standing` stand whatever they break. */
const searchSets = (
  ground: Ground,
  options: SolveOptions,
  standing: readonly number[],
  before: number,
): Sought => {
  const { problem } = ground
  const { near, seed, stop } = options
  const stood = stoodOf(problem)
  const orders = ordersOf(problem, options)
  let best: Best | null = null
  let spent = before
  for (const [index, attempts] of attemptSets(problem).entries()) {
    const schedules = index === 0 ? options.schedules : Math.max(1, Math.floor(options.schedules / 2))
    const activities = Math.max(1, ground.steps)
    const budget = budgetOf({ schedules, activities, ...(stop === undefined ? {} : { stop }) })
    const tell = teller({ ...options, schedules }, budget, spent)
    const run = runOf(ground, attempts, near, standing)
    const search: Search = {
      run,
      made: newMade(ground),
      budget,
      seed,
      near,
      stood,
      onSchedule: (isBest: boolean) =>
        tell(isBest, search.best === null ? null : scoreOfObjective(search.best)),
      best,
      last: { unfinishedGreens: 0, fixtureClashes: 0, shutGreenDays: 0, finishMin: 0, workedSum: 0 },
    }
    const movable = new Set(run.begun.movable)
    searchRecipes(
      search,
      orders.map((order) => order.filter((green) => movable.has(green))),
    )
    spent += Math.min(schedules, budget.schedules())
    best = search.best
    if (best === null || !leavesMore(best) || budget.isStopped()) break
  }
  return { best, spent }
}

/**
 * Searches for a good schedule. Attempts that cost more (a night, a fixture) are only allowed when the kinder ones leave greens out, and only taken when they
 * leave out fewer. What stands already (`problem.committed`) is part of the schedule. A pinned green that can't be kept within the rules is opened as it is pinned all
 * the same: then the search is made again with it standing, and the others around it.
 */
export const solve = (problem: Problem, options: SolveOptions): Solved => {
  const ground = groundOf(problem)
  const pinned = new Set(problem.committed?.pins.map(({ green }) => green))
  let standing: readonly number[] = []
  let sought = searchSets(ground, options, standing, 0)
  for (;;) {
    const more = (sought.best?.left ?? []).filter((green) => pinned.has(green) && !standing.includes(green))
    if (more.length === 0) break
    standing = [...standing, ...more]
    sought = searchSets(ground, options, standing, sought.spent)
  }
  const { best, spent } = sought
  const tasks = best === null ? [] : tasksOf(best)
  const isWhole = (green: number): boolean =>
    tasks.filter((task) => task.green === green && isOperation(task.kind)).length ===
    problem.greens[green]?.steps.length
  const left = (best?.left ?? []).filter((green) => !isWhole(green))
  const unplanned = left.flatMap((green) => (best === null ? [] : [{ green, ...whyLeft(best.run, green) }]))
  const score = scoreOf(problem, tasks, left.length + problem.excluded.length)
  return { schedule: { tasks, unplanned }, score, schedules: spent }
}
