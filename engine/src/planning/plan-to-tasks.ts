import { MINUTE_MS } from '../time/zone.ts'
import type { PlanToCheck } from './plan.ts'
import type { Problem, ScheduledTask } from './problem.ts'

const indexOf = (items: readonly { readonly id: string }[]): ReadonlyMap<string, number> =>
  new Map(items.map(({ id }, index) => [id, index]))

/** A task of a plan in the terms of a problem, with its id in the plan. */
export type NamedTask = { readonly id: string; readonly task: ScheduledTask }

/**
 * The tasks of a plan in the terms of a problem, in start order. A task that names a green, a machine or a person that the problem does not have is left out: it
 * cannot be played or moved there. (The checker names such tasks; it reads plans for itself.)
 */
export const namedTasksOf = (problem: Problem, plan: Pick<PlanToCheck, 'tasks'>): readonly NamedTask[] => {
  const [greens, machines, people] = [
    indexOf(problem.greens),
    indexOf(problem.machines),
    indexOf(problem.people),
  ]
  const minute = (instant: string): number => Math.round((Date.parse(instant) - problem.originMs) / MINUTE_MS)
  return plan.tasks
    .flatMap((task): readonly NamedTask[] => {
      const green = task.green === null ? null : greens.get(task.green)
      const machine = task.machine === null ? null : machines.get(task.machine)
      const crew = task.people.map((id) => people.get(id))
      if (green === undefined || machine === undefined || crew.includes(undefined)) return []
      const read: ScheduledTask = {
        kind: task.operation,
        green,
        pass: task.pass,
        load: task.load,
        machine,
        people: crew.flatMap((person) => person ?? []),
        startMin: minute(task.start),
        finishMin: minute(task.finish),
      }
      return [{ id: task.id, task: read }]
    })
    .sort((a, b) => a.task.startMin - b.task.startMin || a.task.finishMin - b.task.finishMin)
}

/** The same without their ids. */
export const tasksOfPlan = (problem: Problem, plan: Pick<PlanToCheck, 'tasks'>): readonly ScheduledTask[] =>
  namedTasksOf(problem, plan).map(({ task }) => task)
