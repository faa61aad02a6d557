import { NEVER } from '../spans.ts'
import { book } from './book.ts'
import { seekOffer } from './offer.ts'
import { chainFrom, latestEnd, newChain, passStep, type Chain } from './place-green.ts'
import { ATTEMPTS } from './recipe.ts'
import { CHAIN, type Run } from './run.ts'
import { backTo, setScalar } from './undo.ts'
import type { Try } from './windows.ts'
import { addWork, afterCheck, afterCrowd, afterFixtures, finishWork } from './works.ts'

/** The window and the attempt that the recipe keeps a green to; that in which it was opened where it stands open already. */
const triedBy = (run: Run, green: number): Try | undefined => {
  const where = run.begun.where[green] ?? null
  if (where !== null) return where
  const tried = run.recipe.tried[green] ?? 0
  const window = run.ground.windows[Math.floor(tried / ATTEMPTS)]
  const attempt = run.attempts[tried % ATTEMPTS]
  return window === undefined || attempt === undefined ? undefined : { window, attempt }
}

const readChain = ({ at, scalars }: Run, green: number, chain: Chain): void => {
  const from = at.chain + green * CHAIN.size
  chain.end = scalars[from + CHAIN.end] ?? 0
  chain.dressed = scalars[from + CHAIN.dressed] ?? -1
  chain.opened = scalars[from + CHAIN.opened] ?? -1
  chain.openedBy = scalars[from + CHAIN.openedBy] ?? -1
  chain.finished = -1
  chain.later = 0
}

const writeChain = (run: Run, green: number, chain: Chain, dressed: number): void => {
  const from = run.at.chain + green * CHAIN.size
  setScalar(run, from + CHAIN.end, chain.end)
  if (chain.dressed !== dressed) setScalar(run, from + CHAIN.dressed, chain.dressed)
}

/** Minute at which to open instead, since the check, a fixture or the cap is in the way; the same minute where nothing is. A green whose finish is not known yet counts as in work for good. */
const openingAfter = (run: Run, green: number, step: number, { attempt }: Try, chain: Chain): number => {
  const { ground, at, scalars } = run
  const { opened, openedBy } = chain
  if (ground.weak[green] === 1 && (scalars[at.firstOpened] ?? NEVER) >= NEVER) return NEVER
  const checked = afterCheck(run, green, opened, openedBy)
  if (checked > opened) return checked
  const least = openedBy + (ground.tailMin[step] ?? 0)
  const free = attempt.keepFixtures ? afterFixtures(run, green, opened, least) : opened
  return free > opened ? free : afterCrowd(run, opened, NEVER)
}

const open = (run: Run, green: number, chain: Chain): void => {
  const from = run.at.chain + green * CHAIN.size
  setScalar(run, from + CHAIN.opened, chain.opened)
  setScalar(run, from + CHAIN.openedBy, chain.openedBy)
  setScalar(run, from + CHAIN.work, run.scalars[run.at.works] ?? 0)
  addWork(run, green, chain.opened, chain.openedBy, NEVER)
}

/** Whether a green that is finished now has kept clear of its fixtures. */
const closes = (run: Run, green: number, { attempt }: Try, chain: Chain): boolean => {
  const { at, scalars } = run
  if (attempt.keepFixtures && afterFixtures(run, green, chain.opened, chain.finished) > chain.opened)
    return false
  finishWork(run, scalars[at.chain + green * CHAIN.size + CHAIN.work] ?? 0, chain.finished)
  return true
}

/**
 * Places one step of a green as early as it goes, in the window that the recipe keeps the green to. False when it does not go there in time: then the caller takes
 * back what was written.
 */
export const placeListed = (run: Run, step: number): boolean => {
  const { ground } = run
  const { found } = run.scratch
  const green = ground.greenOfStep[step] ?? 0
  const where = triedBy(run, green)
  if (where === undefined) return false
  const chain = newChain()
  const opening = ground.openStep[green] ?? 0
  const mark = run.undoLength
  const end = latestEnd(run, green, step, where)
  for (let from = 0; from < where.window.endMin;) {
    readChain(run, green, chain)
    const { dressed } = chain
    let least = Math.max(from, chainFrom(run, step, chain))
    if (step >= opening && step <= (ground.clearStep[green] ?? 0))
      least = Math.max(least, where.window.startMin)
    if (least >= NEVER || !seekOffer(run, { green, step, from: least, end, anyHour: false })) return false
    // Nothing else may be over so late either.
    if (found.start + found.minutes + (ground.tailMin[step] ?? 0) > run.cutoffMin) {
      run.isCut = true
      return false
    }
    book(run, green, step)
    passStep(run, green, step, chain)
    writeChain(run, green, chain, dressed)
    if (step === ground.finishStep[green] && step !== opening) return closes(run, green, where, chain)
    if (step !== opening) return true
    from = openingAfter(run, green, step, where, chain)
    if (from <= chain.opened) {
      open(run, green, chain)
      return step !== ground.finishStep[green] || closes(run, green, where, chain)
    }
    backTo(run, mark)
  }
  return false
}
