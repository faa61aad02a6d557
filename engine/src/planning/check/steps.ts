import { stepKey, type CompiledProblem } from './compile.ts'
import { UNKNOWN, type ReadTask } from './read-tasks.ts'

/** Which task does which step of a green. */
export type StepMatch = {
  /** By green of the problem, by step: the task that does it. */
  readonly byGreen: readonly (readonly (ReadTask | undefined)[])[]
  /** By task: the index of the step it does. Tasks on greens that are not here do no step that is asked for. */
  readonly stepOf: ReadonlyMap<ReadTask, number>
}

/** Whether a task is work on a green rather than service to a machine. */
export const isOperation = ({ kind }: Pick<ReadTask, 'kind'>): boolean =>
  kind !== 'move' && kind !== 'load' && kind !== 'setUp'

const keyOf = (task: ReadTask): string =>
  stepKey(task.kind, task.pass ?? 1, task.kind === 'dress' ? (task.load ?? 1) : null)

/** Matches tasks to steps by operation, pass and load; where several are alike, the earlier task does the earlier step. */
export const matchSteps = (compiled: CompiledProblem, tasks: readonly ReadTask[]): StepMatch => {
  const byGreen = compiled.problem.greens.map(({ steps }) =>
    Array.from<ReadTask | undefined>({ length: steps.length }),
  )
  const stepOf = new Map<ReadTask, number>()
  for (const task of tasks) {
    if (!isOperation(task) || task.green === null || task.green === UNKNOWN) continue
    const taken = byGreen[task.green]
    const step = compiled.stepsByKey[task.green]
      ?.get(keyOf(task))
      ?.find((index) => taken?.[index] === undefined)
    if (taken === undefined || step === undefined) continue
    taken[step] = task
    stepOf.set(task, step)
  }
  return { byGreen, stepOf }
}
