import { raise, REASON, type Bounds } from './bounds.ts'

/**
 * Learnt nogoods: sets of facts (side, least) that no schedule makes true together. Each rests in `data` as a head of three numbers (count of facts,
 * depth measure, when it last was of use) and its facts, two numbers each; its place is the nogood's name. The first two facts are watched
 * (Moskewicz, Madigan, Zhao, Zhang and Malik 2001): while one of them is open and the other not yet true, there is nothing to do.
 */
export type Nogoods = {
  data: Int32Array
  size: number
  count: number
  /** By side: pairs (nogood, least) of watched facts. */
  readonly watch: Int32Array[]
  readonly watchSize: Int32Array
}

/** Numbers before the facts of a nogood. */
export const NOGOOD_HEAD = 3

/** No nogoods yet, over so many sides. */
export const nogoodsOf = (sides: number): Nogoods => ({
  data: new Int32Array(4096),
  size: 0,
  count: 0,
  watch: Array.from({ length: sides }, () => new Int32Array(8)),
  watchSize: new Int32Array(sides),
})

const watchFact = (nogoods: Nogoods, side: number, nogood: number, least: number): void => {
  const at = nogoods.watchSize[side]!
  let list = nogoods.watch[side]!
  if (at + 2 > list.length) {
    const wider = new Int32Array(2 * list.length)
    wider.set(list)
    list = wider
    nogoods.watch[side] = list
  }
  list[at] = nogood
  list[at + 1] = least
  nogoods.watchSize[side] = at + 2
}

/**
 * Learns a nogood of at least two facts, the two to watch first. `facts` holds (side, least) pairs.
 *
 * @returns its name.
 */
export const learn = (
  nogoods: Nogoods,
  facts: Int32Array,
  count: number,
  depth: number,
  now: number,
): number => {
  const needed = nogoods.size + NOGOOD_HEAD + 2 * count
  if (needed > nogoods.data.length) {
    const wider = new Int32Array(Math.max(needed, 2 * nogoods.data.length))
    wider.set(nogoods.data)
    nogoods.data = wider
  }
  const nogood = nogoods.size
  const { data } = nogoods
  data[nogood] = count
  data[nogood + 1] = depth
  data[nogood + 2] = now
  for (let at = 0; at < 2 * count; at++) data[nogood + NOGOOD_HEAD + at] = facts[at]!
  nogoods.size = needed
  nogoods.count++
  watchFact(nogoods, facts[0]!, nogood, facts[1]!)
  watchFact(nogoods, facts[2]!, nogood, facts[3]!)
  return nogood
}

/** Puts a fact that is not true yet in the watched place; false when all the others are true. */
const moveWatch = (nogoods: Nogoods, bounds: Bounds, nogood: number, watched: number): boolean => {
  const { data } = nogoods
  const end = nogood + NOGOOD_HEAD + 2 * data[nogood]!
  for (let at = nogood + NOGOOD_HEAD + 4; at < end; at += 2) {
    const side = data[at]!
    const least = data[at + 1]!
    if (bounds.value[side]! >= least) continue
    data[at] = data[watched]!
    data[at + 1] = data[watched + 1]!
    data[watched] = side
    data[watched + 1] = least
    watchFact(nogoods, side, nogood, least)
    return true
  }
  return false
}

/** Looks at the nogoods that watch a fact of a side whose bound rose; the last open fact of a nogood is made false. False on a clash. */
export const followNogoods = (nogoods: Nogoods, bounds: Bounds, side: number): boolean => {
  const list = nogoods.watch[side]!
  const { data } = nogoods
  const { value, seen } = bounds
  const bound = value[side]!
  const before = seen[side]!
  const size = nogoods.watchSize[side]!
  let kept = 0
  let isClean = true
  for (let at = 0; at < size; at += 2) {
    const nogood = list[at]!
    const least = list[at + 1]!
    list[kept] = nogood
    list[kept + 1] = least
    kept += 2
    if (least > bound || least <= before || !isClean) continue
    const first = nogood + NOGOOD_HEAD
    const watched = data[first] === side ? first : first + 2
    const other = watched === first ? first + 2 : first
    const otherSide = data[other]!
    const opposite = 1 - data[other + 1]!
    if (value[otherSide ^ 1]! >= opposite) continue
    if (moveWatch(nogoods, bounds, nogood, watched)) kept -= 2
    else isClean = raise(bounds, otherSide ^ 1, opposite, REASON.nogood, nogood)
  }
  nogoods.watchSize[side] = kept
  return isClean
}

/**
 * At the root: forgets nogoods that can never act again and the less useful half of the others (deep ones that were of no use for long); facts that
 * are true for good leave the rest.
 *
 * @param isWorth whether a nogood of such a depth, last of use at such a time, stays.
 */
export const forget = (
  nogoods: Nogoods,
  bounds: Bounds,
  isWorth: (depth: number, lastUse: number) => boolean,
): void => {
  const { data, size } = nogoods
  const { root } = bounds
  nogoods.watchSize.fill(0)
  nogoods.size = 0
  nogoods.count = 0
  const facts = new Int32Array(2 * bounds.value.length)
  for (let nogood = 0, next = 0; nogood < size; nogood = next) {
    next = nogood + NOGOOD_HEAD + 2 * data[nogood]!
    const depth = data[nogood + 1]!
    const lastUse = data[nogood + 2]!
    let count = 0
    let canAct = isWorth(depth, lastUse)
    for (let at = nogood + NOGOOD_HEAD; at < next && canAct; at += 2) {
      const side = data[at]!
      const least = data[at + 1]!
      if (root[side ^ 1]! >= 1 - least) canAct = false
      else if (root[side]! < least) {
        facts[2 * count] = side
        facts[2 * count + 1] = least
        count++
      }
    }
    if (canAct && count >= 2) learn(nogoods, facts, count, depth, lastUse)
  }
}
