import type { Schedule } from '../problem.ts'
import { attemptSets } from './attempts.ts'
import { placeGreen } from './place-green.ts'
import { plainRecipe } from './recipe.ts'
import { newRun, type Run } from './run.ts'
import { writeBegin } from './begin.ts'

type Why = Omit<Schedule['unplanned'][number], 'green'>

/** Sand of a green's kind that will ever be there, tonnes. */
const availableOf = (run: Run, index: number): number => {
  const { problem } = run.ground
  const kind = problem.greens[index]?.sand.kind
  return problem.stores
    .filter((store) => store.kind === kind)
    .reduce((sum, store) => sum + store.stockT + store.deliveries.reduce((more, d) => more + d.massT, 0), 0)
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
 * can't be finished in time; `sandShort`: it needs more sand than there will ever be; `noTimeLeft`: it fits alone, but not after the greens that are planned.
 */
export const whyLeft = (run: Run, index: number): Why => {
  const { begun, ground } = run
  const green = ground.problem.greens[index]
  const open = ground.openStep[index] ?? 0
  const needMin = (ground.leastMin[open] ?? 0) + (ground.tailMin[open] ?? 0)
  const longestWindowMin = Math.max(0, ...ground.windows.map(({ startMin, endMin }) => endMin - startMin))
  const availableT = availableOf(run, index)
  const needT = green?.steps.reduce((sum, step) => sum + step.sandT, 0) ?? 0
  if (needT > availableT) return { reason: 'sandShort', facts: { needT, availableT } }
  const isOpen = (begun.opened[index] ?? -1) >= 0
  const reason = !isOpen && fitsAlone(run, index) ? 'noTimeLeft' : 'noWindow'
  return { reason, facts: { needMin, longestWindowMin } }
}
