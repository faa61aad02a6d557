import { MINUTE_MS } from '../time/zone.ts'
import { parseInstant } from './check/instant.ts'
import type { PlanTask } from './plan.ts'
import type { Problem, ScheduledTask } from './problem.ts'

const indexOf = (items: readonly { readonly id: string }[]): ReadonlyMap<string, number> =>
  new Map(items.map(({ id }, index) => [id, index]))

/** A task of a plan in the terms of a problem, with its id in the plan. */
export type NamedTask = {
  readonly id: string
  readonly task: ScheduledTask
  /** Whether it names somebody whom the problem does not have; they are not among its people then. */
  readonly hasStrangers: boolean
}

/**
 * Reads tasks of a plan into the minutes and indices of a problem, in the order given. A task that names a green or a machine that the problem does not have, or a time that is none, is
 * left out: it cannot be played or moved there. (The checker names such tasks; it reads plans for itself.)
 */
export const readTasks = (problem: Problem, tasks: readonly PlanTask[]): readonly NamedTask[] => {
  const [greens, machines, people] = [
    indexOf(problem.greens),
    indexOf(problem.machines),
    indexOf(problem.people),
  ]
  const minute = (text: string): number => Math.round((parseInstant(text) - problem.originMs) / MINUTE_MS)
  return tasks.flatMap((task): readonly NamedTask[] => {
    const green = task.green === null ? null : greens.get(task.green)
    const machine = task.machine === null ? null : machines.get(task.machine)
    const [startMin, finishMin] = [minute(task.start), minute(task.finish)]
    if (green === undefined || machine === undefined || !Number.isFinite(startMin + finishMin)) return []
    const known = task.people.flatMap((id) => people.get(id) ?? [])
    const read: ScheduledTask = {
      kind: task.operation,
      green,
      pass: task.pass,
      load: task.load,
      machine,
      people: known,
      startMin,
      finishMin,
    }
    return [{ id: task.id, task: read, hasStrangers: known.length < task.people.length }]
  })
}

/** The tasks of a plan that the problem's own people do, in start order. */
export const namedTasksOf = (
  problem: Problem,
  plan: { readonly tasks: readonly PlanTask[] },
): readonly NamedTask[] =>
  readTasks(problem, plan.tasks)
    .filter(({ hasStrangers }) => !hasStrangers)
    .sort((a, b) => a.task.startMin - b.task.startMin || a.task.finishMin - b.task.finishMin)

/** The same without their ids. */
export const tasksOfPlan = (
  problem: Problem,
  plan: { readonly tasks: readonly PlanTask[] },
): readonly ScheduledTask[] => namedTasksOf(problem, plan).map(({ task }) => task)
