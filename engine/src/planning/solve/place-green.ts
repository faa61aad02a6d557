import { NEVER } from '../spans.ts'
import { book } from './book.ts'
import { dryBy } from './drying.ts'
import { seekOffer } from './offer.ts'
import type { Run } from './run.ts'
import { backTo } from './undo.ts'
import type { Try } from './windows.ts'
import { addWork, afterCheck, afterCrowd, afterFixtures, finishWork } from './works.ts'

/** How far one try at a green has come. One object a try, written over. */
export type Chain = {
  end: number
  dressed: number
  opened: number
  openedBy: number
  finished: number
  /** Minute at which to open instead, since something is in the way of the opening; 0 where nothing is. */
  later: number
}

/** Earliest start of a step by the chain alone: the wait, the next day, the dry sand, a pin, the plan to stay near to. */
export const chainFrom = (run: Run, step: number, chain: Chain): number => {
  const { ground, hints, pins, recipe } = run
  const { days } = ground.problem
  let from = Math.max(chain.end + (ground.lagMin[step] ?? 0), run.nowMin, pins.start[step] ?? -1)
  if (ground.nextDay[step] === 1)
    from = Math.max(from, days.find((day) => day.startMin >= chain.end)?.startMin ?? NEVER)
  if (chain.dressed >= 0) from = Math.max(from, dryBy(ground.problem, ground.drying, step, chain.dressed))
  return hints !== null && recipe.follow === 2 ? Math.max(from, hints.startMin[step] ?? -1) : from
}

/** By when a step must be over so that the least that follows can still be done in time. */
export const latestEnd = (run: Run, green: number, step: number, { window, attempt }: Try): number => {
  const { ground } = run
  if (attempt.lets >= 2)
    return step <= (ground.openStep[green] ?? 0) ? window.endMin : ground.problem.horizonMin
  if (step > (ground.finishStep[green] ?? 0)) return ground.problem.horizonMin
  if (!attempt.overNight)
    return Math.min(ground.deadline[window.index * ground.steps + step] ?? 0, window.endMin)
  if (step < (ground.openStep[green] ?? 0)) return window.endMin
  const finish = window.dryUntilMin - (ground.tailMin[step] ?? 0)
  return step > (ground.clearStep[green] ?? 0)
    ? finish
    : Math.min(finish, window.endMin - (ground.clearTailMin[step] ?? 0))
}

export const passStep = (run: Run, green: number, step: number, chain: Chain): void => {
  const { ground } = run
  const { found } = run.scratch
  const end = found.start + found.minutes
  chain.end = end
  if (ground.isDress[step] === 1) chain.dressed = end
  if (step === ground.openStep[green]) {
    chain.opened = found.start
    chain.openedBy = end
  }
  if (step === ground.finishStep[green]) chain.finished = end
}

/** Whether something is in the way of an opening if the green is in work until `chain.finished` at least; then `chain.later` is when to open instead. */
const isInTheWay = (run: Run, green: number, { attempt }: Try, chain: Chain): boolean => {
  if (attempt.lets >= 1) return false
  const { opened, openedBy, finished } = chain
  let later = afterCheck(run, green, opened, openedBy)
  if (later <= opened && attempt.keepFixtures) later = afterFixtures(run, green, opened, finished)
  if (later <= opened) later = afterCrowd(run, opened, finished)
  chain.later = later > opened ? later : 0
  return later > opened
}

/** Places all steps that are left of a green once, the opening no earlier than `from`. False when one finds no place. */
const placeOnce = (run: Run, green: number, where: Try, from: number, chain: Chain): boolean => {
  const { begun, ground, pins } = run
  const { found } = run.scratch
  const open = ground.openStep[green] ?? 0
  const last = ground.firstStep[green + 1] ?? 0
  chain.end = begun.end[green] ?? 0
  chain.dressed = begun.dressed[green] ?? -1
  chain.finished = -1
  chain.later = 0
  for (let step = begun.next[green] ?? last; step < last; step++) {
    let least = chainFrom(run, step, chain)
    if (step === open) least = Math.max(least, from)
    if (step >= open && step <= (ground.clearStep[green] ?? 0)) least = Math.max(least, where.window.startMin)
    if (least >= NEVER) return false
    const pin = pins.start[step] ?? -1
    const anyHour = where.attempt.lets === 3 && (pin >= 0 || step === open)
    if (!seekOffer(run, { green, step, from: least, end: latestEnd(run, green, step, where), anyHour }))
      return false
    if (pin >= 0 && pin !== found.start) return false
    book(run, green, step)
    passStep(run, green, step, chain)
    if (chain.end + (ground.tailMin[step] ?? 0) > run.cutoffMin) {
      run.isCut = true
      return false
    }
    if (step !== open) continue
    // What is in the way of the least time in work is in the way of the whole chain: then the rest need not be placed to see it.
    chain.finished = Math.max(chain.end + (ground.tailMin[step] ?? 0), chain.finished)
    if (isInTheWay(run, green, where, chain)) return false
  }
  return true
}

export const newChain = (): Chain => ({
  end: 0,
  dressed: -1,
  opened: -1,
  openedBy: -1,
  finished: -1,
  later: 0,
})

/**
 * Puts a whole green into the schedule, opened as early as it goes in the window, or not at all: a green is opened only when its whole chain fits
 * (look-ahead on the finish rule instead of unscheduling). Returns the end of its last step, or -1; then nothing is changed.
 */
export const placeGreen = (run: Run, green: number, where: Try): number => {
  const mark = run.undoLength
  const chain = newChain()
  let from = where.window.startMin
  while (from < where.window.endMin) {
    if (placeOnce(run, green, where, from, chain) && !isInTheWay(run, green, where, chain)) {
      addWork(run, green, chain.opened, chain.openedBy, chain.finished)
      return chain.end
    }
    backTo(run, mark)
    if (run.isCut || chain.later === 0) return -1
    from = chain.later
  }
  return -1
}

/**
 * Goes on with a green that is open or finished already: its steps that are left as early as they go, inside the window in which it was opened. Returns the end of
 * its last step, or -1 when it can't be finished as it must; then nothing is changed.
 */
export const continueGreen = (run: Run, green: number, where: Try): number => {
  const { begun } = run
  const mark = run.undoLength
  const chain = newChain()
  if (!placeOnce(run, green, where, 0, chain)) {
    backTo(run, mark)
    return -1
  }
  if (chain.finished >= 0) finishWork(run, begun.work[green] ?? 0, chain.finished)
  return chain.end
}
