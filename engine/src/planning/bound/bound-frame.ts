import { NEVER } from '../spans.ts'
import type { BoundGround } from './bound-ground.ts'
import { checkedFrom, latestByWindow, soonestByWindow, type ByWindow } from './time-tables.ts'

/** What is worked out once and serves every question about a last finishing minute. */
export type BoundFrame = {
  readonly ground: BoundGround
  readonly soonest: ByWindow
  /** The same for all greens but the first: opened once that one has been checked. */
  readonly afterCheck: ByWindow
  /** Greens that may be opened first; empty where no first green has to be looked at. */
  readonly firsts: readonly number[]
  /** Latest times for a last finishing minute; kept, since many parts ask for the same. */
  readonly latest: (untilMin: number) => ByWindow
}

/** Makes the tables. */
export const boundFrameOf = (ground: BoundGround): BoundFrame => {
  const soonest = soonestByWindow(ground, 0)
  const checked = checkedFrom(ground, soonest)
  const from = Math.min(NEVER, ...checked.values())
  const known = new Map<number, ByWindow>()
  return {
    ground,
    soonest,
    firsts: [...checked.keys()],
    afterCheck: checked.size === 0 || from >= NEVER ? soonest : soonestByWindow(ground, from),
    latest: (untilMin) => {
      const before = known.get(untilMin)
      if (before !== undefined) return before
      const made = latestByWindow(ground, soonest, untilMin)
      known.set(untilMin, made)
      return made
    },
  }
}
