import { openLater } from './later.ts'
import type { Problem, ScheduledTask } from './problem.ts'
import { openedGreens } from './score.ts'

/** Judges a schedule: true when no hard rule is broken. The independent checker, handed in. */
export type JudgeSchedule = (tasks: readonly ScheduledTask[]) => boolean

/**
 * Last safe start of a planned green, minutes: the latest minute at which it may be opened so that, with its own later steps moved as they must and all
 * other tasks unchanged or later, the plan stays clean. One minute later it does not, because the search goes down from the latest thinkable minute.
 */
export const lastSafeStart = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  green: number,
  isClean: JudgeSchedule,
): number | null => {
  const opened = openedGreens(problem, tasks).find((o) => o.green === green)
  if (opened === undefined) return null
  const day = problem.days.find((d) => opened.opened >= d.startMin && opened.opened < d.endMin)
  if (day === undefined) return null
  const openAt = openLater(problem, tasks, green)
  for (let minute = day.darkMin; minute > opened.opened; minute--) {
    const moved = openAt(minute)
    if (moved !== null && isClean(moved)) return minute
  }
  return opened.opened
}

/** Last safe start of each day with an opening: that of the green opened last, so never before its planned opening. */
export const lastSafeStarts = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  isClean: JudgeSchedule,
): ReadonlyMap<string, number> => {
  const opened = openedGreens(problem, tasks)
  const byDay = new Map<string, number>()
  for (const day of problem.days) {
    const last = opened.findLast((o) => o.opened >= day.startMin && o.opened < day.endMin)
    const minute = last === undefined ? null : lastSafeStart(problem, tasks, last.green, isClean)
    if (minute !== null) byDay.set(day.date, minute)
  }
  return byDay
}
