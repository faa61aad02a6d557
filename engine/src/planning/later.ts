import { chainMarks } from './chain.ts'
import type { Problem, ScheduledTask } from './problem.ts'
import { copyWalk, fitsShifts, newWalk, passTask, settledStart, walkTasks } from './walk.ts'

/** Opens the green at a minute: the same tasks, some of them later; null when one no longer fits its day and the shifts of its people. */
export type OpenAt = (minute: number) => readonly ScheduledTask[] | null

/**
 * Asks what happens when one green is opened later. The same tasks, machines, people and order; everything is moved later only as far as it must.
 * Ways, waits, drying, workable hours, shifts and breaks push; nothing is re-ordered, and no task leaves its day.
 * What comes before the opening and on other days stays, so it is worked out once for all minutes that are asked.
 */
export const openLater = (problem: Problem, tasks: readonly ScheduledTask[], green: number): OpenAt => {
  const own = problem.greens[green]
  const openStep = own === undefined ? -1 : chainMarks(own).open
  const walked = walkTasks(problem, tasks)
  const opening = walked.findIndex(({ task, stepIndex }) => task.green === green && stepIndex === openStep)
  const day = problem.days[walked[opening]?.day ?? -1]
  if (opening < 0 || day === undefined) return () => null
  const before = newWalk(problem)
  for (const one of walked.slice(0, opening)) passTask(before, one, one.task.startMin)
  const last = tasks.findLastIndex((task) => task.startMin < day.endMin)
  const toMove = walked.slice(opening, last + 1)
  return (minute) => {
    const walk = copyWalk(before)
    const moved: ScheduledTask[] = []
    for (const [index, one] of toMove.entries()) {
      const startMin = settledStart(walk, one, index === 0 ? minute : 0)
      const finishMin = startMin + one.task.finishMin - one.task.startMin
      if (finishMin > day.endMin || !fitsShifts(problem, one.task.people, startMin, finishMin)) return null
      moved.push({ ...one.task, startMin, finishMin })
      passTask(walk, one, startMin)
    }
    return [...tasks.slice(0, opening), ...moved, ...tasks.slice(last + 1)]
  }
}
