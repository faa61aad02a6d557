import type { Plan, PlanTask } from '../plan.ts'
import type { ScheduledTask } from '../problem.ts'
import type { TaskKind } from '../operations.ts'
import type { CompiledProblem } from './compile.ts'
import { parseInstant } from './instant.ts'

/** Stands where a task names somebody or something that the course does not have. */
export const UNKNOWN = -1

/** The parts of a plan that the checker judges. A plan written by hand may leave out all but its tasks. */
export type PlanToCheck = Pick<Plan, 'tasks'> & {
  readonly [
    Part in
      'unplanned' | 'openings' | 'objective' | 'posts' | 'days' | 'sand' | 'feasible' | 'pins' | 'pinRisks'
  ]?: Plan[Part] | undefined
}

/** A task with ids turned into indices and instants into minutes; `UNKNOWN` where there is no such id. */
export type ReadTask = {
  readonly id: string
  readonly kind: TaskKind
  readonly green: number | null
  readonly greenName: string | null
  readonly pass: number | null
  readonly load: number | null
  readonly machine: number | null
  /** Each person once. */
  readonly people: readonly number[]
  readonly startMin: number
  readonly finishMin: number
  /** False when a time cannot be read or the finish is before the start: the rules about time then leave the task out. */
  readonly timed: boolean
}

/** Place in the order of tasks that begin and end at one instant: what must be there first comes first. */
const rank = (task: ReadTask): number => {
  if (task.kind === 'setUp') return 0
  if (task.kind === 'move') return task.green === null ? 1 : 3
  return task.kind === 'load' ? 2 : 4
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

const inOrder = (a: ReadTask, b: ReadTask): number =>
  a.startMin - b.startMin || a.finishMin - b.finishMin || rank(a) - rank(b) || byText(a.id, b.id)

/** Tasks in the order in which they happen; those without readable times after the rest. */
const sorted = (tasks: readonly ReadTask[]): readonly ReadTask[] => [
  ...tasks.filter(({ timed }) => timed).sort(inOrder),
  ...tasks.filter(({ timed }) => !timed).sort((a, b) => byText(a.id, b.id)),
]

const isTimed = (startMin: number, finishMin: number): boolean => finishMin >= startMin

const distinct = <T>(list: readonly T[]): readonly T[] => (list.length < 2 ? list : [...new Set(list)])

/** Indices and minutes of one task as the plan writes it. */
const readTask = (compiled: CompiledProblem, task: PlanTask): ReadTask => {
  const { greenIndex, machineIndex, personIndex } = compiled
  const { originMs } = compiled.problem
  const startMin = (parseInstant(task.start) - originMs) / 60_000
  const finishMin = (parseInstant(task.finish) - originMs) / 60_000
  return {
    id: task.id,
    kind: task.operation,
    green: task.green === null ? null : (greenIndex.get(task.green) ?? UNKNOWN),
    greenName: task.green,
    pass: task.pass,
    load: task.load,
    machine: task.machine === null ? null : (machineIndex.get(task.machine) ?? UNKNOWN),
    people: distinct(task.people).map((person) => personIndex.get(person) ?? UNKNOWN),
    startMin,
    finishMin,
    timed: isTimed(startMin, finishMin),
  }
}

/** The tasks of a plan, in order. */
export const readPlanTasks = (compiled: CompiledProblem, plan: PlanToCheck): readonly ReadTask[] =>
  sorted(plan.tasks.map((task) => readTask(compiled, task)))

/** One task of a schedule. Field by field: a spread costs ten times as much here, and this runs hundreds of times. */
const readScheduled = (compiled: CompiledProblem, task: ScheduledTask, id: string): ReadTask => ({
  id,
  kind: task.kind,
  green: task.green,
  greenName: task.green === null ? null : (compiled.greenIds[task.green] ?? null),
  pass: task.pass,
  load: task.load,
  machine: task.machine,
  people: distinct(task.people),
  startMin: task.startMin,
  finishMin: task.finishMin,
  timed: isTimed(task.startMin, task.finishMin),
})

/** The tasks of a search's schedule, in order; a task's id is its place in the schedule. */
export const readScheduledTasks = (
  compiled: CompiledProblem,
  tasks: readonly ScheduledTask[],
): readonly ReadTask[] => sorted(tasks.map((task, index) => readScheduled(compiled, task, String(index))))
