import type { Schedule } from '../problem.ts'
import { attemptSets } from './attempts.ts'
import { placeGreen } from './place-green.ts'
import { plainRecipe } from './recipe.ts'
import { newRun, type Run } from './run.ts'
import { writeBegin } from './begin.ts'
import { leftOver } from './stock.ts'
import { FIRST_TINES } from './supplies.ts'

type Why = Omit<Schedule['unplanned'][number], 'green'>

/** Parts of a tonne and of a set. */
const PARTS = 1_000_000

/** What a green would take of a stock that the greens planned leave too little of; null where there is enough of all. */
const shortOf = (run: Run, index: number): Why | null => {
  const { ground } = run
  const needs = new Map<number, number>()
  for (let step = run.begun.next[index] ?? 0; step < (ground.firstStep[index + 1] ?? 0); step++) {
    const kind = ground.stockOfStep[step] ?? -1
    if (kind >= 0) needs.set(kind, (needs.get(kind) ?? 0) + (ground.amount[step] ?? 0))
  }
  for (const [kind, need] of needs) {
    const left = leftOver(run, kind)
    if (need <= left) continue
    const [needed, available] = [need / PARTS, Math.max(0, left) / PARTS]
    return kind < FIRST_TINES
      ? { reason: 'sandShort', facts: { needT: needed, availableT: available } }
      : { reason: 'tinesShort', facts: { needSets: needed, availableSets: available } }
  }
  return null
}

/** Whether a green fits somewhere with the whole crew and every machine to itself, behind what stands already. */
const fitsAlone = ({ ground, nowMin, pins }: Run, green: number): boolean => {
  const attempts = attemptSets(ground.problem).at(-1) ?? []
  const alone = newRun({ ground, nowMin, attempts, pins, hints: null, recipe: plainRecipe(ground, [green]) })
  writeBegin(alone)
  return ground.windows.some(
    (window) =>
      window.endMin > nowMin &&
      ((pins.day[green] ?? -1) < 0 || pins.day[green] === window.day) &&
      attempts.some((attempt) => placeGreen(alone, green, { window, attempt }) >= 0),
  )
}

/**
 * Why a green found no place. `noWindow`: it would not fit even with the whole crew and every machine to itself (no dry window is long enough), or what is open of it
 * can't be finished in time; `sandShort`, `tinesShort`: it needs more than the greens planned leave of all that will ever be there; `noTimeLeft`: it fits alone, but not after the greens that are planned.
 */
export const whyLeft = (run: Run, index: number): Why => {
  const { begun, ground } = run
  const open = ground.openStep[index] ?? 0
  const needMin = (ground.leastMin[open] ?? 0) + (ground.tailMin[open] ?? 0)
  const longestWindowMin = Math.max(0, ...ground.windows.map(({ startMin, endMin }) => endMin - startMin))
  const short = shortOf(run, index)
  if (short !== null) return short
  const isOpen = (begun.opened[index] ?? -1) >= 0
  const reason = !isOpen && fitsAlone(run, index) ? 'noTimeLeft' : 'noWindow'
  return { reason, facts: { needMin, longestWindowMin } }
}
