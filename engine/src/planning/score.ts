import { chainMarks } from './chain.ts'
import { isOperation } from './operations.ts'
import type { Problem, ScheduledTask, Span } from './problem.ts'

/** What a schedule is judged by, in this order; all as small as can be. Minutes and counts: integers. */
export type Score = {
  readonly unfinishedGreens: number
  readonly fixtureClashes: number
  readonly shutGreenDays: number
  /** Last minute of any task; 0 when there is none. */
  readonly finishMin: number
  readonly overtimeMin: number
  readonly travelMin: number
}

/** Minutes at which a green changes its work state. */
export type Opened = {
  readonly green: number
  readonly opened: number
  readonly cleared: number
  readonly dressed: number
  readonly finished: number
}

/** Work states of the planned greens, by opening. */
export const openedGreens = (problem: Problem, tasks: readonly ScheduledTask[]): readonly Opened[] => {
  const tasksByGreen = new Map<number, ScheduledTask[]>()
  for (const task of tasks) {
    if (task.green === null || !isOperation(task.kind)) continue
    const list = tasksByGreen.get(task.green)
    if (list === undefined) tasksByGreen.set(task.green, [task])
    else list.push(task)
  }
  return [...tasksByGreen.entries()]
    .flatMap(([index, list]) => {
      const green = problem.greens[index]
      if (green === undefined || list.length !== green.steps.length) return []
      const inOrder = [...list].sort((a, b) => a.startMin - b.startMin || a.finishMin - b.finishMin)
      const marks = chainMarks(green)
      const end = (step: number): number => inOrder[step]?.finishMin ?? 0
      return [
        {
          green: index,
          opened: inOrder[marks.open]?.startMin ?? 0,
          cleared: end(marks.clear),
          dressed: end(marks.dress),
          finished: end(marks.finish),
        },
      ]
    })
    .sort((a, b) => a.opened - b.opened || a.green - b.green)
}

const overlaps = (a: Span, b: Span): boolean => a.start < b.end && b.start < a.end

/** Minutes that people work after ordinary time, per person and shift up to the last task. */
const overtime = (problem: Problem, tasks: readonly ScheduledTask[]): number => {
  const lastByShift = problem.people.map((person) => new Int32Array(person.shifts.length))
  for (const task of tasks)
    for (const index of task.people) {
      const shift =
        problem.people[index]?.shifts.findIndex((s) => task.startMin >= s.start && task.startMin < s.end) ??
        -1
      const last = lastByShift[index]
      if (last !== undefined && shift >= 0) last[shift] = Math.max(last[shift] ?? 0, task.finishMin)
    }
  return problem.people.reduce(
    (sum, person, index) =>
      person.ordinaryEndMin.reduce(
        (more, end, shift) => more + Math.max(0, (lastByShift[index]?.[shift] ?? 0) - end),
        sum,
      ),
    0,
  )
}

/** Judges a schedule. `unfinished` counts the greens of the course that it leaves out. */
export const scoreOf = (problem: Problem, tasks: readonly ScheduledTask[], unfinished: number): Score => {
  const opened = openedGreens(problem, tasks)
  const works = opened.map((o) => ({ green: o.green, span: { start: o.opened, end: o.finished } }))
  return {
    unfinishedGreens: unfinished,
    fixtureClashes: works.reduce(
      (sum, work) =>
        sum + (problem.greens[work.green]?.fixtures.filter((f) => overlaps(f, work.span)).length ?? 0),
      0,
    ),
    shutGreenDays: works.reduce(
      (sum, work) =>
        sum +
        problem.days.filter((day) => overlaps({ start: day.startMin, end: day.endMin }, work.span)).length,
      0,
    ),
    finishMin: tasks.reduce((last, task) => Math.max(last, task.finishMin), 0),
    overtimeMin: overtime(problem, tasks),
    travelMin: tasks.reduce(
      (sum, task) => sum + (task.kind === 'move' ? task.finishMin - task.startMin : 0),
      0,
    ),
  }
}

/** Parts of a score in the order in which they count. */
const PARTS = [
  'unfinishedGreens',
  'fixtureClashes',
  'shutGreenDays',
  'finishMin',
  'overtimeMin',
  'travelMin',
] as const

/** Below 0 when `a` is better, above 0 when `b` is, 0 when they are equal in every part. */
export const compareScores = (a: Score, b: Score): number => {
  for (const part of PARTS) if (a[part] !== b[part]) return a[part] - b[part]
  return 0
}
