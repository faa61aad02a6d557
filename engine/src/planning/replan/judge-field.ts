import { chainMarks, type ChainMarks } from '../chain.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { NEVER } from '../spans.ts'
import { isWork } from './field.ts'

/** When a green changes its work state; NEVER for what is not reached. */
export type GreenCourse = {
  readonly green: number
  readonly opened: number
  readonly cleared: number
  readonly dressed: number
  readonly finished: number
  /** Finish of its opening step. */
  readonly openedOver: number
}

/** The marks of all greens. */
export const marksOf = (problem: Problem): readonly ChainMarks[] => problem.greens.map(chainMarks)

/** Courses of the greens that are opened by the tasks, by opening. Tasks of a green stand in the order of its steps. */
export const coursesOf = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  marks: readonly ChainMarks[],
): readonly GreenCourse[] => {
  const byGreen: ScheduledTask[][] = problem.greens.map(() => [])
  for (const task of tasks) if (task.green !== null && isWork(task)) byGreen[task.green]?.push(task)
  return byGreen
    .flatMap((own, green): readonly GreenCourse[] => {
      const mark = marks[green]
      if (mark === undefined) return []
      if (own.some((task, index) => index > 0 && task.startMin < (own[index - 1]?.startMin ?? 0)))
        own.sort((a, b) => a.startMin - b.startMin || a.finishMin - b.finishMin)
      const open = own[mark.open]
      if (open === undefined) return []
      const end = (step: number): number => own[step]?.finishMin ?? NEVER
      return [
        {
          green,
          opened: open.startMin,
          cleared: end(mark.clear),
          dressed: end(mark.dress),
          finished: end(mark.finish),
          openedOver: open.finishMin,
        },
      ]
    })
    .sort((a, b) => a.opened - b.opened || a.green - b.green)
}

/** Until when a green opened at a minute must be cleared, and until when finished: rain, dark and midnight; where the club lets greens stand a dry night, only rain for the finish. */
export const limitsOf = (
  problem: Problem,
  openedMin: number,
): { readonly clear: number; readonly finish: number } => {
  const rain = problem.rain.find((span) => span.end > openedMin)?.start ?? NEVER
  const day = problem.days.find(({ endMin }) => openedMin < endMin)
  const night = Math.min(rain, day === undefined ? NEVER : Math.min(day.darkMin, day.endMin))
  return { clear: night, finish: problem.settings.mayStandDryNight ? rain : night }
}

/** Whether a green is finished before rain, dark and midnight as the rules want it. */
export const isInTime = (problem: Problem, course: GreenCourse): boolean => {
  const limits = limitsOf(problem, course.opened)
  return course.cleared <= limits.clear && course.finished <= limits.finish
}
