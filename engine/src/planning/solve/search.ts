import { recordToRecord } from '../search/acceptance.ts'
import type { Budget } from '../search/budget.ts'
import { eliteOf } from '../search/elite.ts'
import { randomOf, type Random } from '../search/random.ts'
import { walk } from '../search/walk.ts'
import { balancedShun } from './balance.ts'
import { decode } from './decode.ts'
import { arrange, forget, generate, type Made } from './generate.ts'
import { judgeGreens, judgePeople, judgeTravel } from './judge.ts'
import { change } from './moves.ts'
import { compareObjectives, finishGuide, leadCost, nearGuide, type Objective } from './objective.ts'
import type { Near } from './options.ts'
import { copyRecipe, plainRecipe, type Follow, type Recipe } from './recipe.ts'
import type { Run } from './run.ts'

/** The best schedule so far: the recipe makes it again, in the run that it was made in. */
export type Best = Objective & {
  readonly run: Run
  readonly recipe: Recipe
  readonly left: readonly number[]
}

/** What a search holds while it runs. */
export type Search = {
  readonly run: Run
  readonly made: Made
  readonly budget: Budget
  readonly seed: number
  readonly near: Near | undefined
  /** Last finish and minutes of driving of what stood before. */
  readonly stood: { readonly finishMin: number; readonly travelMin: number }
  /** Told after every schedule, with true where it is the best so far. */
  readonly onSchedule: (isBest: boolean) => void
  best: Best | null
}

/** How far behind the record a current recipe may fall, in quarters of a minute of the guide (record-to-record travel, Dueck 1993). */
const RECORD_SLACK = 6

/** Recipes tried without a new record before the walk starts again from one of the best. */
const PATIENCE = 400

/** Good recipes kept to start again from, and moves made from one at once when it is. */
const ELITE = 5
const KICKS = 4

const leftOf = (made: Made): readonly number[] =>
  [...made.ends].flatMap((end, green) => (end < 0 ? [green] : []))

/** Generates the recipe of the run, pays for it, keeps it when it is the best, and returns its guide. */
const judge = (search: Search): number => {
  const { best, budget, made, near, run, stood } = search
  run.placed = 0
  generate(run, made)
  budget.spend(Math.max(1, run.placed))
  const judged = judgeGreens(run, made, stood.finishMin)
  const penalty = near === undefined ? 0 : near.penalty(decode(run))
  const guide = near === undefined ? finishGuide(judged, run.ground.greens) : nearGuide(judged, penalty)
  // The rest of the objective is only worked out where it can decide.
  const mayBeBest =
    best === null ||
    leadCost(judged) < leadCost(best.judged) ||
    (leadCost(judged) === leadCost(best.judged) &&
      (penalty < best.penalty || (penalty === best.penalty && judged.finishMin <= best.judged.finishMin)))
  if (!mayBeBest) {
    search.onSchedule(false)
    return guide
  }
  const found = { judged, penalty, ...judgePeople(run), travelMin: stood.travelMin + judgeTravel(run) }
  const isBest = best === null || compareObjectives(found, best) < 0
  if (isBest) {
    const recipe = plainRecipe(run.ground, run.recipe.order)
    copyRecipe(run.recipe, recipe)
    search.best = { ...found, run, recipe, left: leftOf(made) }
  }
  search.onSchedule(isBest)
  return guide
}

/** Near another plan, its machines, people and starts are tried first, then only its machines and people, then neither. */
const FOLLOWS: readonly Follow[] = [2, 1, 0]

/** Most minutes for which a person is kept from work that others should do, in the balanced beginnings. */
const MOST_BALANCE_MIN = 10

/** Recipes worth beginning with: each order with people taken as they come and shared out evenly; or near another plan, by how much of it is kept. */
const beginnings = ({ near, run }: Search, orders: readonly (readonly number[])[]): readonly Recipe[] => {
  const balanced = balancedShun(run.ground, MOST_BALANCE_MIN)
  return orders.flatMap((order) => {
    if (near !== undefined) return FOLLOWS.map((follow) => ({ ...plainRecipe(run.ground, order), follow }))
    return [plainRecipe(run.ground, order), { ...plainRecipe(run.ground, order), shun: balanced }]
  })
}

/** Generates the recipes worth beginning with; leaves the best of them in the run and returns its guide. */
const begin = (search: Search, orders: readonly (readonly number[])[]): number => {
  const { budget, made, run } = search
  const first = plainRecipe(run.ground, run.recipe.order)
  let guide = Infinity
  for (const recipe of beginnings(search, orders)) {
    if (guide < Infinity && budget.isOver()) break
    copyRecipe(recipe, run.recipe)
    arrange(run, run.recipe.order)
    forget(made, 0)
    const cost = judge(search)
    if (cost >= guide) continue
    guide = cost
    copyRecipe(run.recipe, first)
  }
  copyRecipe(first, run.recipe)
  return guide
}

const isSameOrder = (a: Recipe, b: Recipe): boolean =>
  a.order.every((green, place) => b.order[place] === green)

const copyOf = (search: Search, recipe: Recipe): Recipe => {
  const copy = plainRecipe(search.run.ground, recipe.order)
  copyRecipe(recipe, copy)
  return copy
}

/** Walks from the current recipe until nothing better turns up for long; returns the least guide and writes its recipe over `current`. */
const walkFrom = (search: Search, current: Recipe, firstCost: number, random: Random): number => {
  const { budget, made, run } = search
  const candidate = run.recipe
  const record = copyOf(search, current)
  // First place of the order from which the schedule that stands differs from the current recipe in more than its order.
  let stale = 0
  const propose = (): number => {
    copyRecipe(current, candidate)
    const from = change(candidate, random, search.near !== undefined)
    arrange(run, candidate.order)
    forget(made, Math.min(from, stale))
    stale = from
    return judge(search)
  }
  const take = (): void => {
    copyRecipe(candidate, current)
    stale = current.order.length
  }
  const keep = (): void => copyRecipe(candidate, record)
  const accepts = recordToRecord(RECORD_SLACK)
  const cost = walk({ propose, take, keep }, { budget, accepts, firstCost, patience: PATIENCE })
  copyRecipe(record, current)
  return cost
}

/**
 * Searches through recipes until the budget is over: constructive orders first, then walks by record-to-record travel; when one has run dry, the next starts a few
 * moves away from one of the best (iterated local search with a small elite set).
 */
export const searchRecipes = (search: Search, orders: readonly (readonly number[])[]): void => {
  const { budget, run } = search
  const random = randomOf(search.seed)
  const elite = eliteOf<Recipe>(ELITE, isSameOrder)
  let cost = begin(search, orders)
  const current = copyOf(search, run.recipe)
  while (!budget.isOver() && current.order.length > 0) {
    const least = walkFrom(search, current, cost, random)
    elite.offer(least, copyOf(search, current))
    copyRecipe(elite.any(random) ?? current, current)
    for (let kick = 0; kick < KICKS; kick++) change(current, random, search.near !== undefined)
    arrange(run, current.order)
    if (budget.isOver()) return
    copyRecipe(current, run.recipe)
    forget(search.made, 0)
    cost = judge(search)
  }
}
