import type { Problem } from '../problem.ts'
import type { CompiledProblem } from './compile.ts'
import { servedByLoad, type Served } from './loads.ts'
import { followMachine, wayByHand, type Way } from './places.ts'
import { UNKNOWN, type ReadTask } from './read-tasks.ts'
import { isOperation, matchSteps, type StepMatch } from './steps.ts'
import { workStateOf, type WorkState } from './work-state.ts'

/** A task with all that the rules ask about it. */
export type TaskFact = ReadTask & {
  /** Index of the step of its green that it does; null for machine tasks and for work that no step asks for. */
  readonly step: number | null
  /** What a load is for. */
  readonly served: Served | null
  readonly way: Way
}

/** What the rules read: one plan, by task, machine, person and green. Every list stands in order of time. */
export type Facts = {
  readonly compiled: CompiledProblem
  readonly problem: Problem
  readonly tasks: readonly TaskFact[]
  /** Without the tasks whose times cannot be read, as all that follow. */
  readonly timed: readonly TaskFact[]
  readonly byMachine: readonly (readonly TaskFact[])[]
  readonly byPerson: readonly (readonly TaskFact[])[]
  /** By green of the problem, by step. */
  readonly stepTasks: readonly (readonly (TaskFact | undefined)[])[]
  /** Greens on which any operation is planned. */
  readonly planned: ReadonlySet<number>
  /** Of the planned greens that the problem has steps for, in the problem's order. */
  readonly states: readonly WorkState[]
}

const NOWHERE: Way = { machineFrom: null, begins: null, ends: null }

const groupBy = <T>(list: readonly T[], size: number, keys: (item: T) => readonly number[]): T[][] => {
  const groups = Array.from({ length: size }, (): T[] => [])
  for (const item of list) for (const key of keys(item)) groups[key]?.push(item)
  return groups
}

const waysOf = (
  compiled: CompiledProblem,
  tasks: readonly ReadTask[],
  match: StepMatch,
): { readonly ways: ReadonlyMap<ReadTask, Way>; readonly served: ReadonlyMap<ReadTask, Served> } => {
  const timed = tasks.filter(({ timed: isTimed }) => isTimed)
  const byMachine = groupBy(timed, compiled.problem.machines.length, ({ machine }) =>
    machine === null ? [] : [machine],
  )
  const served = new Map<ReadTask, Served>()
  const ways = new Map<ReadTask, Way>()
  for (const machineTasks of byMachine) {
    for (const [task, what] of servedByLoad(compiled, machineTasks, match)) served.set(task, what)
    for (const [task, way] of followMachine(compiled, machineTasks, served)) ways.set(task, way)
  }
  return { ways, served }
}

/** Field by field, as in `read-tasks.ts`: a spread would cost more than all the rules. */
const factOfTask = (task: ReadTask, step: number | null, what: Served | null, way: Way): TaskFact => ({
  id: task.id,
  kind: task.kind,
  green: task.green,
  greenName: task.greenName,
  pass: task.pass,
  load: task.load,
  machine: task.machine,
  people: task.people,
  startMin: task.startMin,
  finishMin: task.finishMin,
  timed: task.timed,
  step,
  served: what,
  way,
})

/** Turns tasks that stand in order into facts. */
export const factsOf = (compiled: CompiledProblem, read: readonly ReadTask[]): Facts => {
  const { problem } = compiled
  const match = matchSteps(compiled, read)
  const { ways, served } = waysOf(compiled, read, match)
  const factOf = new Map<ReadTask, TaskFact>()
  for (const task of read) {
    const way = ways.get(task) ?? (task.machine === null ? wayByHand(compiled, task) : NOWHERE)
    factOf.set(task, factOfTask(task, match.stepOf.get(task) ?? null, served.get(task) ?? null, way))
  }
  const tasks = [...factOf.values()]
  const timed = tasks.filter(({ timed: isTimed }) => isTimed)
  const planned = new Set(
    tasks.filter(isOperation).flatMap(({ green }) => (green === null || green === UNKNOWN ? [] : [green])),
  )
  return {
    compiled,
    problem,
    tasks,
    timed,
    byMachine: groupBy(timed, problem.machines.length, ({ machine }) => (machine === null ? [] : [machine])),
    byPerson: groupBy(timed, problem.people.length, ({ people }) => people),
    stepTasks: match.byGreen.map((steps) =>
      steps.map((task) => (task === undefined ? undefined : factOf.get(task))),
    ),
    planned,
    states: match.byGreen.flatMap((steps, green) =>
      planned.has(green) ? (workStateOf(compiled, green, steps) ?? []) : [],
    ),
  }
}

/** The span of a task. */
export const spanOf = (task: ReadTask): { readonly start: number; readonly end: number } => ({
  start: task.startMin,
  end: task.finishMin,
})

/** The id of a green by its index. */
export const greenId = (facts: Facts, green: number): string | null => facts.compiled.greenIds[green] ?? null

/** The step that a task does, null where none asks for it. */
export const stepOf = (facts: Facts, task: TaskFact): Problem['greens'][number]['steps'][number] | null =>
  task.green === null || task.step === null
    ? null
    : (facts.problem.greens[task.green]?.steps[task.step] ?? null)
