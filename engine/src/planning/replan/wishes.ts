import { chainMarks } from '../chain.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { doesStep, isWork } from './field.ts'
import { splitIndex } from './problem-at.ts'
import type { Situation } from './situation.ts'

/** What the old plan has for the steps of the problem at `now`: by green, by step; null where it has nothing. */
export type OldSteps = readonly (readonly (ScheduledTask | null)[])[]

/** The old task of every step; what remains of a step that was broken off has the task that it was part of. */
export const oldSteps = ({ base, problem, standing, oldTasks }: Situation): OldSteps => {
  const byGreen = problem.greens.map(({ steps }) => steps.map((): ScheduledTask | null => null))
  base.greens.forEach(({ steps }, green) => {
    const own = oldTasks.filter((task) => task.green === green && isWork(task))
    const taken = new Set<ScheduledTask>()
    steps.forEach((step, index) => {
      const parts = standing.parts.filter((part) => part.task.green === green && part.step === index).length
      const alike = own.filter((task) => !taken.has(task) && doesStep(task, step))
      // A plan that was replanned before has a task for each part and one for the rest.
      const tasks = alike.slice(0, parts + 1)
      const last = tasks.at(-1) ?? null
      for (const task of tasks) taken.add(task)
      const at = splitIndex(standing, green, index)
      for (let part = 0; part <= parts; part++) {
        const row = byGreen[green]
        if (row !== undefined) row[at - parts + part] = tasks[part] ?? last
      }
    })
  })
  return byGreen
}

/** When the old plan opens each green; null where it does not. */
export const oldOpenings = (problem: Problem, old: OldSteps): readonly (number | null)[] =>
  problem.greens.map((green, index) => old[index]?.[chainMarks(green).open]?.startMin ?? null)
