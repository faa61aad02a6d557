import { NEVER } from '../spans.ts'
import type { BoundGround } from './bound-ground.ts'
import { latestTimes, soonestTimes, type ChainTimes } from './chain-times.ts'

/** By green, by window: times of its chain when it is opened there; null where it does not fit. A green that is open already has one row without a window. */
export type ByWindow = readonly (readonly (ChainTimes | null)[])[]

/** Soonest times, the opening no earlier than `openFrom`: in the first part of a window that holds the chain. */
export const soonestByWindow = ({ greens, problem }: BoundGround, openFrom: number): ByWindow =>
  greens.map((green) =>
    green.windows.map((parts) => {
      for (const part of parts) {
        const times = soonestTimes(problem, green, part, Math.max(openFrom, green.openFromMin))
        if (times !== null) return times
      }
      return null
    }),
  )

/** Latest times when all is to be over by `untilMin`: in the last part of a window that holds the chain. */
export const latestByWindow = (
  { greens, problem }: BoundGround,
  soonest: ByWindow,
  untilMin: number,
): ByWindow =>
  greens.map((green, g) =>
    green.windows.map((parts, w) => {
      const times = soonest[g]?.[w] ?? null
      if (times === null || (times.ends.at(-1) ?? 0) > untilMin) return null
      for (let i = parts.length - 1; i >= 0; i--) {
        const latest = latestTimes(problem, green, parts[i] ?? null, untilMin)
        if (latest !== null) return latest
      }
      return null
    }),
  )

/** Soonest start of a step in any window; NEVER where there is none. */
export const soonestStart = (byWindow: ByWindow, green: number, step: number): number =>
  (byWindow[green] ?? []).reduce((least, times) => Math.min(least, times?.starts[step] ?? NEVER), NEVER)

/** Latest start and finish of a step in any window; -1 where there is none. */
export const latestOf = (
  byWindow: ByWindow,
  green: number,
  step: number,
): { readonly start: number; readonly end: number } =>
  (byWindow[green] ?? []).reduce(
    (most, times) => ({
      start: Math.max(most.start, times?.starts[step] ?? -1),
      end: Math.max(most.end, times?.ends[step] ?? -1),
    }),
    { start: -1, end: -1 },
  )

/** Soonest finish of a whole chain in any window; NEVER where there is none. */
export const soonestFinish = (byWindow: ByWindow, green: number): number =>
  (byWindow[green] ?? []).reduce((least, times) => Math.min(least, times?.ends.at(-1) ?? NEVER), NEVER)

/** When the first green opened can have been checked at the soonest, by green that may be first; empty where something is open already or no check is asked for. */
export const checkedFrom = (ground: BoundGround, soonest: ByWindow): ReadonlyMap<number, number> => {
  const { greens, problem } = ground
  if (greens.some(({ isOpen }) => isOpen) || greens.length < 2) return new Map()
  const easy = greens.flatMap(({ green }, index) => (green.weak ? [] : [index]))
  const first = easy.length > 0 ? easy : greens.map((_, index) => index)
  return new Map(
    first.map((index) => {
      const open = greens[index]?.marks.open ?? 0
      const opened = (soonest[index] ?? []).reduce(
        (least, times) => Math.min(least, times?.ends[open] ?? NEVER),
        NEVER,
      )
      return [index, opened + problem.settings.firstGreenCheckMin]
    }),
  )
}
