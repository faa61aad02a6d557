import { recordToRecord } from '../search/acceptance.ts'
import { eliteOf } from '../search/elite.ts'
import { randomOf } from '../search/random.ts'
import { walk } from '../search/walk.ts'
import { balancedShun } from './balance.ts'
import { arrange, forget } from './generate.ts'
import { change, shuffle } from './moves.ts'
import { polish } from './polish.ts'
import { copyRecipe, plainRecipe, type Follow, type Recipe } from './recipe.ts'
import { copyOf, judge, type Search } from './trial.ts'

/** How far behind the record a current recipe may fall, in quarters of a minute of the guide (record-to-record travel, Dueck 1993). */
const RECORD_SLACK = 6

/** Recipes tried without a new record before the walk starts again from one of the best. */
const PATIENCE = 400

/**
 * So few greens are mostly done in a day or two: then the last finish leads the polishing, else the mean. Their orders are soon all walked, and walks end where others did: then
 * the next begins at any order.
 */
const FEW_GREENS = 6

/** Good recipes kept to start again from, and moves made from one at once when it is. */
const ELITE = 5
const KICKS = 4

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

/** How a neighbour of a recipe is made, in place: returns the first place of the order for which more than the order has changed. */
type MakeNeighbour = (recipe: Recipe) => number

/** Walks from the current recipe, whose schedule was judged last, until nothing better turns up for long; returns the least guide and writes its recipe over `current`. */
const walkFrom = (
  search: Search,
  current: Recipe,
  firstCost: number,
  makeNeighbour: MakeNeighbour,
): number => {
  const { budget, made, run } = search
  const candidate = run.recipe
  const record = copyOf(search, current)
  // First place of the order from which the schedule that stands differs from the current recipe in more than its order.
  let stale = 0
  const propose = (): number => {
    copyRecipe(current, candidate)
    const from = makeNeighbour(candidate)
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
 * moves away from one of the best (iterated local search with a small elite set). In between, single steps are polished.
 */
export const searchRecipes = (search: Search, orders: readonly (readonly number[])[]): void => {
  const { budget, near, run } = search
  const random = randomOf(search.seed)
  const elite = eliteOf<Recipe>(ELITE, isSameOrder)
  const makeNeighbour: MakeNeighbour = (recipe) => change(recipe, random, near !== undefined)
  const isFew = near === undefined && run.begun.movable.length <= FEW_GREENS
  let cost = begin(search, orders)
  const current = copyOf(search, run.recipe)
  while (!budget.isOver() && current.order.length > 0) {
    const least = walkFrom(search, current, cost, makeNeighbour)
    const isNew = elite.offer(least, copyOf(search, current))
    if (near === undefined && !budget.isOver()) polish(search, current, random, isFew ? 'last' : 'mean')
    copyRecipe(elite.any(random) ?? current, current)
    if (isFew && !isNew) shuffle(current.order, 0, current.order.length - 1, random)
    for (let kick = 0; kick < KICKS; kick++) makeNeighbour(current)
    arrange(run, current.order)
    if (budget.isOver()) return
    copyRecipe(current, run.recipe)
    forget(search.made, 0)
    cost = judge(search)
  }
}
