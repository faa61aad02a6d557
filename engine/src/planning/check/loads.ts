import type { CompiledProblem } from './compile.ts'
import { UNKNOWN, type ReadTask } from './read-tasks.ts'
import type { StepMatch } from './steps.ts'

/** The dress step that a load is for. */
export type Served = { readonly green: number; readonly step: number }

/** The step that a load names by green and number (and covering, where it tells one). */
const namedStep = (compiled: CompiledProblem, task: ReadTask): Served | null => {
  if (task.green === null || task.green === UNKNOWN || task.load === null) return null
  const step = compiled.problem.greens[task.green]?.steps.findIndex(
    ({ operation, pass, load }) =>
      operation === 'dress' && load === task.load && (task.pass === null || task.pass === pass),
  )
  return step === undefined || step < 0 ? null : { green: task.green, step }
}

/** The step of the machine's next dress task. */
const nextStep = (later: readonly ReadTask[], match: StepMatch): Served | null => {
  const dress = later.find(({ kind }) => kind === 'dress')
  const step = dress === undefined ? undefined : match.stepOf.get(dress)
  return dress?.green == null || step === undefined ? null : { green: dress.green, step }
}

/** What each load of one machine is for, by task; loads for nothing are left out. The tasks come in order. */
export const servedByLoad = (
  compiled: CompiledProblem,
  machineTasks: readonly ReadTask[],
  match: StepMatch,
): ReadonlyMap<ReadTask, Served> => {
  const served = new Map<ReadTask, Served>()
  for (const [index, task] of machineTasks.entries()) {
    if (task.kind !== 'load') continue
    const names = task.green !== null && task.load !== null
    const step = names ? namedStep(compiled, task) : nextStep(machineTasks.slice(index + 1), match)
    if (step !== null) served.set(task, step)
  }
  return served
}
