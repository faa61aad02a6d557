/** Cuts of a two-point crossover: positions from `from` up to, not with, `until` come from the second parent. */
export type Cuts = { readonly from: number; readonly until: number }

/** Mixes two orders of the same activities into `child`. */
export type Crossover = (outer: Int32Array, inner: Int32Array, cuts: Cuts, child: Int32Array) => void

/**
 * Two-point crossover of activity lists (Hartmann, 'A competitive genetic algorithm for resource-constrained project scheduling', Naval Research Logistics 45, 1998):
 * the child begins and ends in the order of `outer`; its middle is filled in the order of `inner`. Where both orders let each activity follow its forerunners, so does the child.
 */
export const crossoverOf = (count: number): Crossover => {
  const takenIn = new Int32Array(count)
  let turn = 0
  return (outer, inner, { from, until }, child) => {
    turn++
    let filled = 0
    const take = (activity: number): void => {
      takenIn[activity] = turn
      child[filled++] = activity
    }
    while (filled < from) take(outer[filled]!)
    for (let at = 0; filled < until; at++) if (takenIn[inner[at]!] !== turn) take(inner[at]!)
    for (let at = from; filled < count; at++) if (takenIn[outer[at]!] !== turn) take(outer[at]!)
  }
}
