import { NEVER } from '../spans.ts'
import { recordToRecord } from '../search/acceptance.ts'
import type { Budget } from '../search/budget.ts'
import { eliteOf, type Elite } from '../search/elite.ts'
import { randomOf, type Random } from '../search/random.ts'
import { walk } from '../search/walk.ts'
import { balancedShun } from './balance.ts'
import { decode } from './decode.ts'
import { arrange, forget, generate, type Made } from './generate.ts'
import { judgeGreens, judgePeople, judgeTravel, type Judged } from './judge.ts'
import { change } from './moves.ts'
import { changeSteps } from './step-moves.ts'
import {
  compareObjectives,
  finishGuide,
  leadCost,
  nearGuide,
  polishGuide,
  type Objective,
} from './objective.ts'
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
  /** The schedule judged last. */
  last: Judged
}

/** How far behind the record a current recipe may fall, in quarters of a minute of the guide (record-to-record travel, Dueck 1993). */
const RECORD_SLACK = 6

/** Recipes tried without a new record before the walk starts again from one of the best. */
const PATIENCE = 400

/** The same of the polishing, in sixteenths of a minute; and the recipes that it tries in vain. */
const POLISH_SLACK = 16
const POLISH_PATIENCE = 2000

/** How much later than its record the polishing lets a schedule be over before it is given up, minutes. */
const CUT_SLACK_MIN = 1

/** So few greens that their orders are soon all tried: then every walk is polished, and its result so many times more from a few changes away. */
const FEW_GREENS = 5
const FEW_ROUNDS = 16

/** Of more greens, every so many walks one is polished, once. */
const POLISH_EVERY = 6

/** Good recipes kept to start again from, and moves made from one at once when it is. */
const ELITE = 5
const KICKS = 4

const leftOf = (made: Made): readonly number[] =>
  [...made.ends].flatMap((end, green) => (end < 0 ? [green] : []))

/** Generates the recipe of the run, pays for it, keeps it when it is the best, and returns its guide. */
const judge = (search: Search, guideOf = finishGuide): number => {
  const { best, budget, made, near, run, stood } = search
  run.placed = 0
  generate(run, made)
  budget.spend(Math.max(1, run.placed))
  const judged = judgeGreens(run, made, stood.finishMin)
  search.last = judged
  const penalty = near === undefined ? 0 : near.penalty(decode(run))
  const guide = near === undefined ? guideOf(judged, run.ground.greens) : nearGuide(judged, penalty)
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

/** One kind of walk: how a neighbour is made (returns the first place of the order for which more than the order has changed), and what leads it. */
type Phase = {
  readonly change: (recipe: Recipe) => number
  readonly guideOf: typeof finishGuide
  readonly slack: number
  readonly patience: number
  /** Whether schedules that can't come near the record are given up before they are whole. */
  readonly cuts: boolean
}

/** Gives up what is over well after the schedule judged last. Only where that one leaves nothing out: then one that was given up is never the best. */
const setCutoff = ({ last, run }: Search, { cuts }: Phase): void => {
  const isWhole = last.unfinishedGreens === run.ground.problem.excluded.length
  if (cuts && isWhole) run.cutoffMin = last.finishMin + CUT_SLACK_MIN
}

/** Walks from the current recipe, whose schedule was judged last, until nothing better turns up for long; returns the least guide and writes its recipe over `current`. */
const walkFrom = (search: Search, current: Recipe, firstCost: number, phase: Phase): number => {
  const { budget, made, run } = search
  const candidate = run.recipe
  const record = copyOf(search, current)
  // First place of the order from which the schedule that stands differs from the current recipe in more than its order.
  let stale = 0
  const propose = (): number => {
    copyRecipe(current, candidate)
    const from = phase.change(candidate)
    arrange(run, candidate.order)
    forget(made, Math.min(from, stale))
    stale = from
    return judge(search, phase.guideOf)
  }
  const take = (): void => {
    copyRecipe(candidate, current)
    stale = current.order.length
  }
  const keep = (): void => {
    copyRecipe(candidate, record)
    setCutoff(search, phase)
  }
  setCutoff(search, phase)
  const accepts = recordToRecord(phase.slack)
  const cost = walk({ propose, take, keep }, { budget, accepts, firstCost, patience: phase.patience })
  run.cutoffMin = NEVER
  copyRecipe(record, current)
  return cost
}

/** Generates a recipe from nothing and walks on from it; writes the best over it and returns its guide. */
const walkAnew = (search: Search, current: Recipe, phase: Phase): number => {
  arrange(search.run, current.order)
  copyRecipe(current, search.run.recipe)
  forget(search.made, 0)
  return walkFrom(search, current, judge(search, phase.guideOf), phase)
}

/** Polishes the single steps of a recipe; where there are few greens, again and again from a few changes away. What is found is kept as the best of the search. */
const polish = (search: Search, from: Recipe, random: Random, polished: Elite<Recipe>): void => {
  const { budget, run } = search
  const phase: Phase = {
    change: (recipe) => changeSteps(run.ground, recipe, random),
    guideOf: polishGuide,
    slack: POLISH_SLACK,
    patience: POLISH_PATIENCE,
    cuts: true,
  }
  const current = copyOf(search, from)
  const rounds = run.ground.greens <= FEW_GREENS ? FEW_ROUNDS : 0
  for (let round = 0; round <= rounds && !budget.isOver(); round++) {
    if (round > 0) copyRecipe(polished.any(random) ?? current, current)
    for (let kick = 0; round > 0 && kick < KICKS; kick++) phase.change(current)
    const least = walkAnew(search, current, phase)
    polished.offer(least, copyOf(search, current))
  }
}

/**
 * Searches through recipes until the budget is over: constructive orders first, then walks by record-to-record travel; when one has run dry, the next starts a few
 * moves away from one of the best (iterated local search with a small elite set). In between, single steps are polished.
 */
export const searchRecipes = (search: Search, orders: readonly (readonly number[])[]): void => {
  const { budget, near, run } = search
  const random = randomOf(search.seed)
  const elite = eliteOf<Recipe>(ELITE, isSameOrder)
  const polished = eliteOf<Recipe>(ELITE, () => false)
  const phase: Phase = {
    change: (recipe) => change(recipe, random, near !== undefined),
    guideOf: finishGuide,
    slack: RECORD_SLACK,
    patience: PATIENCE,
    cuts: false,
  }
  const polishEvery = run.ground.greens <= FEW_GREENS ? 1 : POLISH_EVERY
  let cost = begin(search, orders)
  const current = copyOf(search, run.recipe)
  for (let walks = 1; !budget.isOver() && current.order.length > 0; walks++) {
    const least = walkFrom(search, current, cost, phase)
    elite.offer(least, copyOf(search, current))
    if (near === undefined && walks % polishEvery === 0) polish(search, current, random, polished)
    copyRecipe(elite.any(random) ?? current, current)
    for (let kick = 0; kick < KICKS; kick++) phase.change(current)
    arrange(run, current.order)
    if (budget.isOver()) return
    copyRecipe(current, run.recipe)
    forget(search.made, 0)
    cost = judge(search)
  }
}
