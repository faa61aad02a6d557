import { NEVER } from '../spans.ts'
import type { Run } from './run.ts'
import { setScalar, setWorkNumber } from './undo.ts'

/** Numbers of a green in work: green, opening, end of the opening step, finish. */
const WIDTH = 4

/** Writes down that a green is in work from its opening to its finish. */
export const addWork = (
  run: Run,
  green: number,
  opened: number,
  openedBy: number,
  finished: number,
): void => {
  const { at, scalars, works } = run
  const count = scalars[at.works] ?? 0
  const to = count * WIDTH
  works[to] = green
  works[to + 1] = opened
  works[to + 2] = openedBy
  works[to + 3] = finished
  setScalar(run, at.works, count + 1)
  if (opened >= (scalars[at.firstOpened] ?? NEVER)) return
  setScalar(run, at.firstOpened, opened)
  setScalar(run, at.firstChecked, openedBy + run.ground.problem.settings.firstGreenCheckMin)
}

/** Writes when the green that was put in work as number `index` is finished. */
export const finishWork = (run: Run, index: number, finished: number): void =>
  setWorkNumber(run, index * WIDTH + 3, finished)

/** Opening and finish of each green in work so far. */
export const eachWork = (run: Run, tell: (green: number, opened: number, finished: number) => void): void => {
  const { at, scalars, works } = run
  const last = (scalars[at.works] ?? 0) * WIDTH
  for (let i = 0; i < last; i += WIDTH) tell(works[i] ?? 0, works[i + 1] ?? 0, works[i + 3] ?? 0)
}

/**
 * Minute at which to open instead of `opened`, since too many greens would be in work at once: when the first of them is finished. The same minute when there is room.
 */
export const afterCrowd = (run: Run, opened: number, finished: number): number => {
  const { works } = run
  const last = (run.scalars[run.at.works] ?? 0) * WIDTH
  let most = 0
  let thins = NEVER
  for (let i = 0; i < last; i += WIDTH) {
    const from = works[i + 1] ?? 0
    const to = works[i + 3] ?? 0
    if (from >= finished || to <= opened) continue
    if (to < thins) thins = to
    // The most are together where one of them, or the new one, begins.
    const moment = from > opened ? from : opened
    let together = 0
    for (let j = 0; j < last; j += WIDTH)
      if ((works[j + 1] ?? 0) <= moment && (works[j + 3] ?? 0) > moment) together++
    if (together > most) most = together
  }
  return most + 1 > run.ground.problem.settings.openGreensCap ? Math.max(thins, opened + 1) : opened
}

/**
 * Minute at which to open instead of `opened` because of the check of the first green: the first one opened is not weak, and no other is opened before its opening
 * step is done (`openedBy`) and checked. The same minute where that holds.
 */
export const afterCheck = (run: Run, green: number, opened: number, openedBy: number): number => {
  const { at, ground, scalars } = run
  const first = scalars[at.firstOpened] ?? NEVER
  if (first >= NEVER) return opened
  const checked = scalars[at.firstChecked] ?? 0
  if (opened >= first) return Math.max(opened, checked)
  const isFirstItself =
    ground.weak[green] === 0 && openedBy + ground.problem.settings.firstGreenCheckMin <= first
  return isFirstItself ? opened : checked
}

/** Minute at which to open instead of `opened` since a fixture that names the green falls into its work; the same minute where none does. */
export const afterFixtures = (run: Run, green: number, opened: number, finished: number): number => {
  for (const fixture of run.ground.problem.greens[green]?.fixtures ?? [])
    if (fixture.start < finished && fixture.end > opened) return Math.max(fixture.end, opened + 1)
  return opened
}
