import type { Random } from '../search/random.ts'
import { crossoverOf } from './crossover.ts'
import { draftOf, type Draft, type Generator } from './generator.ts'
import type { Network } from './network.ts'
import { reshuffleOf } from './reshuffle.ts'

/** Sets the order and direction of a child from two parents; tells the position from which it must be built. */
export type Breed = (outer: Draft, inner: Draft, child: Draft) => number

/**
 * Makes children: both parents are read in one direction of time, drawn by chance, the middle of the one is put into the other, and of so many
 * children in a hundred a stretch is reshuffled. Where the outer parent runs in that direction already, what the child keeps of its beginning is not built again.
 */
export const breedOf = (
  network: Network,
  generator: Generator,
  { random, reshuffledPercent }: { readonly random: Random; readonly reshuffledPercent: number },
): Breed => {
  const { count } = network
  const cross = crossoverOf(count)
  const reshuffle = reshuffleOf(count)
  const outerTurned = draftOf(count)
  const innerTurned = draftOf(count)
  const facing = (draft: Draft, backward: boolean, turned: Draft): Draft => {
    if (draft.backward === backward) return draft
    generator.turn(draft, turned)
    return turned
  }
  return (outer, inner, child) => {
    const backward = random.below(2) === 1
    const length = Math.floor(count / 4) + random.below(Math.max(1, Math.floor(count / 2)))
    const from = random.below(count - length)
    const outside = facing(outer, backward, outerTurned)
    const inside = facing(inner, backward, innerTurned)
    cross(outside.order, inside.order, { from, until: from + length }, child.order)
    child.backward = backward
    const reshuffled =
      random.below(100) < reshuffledPercent
        ? reshuffle(random, child.order, backward ? network.backward : network.forward)
        : count
    if (outside !== outer) return 0
    child.starts.set(outer.starts)
    let kept = Math.min(from, reshuffled)
    while (kept < count && child.order[kept] === outer.order[kept]) kept++
    return kept
  }
}
