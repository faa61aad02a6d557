import { OPERATIONS } from '../operations.ts'
import type { Ground } from './ground.ts'

/** How near a schedule keeps to the one it is hinted at: not at all, its machines and people, its starts as well. */
export type Follow = 0 | 1 | 2

/** What a machine or a person that is wished for a step is preferred by, minutes. */
export const WISH_MIN = 60

/** What a schedule is generated from: the search changes it, the generator obeys it. Whole numbers. */
export type Recipe = {
  /** Greens in the order in which they are placed. */
  readonly order: Int32Array
  /** Row `person * operations + operation`: minutes for which the others are preferred. */
  readonly shun: Int32Array
  /** Hundredths of a minute that a slower machine is charged for each minute that it takes longer. */
  slowPercent: number
  /** By step: the machine (and the person who brings it) that is preferred to all others, one more than its index; 0 for none. */
  readonly machine: Uint8Array
  readonly person: Uint8Array
  follow: Follow
  /**
   * Single steps in the order in which they are placed, the first `listed` of them; then greens that are not among them follow whole, by `order`. With none listed, all greens are placed whole.
   */
  readonly list: Int32Array
  listed: number
  /** By green in the list: the window in which it is opened and finished, and which attempt, `window * ATTEMPTS + attempt`. */
  readonly tried: Int32Array
}

/** More than there are attempts. */
export const ATTEMPTS = 8

/** A recipe with no wishes but its order. */
export const plainRecipe = (ground: Ground, order: ArrayLike<number>): Recipe => ({
  order: Int32Array.from(order),
  shun: new Int32Array(ground.people * OPERATIONS.length),
  slowPercent: 50,
  machine: new Uint8Array(ground.steps),
  person: new Uint8Array(ground.steps),
  follow: 0,
  list: new Int32Array(ground.steps),
  listed: 0,
  tried: new Int32Array(ground.greens),
})

/** Writes one recipe over another. */
export const copyRecipe = (from: Recipe, to: Recipe): void => {
  to.order.set(from.order)
  to.shun.set(from.shun)
  to.slowPercent = from.slowPercent
  to.machine.set(from.machine)
  to.person.set(from.person)
  to.follow = from.follow
  if (from.listed > 0) {
    to.list.set(from.list)
    to.tried.set(from.tried)
  }
  to.listed = from.listed
}
