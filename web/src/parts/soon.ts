/** Where no picture is drawn (a page out of sight), work that waits for one is done after this long, ms. */
const NO_PICTURE_MS = 250

/** Does it once the next picture has been drawn, so that a press is answered before the work that follows from it. Returns what calls it off. */
export const afterPicture = (work: () => void): (() => void) => {
  let isDue = true
  const once = () => {
    if (!isDue) return
    isDue = false
    clearTimeout(timer)
    work()
  }
  const timer = setTimeout(once, NO_PICTURE_MS)
  // What is asked for before a picture is still part of it; what is set down then comes after.
  requestAnimationFrame(() => setTimeout(once))
  return () => {
    isDue = false
    clearTimeout(timer)
  }
}

/** Resolves once the next picture has been drawn. */
export const pictureDrawn = (): Promise<void> => new Promise((resolve) => void afterPicture(resolve))

const waiting = new Set<() => void>()
let isGoing = false

const doNext = (): void => {
  const [next] = waiting
  isGoing = next !== undefined
  if (next === undefined) return
  waiting.delete(next)
  next()
  afterPicture(doNext)
}

/** Does it when its turn comes: one piece of work after each picture, so that a press never waits for more than one. Returns what calls it off. */
export const inTurn = (work: () => void): (() => void) => {
  waiting.add(work)
  if (!isGoing) {
    isGoing = true
    afterPicture(doNext)
  }
  return () => void waiting.delete(work)
}

const doAll = (): void => {
  for (const work of waiting) work()
  waiting.clear()
}

// Paper waits for nothing.
addEventListener('beforeprint', doAll)
