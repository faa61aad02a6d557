import type { Attempt, Lets } from './attempts.ts'
import { continueGreen, placeGreen } from './place-green.ts'
import type { Run } from './run.ts'
import type { WorkWindow } from './windows.ts'

const attemptOf = (lets: Lets): Attempt => ({ keepFixtures: false, overNight: false, lets })

/** A whole day, rain and dark and all. Its index is read by no attempt that lets the sky go. */
const wholeDay = ({ ground }: Run, day: number): WorkWindow => ({
  index: 0,
  day,
  startMin: ground.dayStart[day] ?? 0,
  endMin: ground.dayEnd[day] ?? 0,
  dryUntilMin: ground.problem.horizonMin,
})

const isOf = (window: WorkWindow, pinnedDay: number, nowMin: number): boolean =>
  window.endMin > nowMin && (pinnedDay < 0 || pinnedDay === window.day)

/**
 * Opens a green where the manager pinned it, though that breaks rules: as few as will do, so the cap and the check of the first green are let go first, then rain and
 * dark, then the hours of the pinned step. Returns the end of its last step, or -1 where machines, people, sand or the days planned do not allow it at all.
 */
export const placeAsPinned = (run: Run, green: number): number => {
  const { ground, nowMin, pins } = run
  const pinnedDay = pins.day[green] ?? -1
  const days = Array.from({ length: ground.days }, (_, day) => wholeDay(run, day))
  for (const lets of [1, 2, 3] as const) {
    const attempt = attemptOf(lets)
    for (const window of lets === 1 ? ground.windows : days) {
      if (!isOf(window, pinnedDay, nowMin)) continue
      const end = placeGreen(run, green, { window, attempt })
      if (end >= 0 || run.isCut) return end
    }
  }
  return -1
}

/** Goes on with a green in work that can't be finished in time, or one of whose steps is pinned to where it breaks rules. Returns the end of its last step, or -1. */
export const continueLate = (run: Run, green: number): number => {
  const window = { ...wholeDay(run, 0), endMin: run.ground.problem.horizonMin }
  const end = continueGreen(run, green, { window, attempt: attemptOf(2) })
  return end >= 0 || run.isCut ? end : continueGreen(run, green, { window, attempt: attemptOf(3) })
}
