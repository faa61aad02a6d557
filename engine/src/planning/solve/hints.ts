import type { ScheduledTask } from '../problem.ts'
import { walkTasks } from '../walk.ts'
import type { Ground } from './ground.ts'

/** What a schedule that should stay near another one knows of it, by step: -1 where the other has no such step. */
export type Hints = {
  readonly machine: Int32Array
  readonly startMin: Int32Array
  /** Row `step * mostCrew + n`; the first brings the machine. */
  readonly people: Int32Array
}

/** Reads a schedule as hints. */
export const hintsOf = (ground: Ground, tasks: readonly ScheduledTask[]): Hints => {
  const machine = new Int32Array(ground.steps).fill(-1)
  const startMin = new Int32Array(ground.steps).fill(-1)
  const people = new Int32Array(ground.steps * ground.mostCrew).fill(-1)
  for (const { task, stepIndex } of walkTasks(ground.problem, tasks)) {
    if (task.green === null || stepIndex < 0) continue
    const step = (ground.firstStep[task.green] ?? 0) + stepIndex
    machine[step] = task.machine ?? -1
    startMin[step] = task.startMin
    task.people.slice(0, ground.mostCrew).forEach((person, n) => {
      people[step * ground.mostCrew + n] = person
    })
  }
  return { machine, startMin, people }
}
