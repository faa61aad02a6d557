import type { Schedule } from '../problem.ts'
import type { Ground } from './ground.ts'
import { emptySchedule } from './growing.ts'
import { placeGreen } from './place-green.ts'
import { attemptSets } from './generate.ts'

type Why = Omit<Schedule['unplanned'][number], 'green'>

/**
 * Why a green found no place. `noWindow`: it would not fit even with the whole crew and every machine to itself (no dry window is long enough);
 * `sandShort`: it needs more sand than there will ever be; `noTimeLeft`: it fits alone, but not after the greens that are planned.
 */
export const whyLeft = (ground: Ground, index: number): Why => {
  const { problem } = ground
  const green = problem.greens[index]
  const needMin = ground.greens[index]?.leastMin ?? 0
  const longestWindowMin = Math.max(0, ...ground.windows.map((window) => window.span.end - window.span.start))
  const availableT = problem.stores
    .filter((store) => store.kind === green?.sand.kind)
    .reduce((sum, store) => sum + store.stockT + store.deliveries.reduce((more, d) => more + d.massT, 0), 0)
  const needT = green?.steps.reduce((sum, step) => sum + step.sandT, 0) ?? 0
  if (needT > availableT) return { reason: 'sandShort', facts: { needT, availableT } }
  const attempts = attemptSets(problem).at(-1) ?? []
  const alone = ground.windows.some((window) =>
    attempts.some(
      (attempt) => placeGreen(emptySchedule(ground), { green: index, window, from: 0, ...attempt }) !== null,
    ),
  )
  return alone
    ? { reason: 'noTimeLeft', facts: { needMin, longestWindowMin } }
    : { reason: 'noWindow', facts: { needMin, longestWindowMin } }
}
