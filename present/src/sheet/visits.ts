import type { Course, Plan, PlanTask } from '@swardwright/engine'
import { taskTodo } from '../operation-words.ts'
import { clock, instantMs } from '../times.ts'

/** One thing to tick off. */
export type SheetStep = { readonly id: string; readonly todo: string }

/** A stay at one place with one machine: a row of the sheet. */
export type SheetVisit = {
  /** Green by id, null for the yard. */
  readonly green: string | null
  /** Number of the hole as players know it; empty for a practice green and the yard. */
  readonly hole: string
  /** Name of the green, or 'yard'. */
  readonly place: string
  /** Clock of the first task and of the end of the last. */
  readonly from: string
  readonly to: string
  /** Name of the machine, or 'by hand'. */
  readonly machine: string
  readonly steps: readonly SheetStep[]
}

type Row = { readonly place: string | null; readonly machine: string | null; readonly tasks: PlanTask[] }

/**
 * Tasks in order, gathered into stays. Moves are left out: the next row says where to go. A load of sand belongs to the green that it is
 * for, so that dressing reads as one row with its loads.
 */
const gathered = (tasks: readonly PlanTask[]): readonly Row[] => {
  const ordered = tasks
    .filter((task) => task.operation !== 'move')
    .sort((a, b) => instantMs(a.start) - instantMs(b.start))
  const rows: Row[] = []
  ordered.forEach((task, n) => {
    const dressing = ordered
      .slice(n)
      .find((later) => later.operation === 'dress' && later.machine === task.machine)
    const place = task.operation === 'load' ? (dressing?.green ?? null) : task.green
    const last = rows.at(-1)
    if (last !== undefined && last.place === place && last.machine === task.machine) last.tasks.push(task)
    else rows.push({ place, machine: task.machine, tasks: [task] })
  })
  return rows
}

/** Steps to tick: loads of sand are part of the dressing that follows them, and alone only where no dressing does. */
const stepsOf = (row: Row, plan: Plan): readonly SheetStep[] => {
  const dresses = row.tasks.some((task) => task.operation === 'dress')
  const loads = plan.sand.find((sand) => sand.green === row.place)?.loads
  return row.tasks
    .filter((task) => !(dresses && task.operation === 'load'))
    .map((task) => ({ id: task.id, todo: taskTodo({ ...task, loads }) }))
}

/** The rows of one person's day. */
export const visitsOf = (course: Course, plan: Plan, tasks: readonly PlanTask[]): readonly SheetVisit[] =>
  gathered(tasks).map((row) => {
    const green = course.greens.find((candidate) => candidate.id === row.place)
    const machine = course.machines.find((candidate) => candidate.id === row.machine)
    const [first, last] = [row.tasks[0], row.tasks.at(-1)]
    return {
      green: row.place,
      hole: green === undefined || green.hole === null ? '' : String(green.hole),
      place: green?.name ?? row.place ?? 'yard',
      from: first === undefined ? '' : clock(first.start, course.timeZone),
      to: last === undefined ? '' : clock(last.finish, course.timeZone),
      machine: machine?.name ?? row.machine ?? 'by hand',
      steps: stepsOf(row, plan),
    }
  })
