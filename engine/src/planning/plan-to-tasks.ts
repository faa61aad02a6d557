import { MINUTE_MS } from '../time/zone.ts'
import type { PlanToCheck } from './plan.ts'
import type { Problem, ScheduledTask } from './problem.ts'

const indexOf = (items: readonly { readonly id: string }[]): ReadonlyMap<string, number> =>
  new Map(items.map(({ id }, index) => [id, index]))

/**
 * The tasks of a plan in the terms of a problem, in start order. A task that names a green, a machine or a person that the problem does not have is left out: it
 * cannot be played or moved there. (The checker names such tasks; it reads plans for itself.)
 */
export const tasksOfPlan = (problem: Problem, plan: Pick<PlanToCheck, 'tasks'>): readonly ScheduledTask[] => {
  const [greens, machines, people] = [
    indexOf(problem.greens),
    indexOf(problem.machines),
    indexOf(problem.people),
  ]
  const minute = (instant: string): number => Math.round((Date.parse(instant) - problem.originMs) / MINUTE_MS)
  return plan.tasks
    .flatMap((task): readonly ScheduledTask[] => {
      const green = task.green === null ? null : greens.get(task.green)
      const machine = task.machine === null ? null : machines.get(task.machine)
      const crew = task.people.map((id) => people.get(id))
      if (green === undefined || machine === undefined || crew.includes(undefined)) return []
      return [
        {
          kind: task.operation,
          green,
          pass: task.pass,
          load: task.load,
          machine,
          people: crew.flatMap((person) => person ?? []),
          startMin: minute(task.start),
          finishMin: minute(task.finish),
        },
      ]
    })
    .sort((a, b) => a.startMin - b.startMin || a.finishMin - b.finishMin)
}
