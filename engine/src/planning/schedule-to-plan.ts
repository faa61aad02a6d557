import { MINUTE_MS, isoWithOffset } from '../time/zone.ts'
import type { TaskKind } from './operations.ts'
import type { Plan, PlanTask } from './plan.ts'
import type { Prescription } from './prescription.ts'
import type { Problem, Schedule, ScheduledTask } from './problem.ts'
import { openedGreens, scoreOf } from './score.ts'

/** What a plan says besides its schedule. */
export type PlanFrame = {
  readonly course: { readonly id: string; readonly hash: string }
  readonly prescription: Prescription
  readonly start: string
  readonly seed: number
  readonly schedules: number
}

/** Writes minutes as instants of the course. */
export type WriteInstant = (minute: number) => string

/** Minutes from the origin as instants with the course's offset. */
export const instantWriter =
  (problem: Problem): WriteInstant =>
  (minute) =>
    isoWithOffset(problem.originMs + minute * MINUTE_MS, problem.timeZone)

const unique = <T>(items: readonly T[]): readonly T[] => [...new Set(items)]

/** Index of the day in which a minute lies. */
const dayOf = (problem: Problem, minute: number): number =>
  problem.days.findIndex((day) => minute >= day.startMin && minute < day.endMin)

/** Tasks with ids and names, in time order. */
export const planTasks = (problem: Problem, tasks: readonly ScheduledTask[]): readonly PlanTask[] => {
  const write = instantWriter(problem)
  return tasks.map((task, index) => ({
    id: `t${index + 1}`,
    green: task.green === null ? null : (problem.greens[task.green]?.id ?? null),
    operation: task.kind,
    pass: task.pass,
    load: task.load,
    machine: task.machine === null ? null : (problem.machines[task.machine]?.id ?? null),
    people: task.people.map((person) => problem.people[person]?.id ?? ''),
    start: write(task.startMin),
    finish: write(task.finishMin),
  }))
}

/** Who does what on which day: kinds of work and greens in the order of first start. */
const postsOf = (problem: Problem, tasks: readonly ScheduledTask[]): Plan['posts'] =>
  problem.days.flatMap((day, index) =>
    problem.people.flatMap((person, p) => {
      const own = tasks.filter((task) => task.people.includes(p) && dayOf(problem, task.startMin) === index)
      const operations: readonly TaskKind[] = unique(own.map((task) => task.kind))
      const greens = unique(
        own.flatMap((task) => (task.green === null ? [] : [problem.greens[task.green]?.id ?? ''])),
      )
      return own.length === 0
        ? []
        : [{ date: day.date, person: person.id, operations: [...operations], greens: [...greens] }]
    }),
  )

const openingsOf = (problem: Problem, tasks: readonly ScheduledTask[]): Plan['openings'] => {
  const write = instantWriter(problem)
  return openedGreens(problem, tasks).map((opened) => {
    const green = problem.greens[opened.green]
    const has = (effect: 'clears' | 'dresses'): boolean =>
      green?.steps.some((step) => step.effects.includes(effect)) === true
    return {
      green: green?.id ?? '',
      opened: write(opened.opened),
      cleared: has('clears') ? write(opened.cleared) : null,
      dressed: has('dresses') ? write(opened.dressed) : null,
      finished: write(opened.finished),
    }
  })
}

/** Days on which anything is done; the last safe start is filled in by `lastSafeStarts`. */
const daysOf = (problem: Problem, tasks: readonly ScheduledTask[]): Plan['days'] => {
  const write = instantWriter(problem)
  return problem.days.flatMap((day, index) => {
    const own = tasks.filter((task) => dayOf(problem, task.startMin) === index)
    const finish = own.reduce((last, task) => Math.max(last, task.finishMin), 0)
    return own.length === 0 ? [] : [{ date: day.date, lastSafeStart: null, finish: write(finish) }]
  })
}

/** A schedule as the plan that is printed, kept and checked. `feasible` and the last safe starts are the caller's, who has the checker. */
export const scheduleToPlan = (problem: Problem, schedule: Schedule, frame: PlanFrame): Plan => {
  const { tasks, unplanned } = schedule
  const planned = new Set(tasks.map((task) => task.green))
  const { finishMin, ...score } = scoreOf(problem, tasks, unplanned.length + problem.excluded.length)
  return {
    version: 1,
    course: { ...frame.course },
    prescription: frame.prescription,
    start: frame.start,
    seed: frame.seed,
    schedules: frame.schedules,
    assumed: [...problem.assumed],
    tasks: [...planTasks(problem, tasks)],
    openings: openingsOf(problem, tasks),
    posts: postsOf(problem, tasks),
    days: daysOf(problem, tasks),
    sand: problem.greens
      .filter((green, index) => planned.has(index) && green.sand.loads > 0)
      .map(({ id, sand }) => ({
        green: id,
        lowT: sand.lowT,
        likelyT: sand.likelyT,
        highT: sand.highT,
        loads: sand.loads,
      })),
    unplanned: [
      ...problem.excluded.map(({ green, reason, facts }) => ({ green, reason, facts: { ...facts } })),
      ...unplanned.map(({ green, reason, facts }) => ({
        green: problem.greens[green]?.id ?? '',
        reason,
        facts: { ...facts },
      })),
    ],
    feasible: false,
    objective: {
      ...score,
      finish: tasks.length === 0 ? null : instantWriter(problem)(finishMin),
    },
  }
}
