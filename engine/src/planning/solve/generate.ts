import { NEVER } from '../spans.ts'
import { continueLate, placeAsPinned } from './as-pinned.ts'
import { continueGreen, placeGreen } from './place-green.ts'
import type { Ground } from './ground.ts'
import { placeListed } from './place-listed.ts'
import { ATTEMPTS, type Recipe } from './recipe.ts'
import { CHAIN, type Run } from './run.ts'
import { backTo, setScalar } from './undo.ts'

/** Greens in a row that may not fit into a window before it counts as full for the rest. */
const MOST_MISSES = 6

/** Results of a generation, by green: end of its last step, -1 where it is left out. */
export type Made = {
  readonly ends: Int32Array
  /** By place in the order: how long the undo list was before that green was placed. */
  readonly marks: Int32Array
  /** The order that `marks` stand for, and how many of its places are still standing. */
  readonly order: Int32Array
  standing: number
  /** The same for steps that are placed one by one; -1 standing where not even what comes before them stands. */
  readonly listMarks: Int32Array
  readonly list: Int32Array
  listStanding: number
  /** By green: 1 where it only found a place when all others were in. */
  readonly filled: Uint8Array
}

/** Room for the results of generations. */
export const newMade = ({ greens, steps }: Pick<Ground, 'greens' | 'steps'>): Made => ({
  ends: new Int32Array(greens).fill(-1),
  marks: new Int32Array(greens + 1),
  order: new Int32Array(greens),
  standing: 0,
  listMarks: new Int32Array(steps + 1),
  list: new Int32Array(steps),
  listStanding: -1,
  filled: new Uint8Array(greens),
})

const isBegun = (run: Run, green: number): boolean => (run.begun.opened[green] ?? -1) >= 0

const hasStepsLeft = (run: Run, green: number): boolean =>
  (run.begun.next[green] ?? 0) < (run.ground.firstStep[green + 1] ?? 0)

/** Tries a green in each window in turn, by every attempt, kindest first. */
const placeAnywhere = (run: Run, green: number, minding: boolean): number => {
  const { at, attempts, ground, nowMin, pins, scalars } = run
  const pinnedDay = pins.day[green] ?? -1
  for (let a = 0; a < attempts.length; a++) {
    const attempt = attempts[a]
    for (let w = 0; w < ground.windows.length; w++) {
      const window = ground.windows[w]
      if (window === undefined || attempt === undefined || window.endMin <= nowMin) continue
      if (pinnedDay >= 0 && pinnedDay !== window.day) continue
      const misses = scalars[at.misses + w] ?? 0
      if (minding && a === 0 && pinnedDay < 0 && misses >= MOST_MISSES) continue
      const end = placeGreen(run, green, { window, attempt })
      if (end >= 0 && misses > 0 && a === 0) setScalar(run, at.misses + w, 0)
      if (end >= 0) run.tried[green] = w * ATTEMPTS + a
      if (end >= 0) return end
      if (run.isCut) return -1
      if (a === 0) setScalar(run, at.misses + w, misses + 1)
    }
  }
  return -1
}

/** Whether a green must wait since it is weak and none is opened yet. */
const mustWait = (run: Run, green: number): boolean =>
  run.ground.weak[green] === 1 && (run.scalars[run.at.firstOpened] ?? NEVER) >= NEVER && !isBegun(run, green)

const placeOne = (run: Run, green: number): number => {
  const { begun } = run
  const stands = run.pins.stands[green] === 1
  if (!isBegun(run, green)) {
    if (stands) return placeAsPinned(run, green)
    return mustWait(run, green) ? -1 : placeAnywhere(run, green, true)
  }
  const where = begun.where[green] ?? null
  const end = where === null ? -1 : continueGreen(run, green, where)
  if (end >= 0 || run.isCut) return end
  // A green that is caught is finished as soon as may be, though it counts as left.
  const late = continueLate(run, green)
  return stands ? late : -1
}

/** Ranks of greens in every order: those in work, those with a pin, those whose pin breaks a rule (so that it breaks none for the others), the first easy one, the others. */
const classOf = (run: Run, green: number): number => {
  if (isBegun(run, green)) return 0
  if (run.pins.hasPin[green] !== 1) return 3
  return run.pins.stands[green] === 1 ? 2 : 1
}

/** Whether the steps of a green may be placed one by one: nothing of it is pinned. */
const isListable = (run: Run, green: number): boolean => run.pins.hasPin[green] !== 1

/** Moves the green at a place of the order to a place before it. */
const bringForward = (order: Int32Array, from: number, to: number): void => {
  const green = order[from] ?? 0
  for (let i = from; i > to; i--) order[i] = order[i - 1] ?? 0
  order[to] = green
}

/** Puts the greens that must be placed first to the front: those in work, then those that are pinned; the first of the others is not a weak one. */
export const arrange = (run: Run, order: Int32Array): void => {
  let front = 0
  for (let kind = 0; kind < 3; kind++)
    for (let i = front; i < order.length; i++)
      if (classOf(run, order[i] ?? 0) === kind) bringForward(order, i, front++)
  for (let i = front; i < order.length; i++) {
    if (run.ground.weak[order[i] ?? 0] === 1) continue
    bringForward(order, i, front)
    return
  }
}

/** Greens of which nothing is left to do are done, whatever the recipe. */
const settleDone = (run: Run, made: Made): void => {
  for (let green = 0; green < made.ends.length; green++)
    if (!hasStepsLeft(run, green)) made.ends[green] = run.begun.end[green] ?? 0
}

/** How many places at the front of the last order stand as they are under a new one. */
const commonFront = (made: Made, order: Int32Array): number => {
  let same = 0
  while (same < made.standing && made.order[same] === order[same]) same++
  return same
}

