import type { Random } from '../search/random.ts'
import type { Ground } from './ground.ts'
import { waitedFor, type Laid } from './laid.ts'
import type { Recipe } from './recipe.ts'
import type { Run } from './run.ts'

/** Steps looked back on along a chain of waits. */
const MOST_BACK = 40

const placeOf = ({ list, listed }: Recipe, step: number): number => {
  for (let i = 0; i < listed; i++) if (list[i] === step) return i
  return -1
}

/** Any of the greens that have steps left. */
const anyGreen = ({ movable }: Run['begun'], random: Random): number =>
  movable[random.below(movable.length)] ?? 0

/** One of the steps that nothing of the schedule finishes later than; or the last of any green. */
const lateStep = ({ begun, ground }: Run, laid: Laid, random: Random): number => {
  if (random.below(4) === 0) return (ground.firstStep[anyGreen(begun, random) + 1] ?? 1) - 1
  let last = -1
  for (let step = 0; step < ground.steps; step++)
    if (last < 0 || (laid.end[step] ?? -1) > (laid.end[last] ?? -1)) last = step
  return last
}

/** One of the waits on the way back from a late step: the second waited for the first, a step of another green. Null where there is none. */
const drawWait = (run: Run, laid: Laid, random: Random): readonly [number, number] | null => {
  const { ground } = run
  let drawn: readonly [number, number] | null = null
  let step = lateStep(run, laid, random)
  let seen = 0
  for (let back = 0; back < MOST_BACK && step >= 0 && (laid.end[step] ?? -1) >= 0; back++) {
    const green = ground.greenOfStep[step] ?? 0
    const other = waitedFor(ground, laid, step, random)
    if (other < 0) {
      step = step === ground.firstStep[green] ? -1 : step - 1
      continue
    }
    if (ground.greenOfStep[other] !== green && random.below(++seen) === 0) drawn = [other, step]
    step = other
  }
  return drawn
}

/** Puts the steps of the green of the one at `to` that lie between, and itself, right before the place `from`. */
const bringForward = ({ greenOfStep }: Ground, { list }: Recipe, from: number, to: number): void => {
  const green = greenOfStep[list[to] ?? 0]
  let front = from
  for (let i = from; i <= to; i++) {
    const step = list[i] ?? 0
    if (greenOfStep[step] !== green) continue
    for (let j = i; j > front; j--) list[j] = list[j - 1] ?? 0
    list[front++] = step
  }
}

/** Puts the step at `from`, and those of its green that lie between, right behind the place `to`. */
const putBack = ({ greenOfStep }: Ground, { list }: Recipe, from: number, to: number): void => {
  const green = greenOfStep[list[from] ?? 0]
  let back = to
  for (let i = to; i >= from; i--) {
    const step = list[i] ?? 0
    if (greenOfStep[step] !== green) continue
    for (let j = i; j < back; j++) list[j] = list[j + 1] ?? 0
    list[back--] = step
  }
}

const wishMachine = (ground: Ground, recipe: Recipe, step: number, random: Random): void => {
  const first = ground.choiceFirst[step] ?? 0
  const pick = first + random.below((ground.choiceFirst[step + 1] ?? 0) - first)
  recipe.machine[step] = (ground.choiceMachine[pick] ?? 0) + 1
}

const wishPerson = (ground: Ground, recipe: Recipe, step: number, random: Random): void => {
  const operation = ground.operation[step] ?? 0
  const first = ground.skillFirst[operation] ?? 0
  const pick = first + random.below((ground.skillFirst[operation + 1] ?? 0) - first + 1)
  recipe.person[step] = pick === ground.skillFirst[operation + 1] ? 0 : (ground.skilled[pick] ?? 0) + 1
}

/** Takes a green out of the list, so that it is placed whole when all others are in. Returns its first place. */
const takeOut = ({ greenOfStep }: Ground, recipe: Recipe, green: number): number => {
  const { list, listed } = recipe
  let first = listed
  let to = 0
  for (let i = 0; i < listed; i++) {
    const step = list[i] ?? 0
    if (greenOfStep[step] === green) {
      if (i < first) first = i
      continue
    }
    list[to++] = step
  }
  recipe.listed = to
  return first
}

const changeWish = (ground: Ground, recipe: Recipe, step: number, random: Random): number => {
  const machines = (ground.choiceFirst[step + 1] ?? 0) - (ground.choiceFirst[step] ?? 0)
  if (machines > 1 && random.below(3) === 0) wishMachine(ground, recipe, step, random)
  else wishPerson(ground, recipe, step, random)
  return placeOf(recipe, step)
}

/** Moves a step a few places up or down, those of its own green with it. */
const stray = (ground: Ground, recipe: Recipe, random: Random): number => {
  const from = random.below(recipe.listed)
  const far = 1 + random.below(12)
  if (random.below(2) === 0) {
    const to = Math.max(0, from - far)
    bringForward(ground, recipe, to, from)
    return to
  }
  putBack(ground, recipe, from, Math.min(recipe.listed - 1, from + far))
  return from
}

/**
 * Lets one green overtake another: from one of the other's steps on, all its steps come before that one, or that one and what the other does until then behind its last. Returns the first
 * place that has changed, -1 where the green drawn has no step behind.
 */
const overtake = ({ begun, ground }: Run, recipe: Recipe, random: Random): number => {
  const { greenOfStep } = ground
  const { list, listed } = recipe
  const from = random.below(listed)
  const green = anyGreen(begun, random)
  if (green === greenOfStep[list[from] ?? 0]) return -1
  let to = listed - 1
  while (to > from && greenOfStep[list[to] ?? 0] !== green) to--
  if (to === from) return -1
  if (random.below(2) === 0) bringForward(ground, recipe, from, to)
  else putBack(ground, recipe, from, to)
  return from
}

/** Makes a neighbour of a recipe with a list, in place. Returns the first place of the list that has changed. */
export const changeList = (
  run: Run,
  recipe: Recipe,
  laid: Laid,
  random: Random,
  mayOvertake: boolean,
): number => {
  const { begun, ground } = run
  const overtaken = mayOvertake && random.below(5) === 0 ? overtake(run, recipe, random) : -1
  if (overtaken >= 0) return overtaken
  const kind = random.below(40)
  if (kind < 6) {
    let from = recipe.listed
    for (let count = 1 + random.below(2); count > 0; count--)
      from = Math.min(from, takeOut(ground, recipe, anyGreen(begun, random)))
    return from
  }
  if (kind < 10) return stray(ground, recipe, random)
  if (kind < 14) return changeWish(ground, recipe, recipe.list[random.below(recipe.listed)] ?? 0, random)
  const wait = drawWait(run, laid, random)
  if (wait === null) return stray(ground, recipe, random)
  const [first, second] = wait
  if (kind < 22) return changeWish(ground, recipe, random.below(2) === 0 ? first : second, random)
  const a = placeOf(recipe, first)
  const b = placeOf(recipe, second)
  if (a < 0 || b < 0 || a > b) return stray(ground, recipe, random)
  if (random.below(2) === 0) bringForward(ground, recipe, a, b)
  else putBack(ground, recipe, a, b)
  return a
}
