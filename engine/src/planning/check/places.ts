import { SHED, type CompiledProblem } from './compile.ts'
import { dayOfStart } from './days.ts'
import type { Served } from './loads.ts'
import type { ReadTask } from './read-tasks.ts'

/** Where a task begins and ends, and where its machine stood before it. Null: not known, since something named is not known. */
export type Way = {
  readonly machineFrom: number | null
  readonly begins: number | null
  readonly ends: number | null
}

const bayOf = (compiled: CompiledProblem, served: Served | undefined): number | null => {
  const { greens, stores } = compiled.problem
  const kind = served === undefined ? undefined : greens[served.green]?.sand.kind
  const store = kind === undefined ? stores[0] : stores.find((one) => one.kind === kind)
  return store?.place ?? null
}

const placeOfGreen = (compiled: CompiledProblem, task: ReadTask): number | null =>
  task.green === null ? null : (compiled.greenPlaces[task.green] ?? null)

/** The goal of a task; `next` is the machine's next task of the same day. */
const goalOf = (
  compiled: CompiledProblem,
  served: ReadonlyMap<ReadTask, Served>,
  task: ReadTask,
  next: ReadTask | undefined,
): number | null => {
  if (task.kind === 'setUp') return SHED
  if (task.kind === 'load') return bayOf(compiled, served.get(task))
  if (task.kind !== 'move' || task.green !== null) return placeOfGreen(compiled, task)
  return next?.kind === 'load' ? bayOf(compiled, served.get(next)) : SHED
}

/** Follows one machine through its tasks, which come in order; each day begins at the shed. */
export const followMachine = (
  compiled: CompiledProblem,
  tasks: readonly ReadTask[],
  served: ReadonlyMap<ReadTask, Served>,
): ReadonlyMap<ReadTask, Way> => {
  const { days } = compiled.problem
  const ways = new Map<ReadTask, Way>()
  let today: number | null = null
  let at: number | null = SHED
  for (const [index, task] of tasks.entries()) {
    const day = dayOfStart(days, task.startMin)
    if (day !== today) at = SHED
    today = day
    const following = tasks[index + 1]
    const next =
      following !== undefined && dayOfStart(days, following.startMin) === day ? following : undefined
    const ends = goalOf(compiled, served, task, next)
    ways.set(task, { machineFrom: at, begins: task.kind === 'move' ? at : ends, ends })
    at = ends
  }
  return ways
}

/** Hand work begins and ends on its green. */
export const wayByHand = (compiled: CompiledProblem, task: ReadTask): Way => {
  const place = placeOfGreen(compiled, task)
  return { machineFrom: null, begins: place, ends: place }
}