/**
 * Greens that found no place are tried once more, in windows that counted as full too: now all others are in. Greens in work come first where greens are placed whole;
 * so only one that was taken out of a list is still to be placed.
 */
const fillUp = (run: Run, made: Made, order: Int32Array): void => {
  for (let i = 0; i < order.length; i++) {
    const green = order[i] ?? 0
    const isIn = (made.ends[green] ?? -1) >= 0
    if (isIn || (isBegun(run, green) && made.listStanding < 0)) continue
    made.ends[green] = isBegun(run, green) ? placeOne(run, green) : placeAnywhere(run, green, false)
    made.filled[green] = 1
  }
}

/** Leaves out the green at a place and all behind it: the schedule can't be over by the cutoff. */
const giveUp = (run: Run, made: Made, order: Int32Array, place: number): void => {
  backTo(run, made.marks[place] ?? 0)
  for (let i = place; i < order.length; i++) made.ends[order[i] ?? 0] = -1
  made.order.set(order)
  made.standing = place
}

/**
 * Makes one schedule from the recipe of the run: each green in turn goes, with its whole chain, into the first window that it fits into, every step as early as the
 * gaps of machines and people allow. Greens at the front of the order that stand as they did in the schedule before are left standing.
 */
const generateGreens = (run: Run, made: Made): void => {
  const { order } = run.recipe
  made.listStanding = -1
  const same = commonFront(made, order)
  backTo(run, made.marks[same] ?? 0)
  for (let green = 0; green < made.filled.length; green++) if (made.filled[green] === 1) made.ends[green] = -1
  made.filled.fill(0)
  run.isCut = false
  settleDone(run, made)
  for (let i = same; i < order.length; i++) {
    const green = order[i] ?? 0
    made.marks[i] = run.undoLength
    made.ends[green] = placeOne(run, green)
    if (run.isCut) {
      giveUp(run, made, order, i)
      return
    }
  }
  made.order.set(order)
  made.marks[order.length] = run.undoLength
  made.standing = order.length
  fillUp(run, made, order)
}

/** How many places at the front of the last list stand as they are under a new one. */
const commonList = (made: Made, { list, listed }: Recipe): number => {
  const most = Math.min(made.listStanding, listed)
  let same = 0
  while (same < most && made.list[same] === list[same]) same++
  return same
}

/** What comes before a list: greens with a pin, whole, and greens of which nothing is left to do. */
const beginList = (run: Run, made: Made): void => {
  const { at, begun, ground, recipe } = run
  backTo(run, 0)
  made.standing = 0
  made.ends.fill(-1)
  for (let green = 0; green < ground.greens; green++) {
    const chain = at.chain + green * CHAIN.size
    run.scalars[chain + CHAIN.end] = begun.end[green] ?? 0
    run.scalars[chain + CHAIN.dressed] = begun.dressed[green] ?? -1
    run.scalars[chain + CHAIN.opened] = begun.opened[green] ?? -1
    run.scalars[chain + CHAIN.openedBy] = begun.openedBy[green] ?? -1
    run.scalars[chain + CHAIN.work] = begun.work[green] ?? -1
  }
  settleDone(run, made)
  for (const green of recipe.order) if (!isListable(run, green)) made.ends[green] = placeOne(run, green)
  made.listMarks[0] = run.undoLength
  made.listStanding = 0
}

/** Makes one schedule from the list of the recipe: each step in turn as early as it goes, in the window that its green keeps to; then the greens that are not listed. */
const generateList = (run: Run, made: Made): void => {
  const { at, ground, recipe, scalars } = run
  const { list, listed } = recipe
  if (made.listStanding < 0) beginList(run, made)
  const same = commonList(made, recipe)
  backTo(run, made.listMarks[same] ?? 0)
  made.filled.fill(0)
  for (let green = 0; green < made.ends.length; green++)
    if (isListable(run, green) && hasStepsLeft(run, green)) made.ends[green] = -1
  run.isCut = false
  made.list.set(list)
  for (let i = same; i < listed; i++) {
    made.listMarks[i] = run.undoLength
    if (placeListed(run, list[i] ?? 0)) continue
    backTo(run, made.listMarks[i] ?? 0)
    made.listStanding = i
    return
  }
  made.listMarks[listed] = run.undoLength
  made.listStanding = listed
  for (let i = 0; i < listed; i++) {
    const green = ground.greenOfStep[list[i] ?? 0] ?? 0
    made.ends[green] = scalars[at.chain + green * CHAIN.size + CHAIN.end] ?? -1
  }
  fillUp(run, made, recipe.order)
}

/** Makes one schedule from the recipe of the run. */
export const generate = (run: Run, made: Made): void =>
  run.recipe.listed > 0 ? generateList(run, made) : generateGreens(run, made)

/** Writes the steps of the schedule that stands as the list of a recipe, in order of their starts. */
export const listSchedule = (run: Run, recipe: Recipe): void => {
  const { ground, log, record } = run
  const records = Array.from({ length: run.scalars[run.at.records] ?? 0 }, (_, index) => index * record)
  const free = records.filter((at) => isListable(run, ground.greenOfStep[log[at] ?? 0] ?? 0))
  free.sort((a, b) => (log[a + 2] ?? 0) - (log[b + 2] ?? 0) || (log[a] ?? 0) - (log[b] ?? 0))
  free.forEach((at, index) => {
    recipe.list[index] = log[at] ?? 0
  })
  recipe.listed = free.length
  recipe.tried.set(run.tried)
}

/** Forgets what stands, since something else than the order has changed from a place on. */
export const forget = (made: Made, from: number): void => {
  if (from < made.standing) made.standing = from
}

/** The same of a list. */
export const forgetList = (made: Made, from: number): void => {
  if (from < made.listStanding) made.listStanding = from
}
