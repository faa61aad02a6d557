import type { Random } from '../search/random.ts'
import type { Ground } from './ground.ts'
import { changeOrder } from './moves.ts'
import type { Recipe } from './recipe.ts'

/** Most minutes that a step is put off: about the longest step of a chain, so that another one may go first. */
const MOST_HOLD_MIN = 60

/** One of the indices from `first` up to `last`, or -1, each as likely. */
const oneOf = (first: number, last: number, random: Random): number => {
  const pick = first + random.below(last - first + 1)
  return pick === last ? -1 : pick
}

const hold = (recipe: Recipe, step: number, random: Random): void => {
  const isHeld = (recipe.holdMin[step] ?? 0) > 0
  recipe.holdMin[step] = isHeld && random.below(2) === 0 ? 0 : 1 + random.below(MOST_HOLD_MIN)
}

const wishMachine = (ground: Ground, recipe: Recipe, step: number, random: Random): void => {
  const pick = oneOf(ground.choiceFirst[step] ?? 0, ground.choiceFirst[step + 1] ?? 0, random)
  recipe.machine[step] = pick < 0 ? 0 : (ground.choiceMachine[pick] ?? 0) + 1
}

/** Every other time for all steps of this kind that follow on the green too: the loads of a dressing, the passes of a tining. */
const wishPerson = (ground: Ground, recipe: Recipe, step: number, random: Random): void => {
  const operation = ground.operation[step] ?? 0
  const pick = oneOf(ground.skillFirst[operation] ?? 0, ground.skillFirst[operation + 1] ?? 0, random)
  const wish = pick < 0 ? 0 : (ground.skilled[pick] ?? 0) + 1
  const last = random.below(2) === 0 ? step : (ground.firstStep[(ground.greenOfStep[step] ?? 0) + 1] ?? 0) - 1
  for (let i = step; i <= last && ground.operation[i] === operation; i++) recipe.person[i] = wish
}

/** Changes what is wished for a single step, now and then the order, in place. Returns the first place of the order for which more than the order has changed. */
export const changeSteps = (ground: Ground, recipe: Recipe, random: Random): number => {
  const kind = random.below(12)
  if (kind >= 10 || ground.steps === 0) {
    if (recipe.order.length > 1) changeOrder(recipe.order, random)
    return recipe.order.length
  }
  const step = random.below(ground.steps)
  if (kind < 5) hold(recipe, step, random)
  else if (kind < 7) wishMachine(ground, recipe, step, random)
  else wishPerson(ground, recipe, step, random)
  return recipe.order.indexOf(ground.greenOfStep[step] ?? 0)
}
