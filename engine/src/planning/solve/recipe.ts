import { OPERATIONS } from '../operations.ts'
import type { Ground } from './ground.ts'

/** How near a schedule keeps to the one it is hinted at: not at all, its machines and people, its starts as well. */
export type Follow = 0 | 1 | 2

/** What a schedule is generated from: the search changes it, the generator obeys it. Whole numbers. */
export type Recipe = {
  /** Greens in the order in which they are placed. */
  readonly order: Int32Array
  /** Row `person * operations + operation`: minutes for which the others are preferred. */
  readonly shun: Int32Array
  /** Hundredths of a minute that a slower machine is charged for each minute that it takes longer. */
  slowPercent: number
  follow: Follow
}

/** A recipe with no wishes but its order. */
export const plainRecipe = (ground: Ground, order: ArrayLike<number>): Recipe => ({
  order: Int32Array.from(order),
  shun: new Int32Array(ground.people * OPERATIONS.length),
  slowPercent: 50,
  follow: 0,
})

/** Writes one recipe over another. */
export const copyRecipe = (from: Recipe, to: Recipe): void => {
  to.order.set(from.order)
  to.shun.set(from.shun)
  to.slowPercent = from.slowPercent
  to.follow = from.follow
}
