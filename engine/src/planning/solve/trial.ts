import { NEVER } from '../spans.ts'
import type { Budget } from '../search/budget.ts'
import { decode } from './decode.ts'
import { generate, type Made } from './generate.ts'
import { judgeGreens, judgePeople, judgeTravel, type Judged } from './judge.ts'
import { compareObjectives, finishGuide, leadCost, nearGuide, type Objective } from './objective.ts'
import type { Near } from './options.ts'
import { haveBreaks } from './person.ts'
import { copyRecipe, plainRecipe, type Recipe } from './recipe.ts'
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

/** How much later than its record a walk that cuts lets a schedule be over before it is given up, minutes. */
const CUT_SLACK_MIN = 1

const leftOf = (made: Made): readonly number[] =>
  [...made.ends].flatMap((end, green) => (end < 0 ? [green] : []))

/** What leads a walk: all that comes before the finish, then the finishes; whole numbers, less is better. */
export type Guide = typeof finishGuide

/** Generates the recipe of the run, pays for it, keeps it when it is the best, and returns its guide. */
export const judge = (search: Search, guideOf: Guide = finishGuide): number => {
  const { best, budget, made, near, run, stood } = search
  run.placed = 0
  generate(run, made)
  budget.spend(Math.max(1, run.placed))
  const judged = judgeGreens(run, made, stood.finishMin)
  search.last = judged
  const penalty = near === undefined ? 0 : near.penalty(decode(run))
  const guide = near === undefined ? guideOf(judged, run.ground.workMin) : nearGuide(judged, penalty)
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
  // Breaks that were lost before now are no matter of the search.
  const isBest =
    best === null ||
    (compareObjectives(found, best) < 0 && (run.ground.problem.committed !== undefined || haveBreaks(run)))
  if (isBest) {
    const recipe = plainRecipe(run.ground, run.recipe.order)
    copyRecipe(run.recipe, recipe)
    search.best = { ...found, run, recipe, left: leftOf(made) }
  }
  search.onSchedule(isBest)
  return guide
}

/** A recipe of its own. */
export const copyOf = ({ run }: Search, recipe: Recipe): Recipe => {
  const copy = plainRecipe(run.ground, recipe.order)
  copyRecipe(recipe, copy)
  return copy
}

/** Whether the schedule judged last leaves no green out that anybody could do. */
export const isWhole = ({ last, run }: Search): boolean =>
  last.unfinishedGreens ===
  run.begun.hopeless.reduce((sum, one) => sum + one, run.ground.problem.excluded.length)

/** From now on gives up what is over well after the schedule judged last. Only where that one leaves nothing out: then one that was given up is never the best. */
export const cutBehindLast = (search: Search): void => {
  if (isWhole(search)) search.run.cutoffMin = search.last.finishMin + CUT_SLACK_MIN
}

/** Makes all schedules whole again. */
export const cutNothing = ({ run }: Search): void => {
  run.cutoffMin = NEVER
}
