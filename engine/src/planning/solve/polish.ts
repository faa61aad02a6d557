import { recordToRecord } from '../search/acceptance.ts'
import type { Random } from '../search/random.ts'
import { walk } from '../search/walk.ts'
import { forget, forgetList, listSchedule } from './generate.ts'
import { newLaid, readLaid } from './laid.ts'
import { changeList } from './list-moves.ts'
import { finishGuide, polishGuide } from './objective.ts'
import { copyRecipe, type Recipe } from './recipe.ts'
import { copyOf, cutBehindLast, cutNothing, isWhole, judge, type Guide, type Search } from './trial.ts'

/** Lists tried without a new record before a polishing ends. */
const PATIENCE = 1000

/** How far behind the record the current list may fall: a minute of the last finish, or one and a half of the mean. */
const LAST_SLACK = 16
const MEAN_SLACK = 6

/** What a polishing is led by: the last finish, or the mean of the greens' finishes, which brings a whole day nearer to being spared. */
export type PolishBy = 'last' | 'mean'

const guideBy = (by: PolishBy): Guide => (by === 'last' ? polishGuide : finishGuide)

/** Generates a recipe with a list from nothing and walks on from it. */
const walkList = (search: Search, current: Recipe, random: Random, by: PolishBy): void => {
  const { budget, made, run } = search
  const guideOf = guideBy(by)
  const { ground } = run
  const candidate = run.recipe
  const all = current.listed
  const laid = newLaid(ground)
  copyRecipe(current, candidate)
  forgetList(made, 0)
  const firstCost = judge(search, guideOf)
  readLaid(run, laid)
  cutBehindLast(search)
  // First place of the list from which the schedule that stands differs from the current recipe in more than its list.
  let stale = 0
  const propose = (): number => {
    copyRecipe(current, candidate)
    const from = changeList(run, candidate, laid, random, by === 'last')
    forgetList(made, Math.min(from, stale))
    stale = from
    return judge(search, guideOf)
  }
  const take = (): void => {
    copyRecipe(candidate, current)
    readLaid(run, laid)
    stale = all
    // Greens that were placed whole go back into the list where they have come to lie.
    if (candidate.listed < all) listSchedule(run, current)
  }
  const keep = (): void => cutBehindLast(search)
  const accepts = recordToRecord(by === 'last' ? LAST_SLACK : MEAN_SLACK)
  walk({ propose, take, keep }, { budget, accepts, firstCost, patience: PATIENCE })
  cutNothing(search)
}

/**
 * Polishes the schedule of a recipe: its steps are listed in order of their starts, and a walk changes that list, step by step, where one waits for another. What is found is kept as the best of the
 * search; the recipe stays as it is. Schedules that leave greens out are not polished.
 */
export const polish = (search: Search, from: Recipe, random: Random, by: PolishBy): void => {
  const { made, run } = search
  const current = copyOf(search, from)
  copyRecipe(current, run.recipe)
  forget(made, 0)
  judge(search, guideBy(by))
  if (!isWhole(search)) return
  listSchedule(run, current)
  if (current.listed > 0) walkList(search, current, random, by)
}
