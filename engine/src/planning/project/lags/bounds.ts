/**
 * What a tree search knows at its present node: a lower and an upper bound of every variable, each change on a trail with its reason.
 *
 * Variables are the starts of the activities (the first ones) and the orders of pairs (0 or 1, after them). Each has two *sides*: side 2v is
 * its lower bound, side 2v + 1 its upper bound with the sign turned, so that every bound only ever rises on the way down. A *fact* (side, least)
 * says bound[side] >= least; its opposite is (side ^ 1, 1 - least).
 */
export type Bounds = {
  /** Bound of each side now. */
  readonly value: Int32Array
  /** Bound of each side at the root: true whatever is decided. */
  readonly root: Int32Array
  /** Trail entry that made the present bound of a side; -1 = it still is the first. */
  readonly last: Int32Array
  /** Bound of each side for which the nogoods were already looked at. */
  readonly seen: Int32Array
  /** Number of activities: sides below twice this belong to starts. */
  readonly activities: number
  /** The trail: one entry a change. */
  trail: Trail
  /** Entries on the trail. */
  size: number
  /** Entries that were propagated. */
  head: number
  /** Depth of decisions; 0 is the root. */
  level: number
  /** First trail entry of each level; entry 0 is unused. */
  levelStart: Int32Array
  /** Starts that became fixed since somebody last set this to 0. */
  fixed: number
  /** The change that could not be made, when `raise` told false. */
  readonly clash: { side: number; least: number; kind: number; at: number }
}

/** Columns of the trail. */
export type Trail = {
  readonly side: Int32Array
  /** Bound before the change. */
  readonly before: Int32Array
  /** Entry that had made the bound before. */
  readonly earlier: Int32Array
  readonly level: Int32Array
  /** Why: a kind of reason and a number that the kind understands. */
  readonly kind: Int32Array
  readonly at: Int32Array
}

/** Kinds of reason on the trail. */
export const REASON = { decided: 0, arc: 1, blocked: 2, nogood: 3, load: 4 } as const

const trailOf = (entries: number): Trail => ({
  side: new Int32Array(entries),
  before: new Int32Array(entries),
  earlier: new Int32Array(entries),
  level: new Int32Array(entries),
  kind: new Int32Array(entries),
  at: new Int32Array(entries),
})

/** Bounds at the root. `value` holds two sides a variable, starts of activities first. */
export const boundsOf = (value: Int32Array, activities: number): Bounds => ({
  value,
  root: value.slice(),
  last: new Int32Array(value.length).fill(-1),
  seen: value.slice(),
  activities,
  trail: trailOf(4 * value.length + 64),
  size: 0,
  head: 0,
  level: 0,
  levelStart: new Int32Array(value.length + 2),
  fixed: 0,
  clash: { side: 0, least: 0, kind: 0, at: 0 },
})

const longer = (column: Int32Array): Int32Array => {
  const wider = new Int32Array(2 * column.length)
  wider.set(column)
  return wider
}

const grow = (trail: Trail): Trail => ({
  side: longer(trail.side),
  before: longer(trail.before),
  earlier: longer(trail.earlier),
  level: longer(trail.level),
  kind: longer(trail.kind),
  at: longer(trail.at),
})

/** Raises a side to `least` (more than it is now). False when the variable has no value left: then nothing changed and `clash` tells what was tried. */
export const raise = (bounds: Bounds, side: number, least: number, kind: number, at: number): boolean => {
  const { value, last } = bounds
  const slack = -value[side ^ 1]! - least
  if (slack < 0) {
    const { clash } = bounds
    clash.side = side
    clash.least = least
    clash.kind = kind
    clash.at = at
    return false
  }
  if (bounds.size === bounds.trail.side.length) bounds.trail = grow(bounds.trail)
  const { trail } = bounds
  const entry = bounds.size++
  trail.side[entry] = side
  trail.before[entry] = value[side]!
  trail.earlier[entry] = last[side]!
  trail.level[entry] = bounds.level
  trail.kind[entry] = kind
  trail.at[entry] = at
  value[side] = least
  last[side] = entry
  if (slack === 0 && side < 2 * bounds.activities) bounds.fixed++
  return true
}

/** Opens a level with a decision: a fact that is neither true nor false yet. */
export const decide = (bounds: Bounds, side: number, least: number): void => {
  bounds.level++
  if (bounds.level >= bounds.levelStart.length) bounds.levelStart = longer(bounds.levelStart)
  bounds.levelStart[bounds.level] = bounds.size
  raise(bounds, side, least, REASON.decided, 0)
}

/** Takes the last entry off the trail. */
export const pop = (bounds: Bounds): void => {
  const entry = --bounds.size
  const { side: sides, before, earlier } = bounds.trail
  const side = sides[entry]!
  const value = before[entry]!
  bounds.value[side] = value
  bounds.last[side] = earlier[entry]!
  if (bounds.seen[side]! > value) bounds.seen[side] = value
}

/** Goes back up to a level: its own facts stay. */
export const backTo = (bounds: Bounds, level: number): void => {
  if (level < bounds.level) {
    const start = bounds.levelStart[level + 1]!
    while (bounds.size > start) pop(bounds)
    bounds.level = level
  }
  bounds.head = Math.min(bounds.head, bounds.size)
}

/** At level 0: what is true now is true for good; the trail is emptied. */
export const settleRoot = (bounds: Bounds): void => {
  bounds.root.set(bounds.value)
  bounds.last.fill(-1)
  bounds.size = 0
  bounds.head = 0
}

/** The trail entry by which a fact became true; -1 = at the root. The fact must be true. */
export const entryOf = (bounds: Bounds, side: number, least: number): number => {
  const { before, earlier } = bounds.trail
  let entry = bounds.last[side]!
  while (entry >= 0 && before[entry]! >= least) entry = earlier[entry]!
  return entry
}
