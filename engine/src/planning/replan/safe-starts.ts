import { isInTime, coursesOf } from './judge-field.ts'
import { openLater } from '../later.ts'
import type { JudgeSchedule } from '../last-safe-start.ts'
import { chainMarks, type ChainMarks } from '../chain.ts'
import { judgeSchedule } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import type { Problem, ScheduledTask } from '../problem.ts'

/** Least minutes from opening to finish, with everything at hand. */
const leastMin = (problem: Problem, green: number, { open, finish }: ChainMarks): number =>
  (problem.greens[green]?.steps ?? [])
    .slice(open, finish + 1)
    .reduce(
      (sum, step, index) =>
        sum + Math.min(...step.minutesByMachine.values()) + (index === 0 ? 0 : step.lagMin),
      0,
    )

/**
 * A last safe start by halving: a minute at which the green may be opened so that the week stays clean, and one minute later it does not. Quick enough for a
 * plan that is made again in the field; `lastSafeStart` looks at every minute instead. Where being clean comes and goes with the minute, this one may be the earlier.
 */
const halved = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  green: number,
  openedMin: number,
  isClean: JudgeSchedule,
  guessMin: number,
): number => {
  const marks = problem.greens.map(chainMarks)
  const mark = marks[green]
  const day = problem.days.find(({ endMin }) => openedMin < endMin)
  if (mark === undefined || day === undefined) return openedMin
  const openAt = openLater(problem, tasks, green)
  const rain = problem.rain.find(({ end }) => end > openedMin)?.start ?? day.darkMin
  let safe = openedMin
  let unsafe = Math.max(openedMin + 1, Math.min(day.darkMin, rain) - leastMin(problem, green, mark) + 1)
  const nowMin = problem.committed?.nowMin ?? 0
  const isSafe = (minute: number): boolean => {
    const moved = openAt(minute)
    if (moved === null) return false
    const late = coursesOf(problem, moved, marks).some(
      (one) => one.opened >= nowMin && !isInTime(problem, one),
    )
    return !late && isClean(moved)
  }
  // A day on which little has changed keeps its minute: two looks then do.
  const guesses = [guessMin, guessMin + 1]
  while (unsafe - safe > 1) {
    const guess = guesses.shift() ?? safe
    const middle = guess > safe && guess < unsafe ? guess : (safe + unsafe) >> 1
    if (isSafe(middle)) safe = middle
    else unsafe = middle
  }
  return safe
}

/** The opening of the last green opened on a day, and which it is. */
export const lastOpeningOf = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  day: number,
): { readonly green: number; readonly openedMin: number } | null => {
  const hours = problem.days[day]
  const last = coursesOf(problem, tasks, problem.greens.map(chainMarks)).findLast(
    ({ opened }) => hours !== undefined && opened >= hours.startMin && opened < hours.endMin,
  )
  return last === undefined ? null : { green: last.green, openedMin: last.opened }
}

/** Last safe start of the green opened last on a day, minutes; its own opening where that is over; null where none is opened. `guessMin` is looked at first. */
export const safeStartOn = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  day: number,
  isClean: JudgeSchedule,
  guessMin: number,
): number | null => {
  const last = lastOpeningOf(problem, tasks, day)
  if (last === null) return null
  return last.openedMin < (problem.committed?.nowMin ?? 0)
    ? last.openedMin
    : halved(problem, tasks, last.green, last.openedMin, isClean, guessMin)
}

/**
 * Last safe start of any green of a plan, minutes: opened then, with its own later steps moved as they must and all other tasks unchanged or later, no rule is broken; one minute
 * later one is. Null where the green is not opened by the tasks, or has been opened already. Faults that are history, and greens that were lost already, do not count.
 */
export const lastSafeStartOf = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  green: number,
): number | null => {
  const own = coursesOf(problem, tasks, problem.greens.map(chainMarks)).find((one) => one.green === green)
  if (own === undefined || own.opened < (problem.committed?.nowMin ?? 0)) return null
  const compiled = compileProblem(problem)
  const isClean: JudgeSchedule = (moved) =>
    judgeSchedule(compiled, { tasks: moved, unplanned: unplannedOf(problem, moved) }).faults.length === 0
  return halved(problem, tasks, green, own.opened, isClean, -1)
}

/** Greens that the tasks leave out, so that a schedule accounts for all. */
const unplannedOf = (problem: Problem, tasks: readonly ScheduledTask[]) => {
  const planned = new Set(tasks.map((task) => task.green))
  return problem.greens.flatMap((_, green) =>
    planned.has(green) ? [] : [{ green, reason: 'noTimeLeft' as const, facts: {} }],
  )
}
