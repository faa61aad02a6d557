import type { Random } from '../search/random.ts'
import type { Arcs } from './network.ts'

/** Shortest stretch reshuffled, and how many activities more it may have. */
const SHORTEST = 3
const MORE = 16

/** Keys are drawn below this: far more than a stretch has activities, so that ties are rare. */
const KEYS = 1024

/** Brings a stretch of an order into another order at random; tells the position from which it may differ. */
export type Reshuffle = (random: Random, order: Int32Array, arcs: Arcs) => number

/**
 * The mutation: each activity of a random stretch draws a key, raised above the keys of what it waits for, and the stretch is sorted by keys. So every order of the
 * stretch that keeps its arcs can come out.
 */
export const reshuffleOf = (count: number): Reshuffle => {
  const keys = new Int32Array(count)
  const inStretch = new Int32Array(count)
  let turn = 0
  const keyOf = (activity: number, random: Random, { first, from }: Arcs): number => {
    let key = random.below(KEYS)
    for (let arc = first[activity]!; arc < first[activity + 1]!; arc++) {
      const before = from[arc]!
      if (inStretch[before] === turn && keys[before]! >= key) key = keys[before]! + 1
    }
    return key
  }
  return (random, order, arcs) => {
    turn++
    const length = Math.min(count, SHORTEST + random.below(MORE))
    const start = random.below(count - length + 1)
    for (let at = start; at < start + length; at++) {
      const activity = order[at]!
      const key = keyOf(activity, random, arcs)
      keys[activity] = key
      inStretch[activity] = turn
      let slot = at
      for (; slot > start && keys[order[slot - 1]!]! > key; slot--) order[slot] = order[slot - 1]!
      order[slot] = activity
    }
    return start
  }
}
