import type { Random } from '../search/random.ts'
import type { Network } from './network.ts'

/** Activities compared at each step of a sample; the one with the least latest start wins. */
const RIVALS = 2

/** Makes orders to begin with. */
export type Sampler = (random: Random, order: Int32Array) => void

/**
 * Random orders that lean on the latest start rule: at each step a small tournament among the activities whose forerunners all stand. (The rule: Kolisch, 'Efficient
 * priority rules for the resource-constrained project scheduling problem', Journal of Operations Management 14, 1996; the tournament is ours.)
 */
export const samplerOf = ({ count, forward }: Network): Sampler => {
  const onward = Array.from({ length: count }, (): number[] => [])
  for (let activity = 0; activity < count; activity++)
    for (let arc = forward.first[activity]!; arc < forward.first[activity + 1]!; arc++)
      onward[forward.from[arc]!]!.push(activity)
  const waiting = new Int32Array(count)
  const ready = new Int32Array(count)
  return (random, order) => {
    let open = 0
    for (let activity = 0; activity < count; activity++) {
      waiting[activity] = forward.first[activity + 1]! - forward.first[activity]!
      if (waiting[activity] === 0) ready[open++] = activity
    }
    for (let at = 0; at < count; at++) {
      let slot = random.below(open)
      for (let rival = 1; rival < RIVALS; rival++) {
        const other = random.below(open)
        if (forward.tails[ready[other]!]! > forward.tails[ready[slot]!]!) slot = other
      }
      const activity = ready[slot]!
      ready[slot] = ready[--open]!
      order[at] = activity
      for (const next of onward[activity]!) if (--waiting[next]! === 0) ready[open++] = next
    }
  }
}
