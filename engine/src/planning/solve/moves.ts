import type { Random } from '../search/random.ts'
import type { Recipe } from './recipe.ts'

/** Most minutes for which others are preferred to a person. */
const MOST_SHUN_MIN = 30

const swap = (order: Int32Array, a: number, b: number): void => {
  const green = order[a] ?? 0
  order[a] = order[b] ?? 0
  order[b] = green
}

const moveTo = (order: Int32Array, from: number, to: number): void => {
  const green = order[from] ?? 0
  if (from < to) order.copyWithin(from, from + 1, to + 1)
  else order.copyWithin(to + 1, to, from)
  order[to] = green
}

/** Puts the greens of a stretch of the order, both ends included, into any order, each as likely. */
export const shuffle = (order: Int32Array, from: number, to: number, random: Random): void => {
  for (let i = to; i > from; i--) swap(order, i, from + random.below(i - from + 1))
}

/** A place in the last third: those greens keep the last day long, and what stands before them need not be made again. */
const fromTail = (places: number, random: Random): number =>
  places - 1 - random.below(1 + Math.floor(places / 3))

/** Changes the order: one green elsewhere, two exchanged, a stretch turned round or shuffled. */
export const changeOrder = (order: Int32Array, random: Random): void => {
  const a = random.below(5) < 2 ? fromTail(order.length, random) : random.below(order.length)
  const b = random.below(order.length)
  const kind = random.below(10)
  if (kind < 4) moveTo(order, a, b)
  else if (kind < 8) swap(order, a, b)
  else if (kind < 9) order.subarray(Math.min(a, b), Math.max(a, b) + 1).reverse()
  else shuffle(order, a, Math.min(order.length - 1, a + 4), random)
}

/** Changes for which work a person is taken rather than others. */
const changeShun = (recipe: Recipe, random: Random): void => {
  const at = random.below(recipe.shun.length)
  recipe.shun[at] = random.below(3) === 0 ? 0 : random.below(MOST_SHUN_MIN + 1)
}

/**
 * Makes a neighbour of a recipe, in place; near another plan also by keeping more or less of it. Returns the first place of the order for which more than the order
 * has changed: the number of greens where nothing but the order has.
 */
export const change = (recipe: Recipe, random: Random, isNear: boolean): number => {
  const kind = random.below(40)
  if (isNear && kind < 8) {
    recipe.follow = recipe.follow === 2 ? 1 : 2
    return 0
  }
  if (kind === 8) {
    recipe.slowPercent = random.below(11) * 20
    return 0
  }
  if (kind > 33) {
    changeShun(recipe, random)
    return 0
  }
  if (recipe.order.length > 1) changeOrder(recipe.order, random)
  return recipe.order.length
}
