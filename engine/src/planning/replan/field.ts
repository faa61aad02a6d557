import { isOperation, OPERATIONS, type Operation } from '../operations.ts'
import type { Problem, ProblemStep, ScheduledTask } from '../problem.ts'
import type { Draw } from '../stock.ts'
import { copyDiary, longestFree, newDiary, write, type Diary } from './diary.ts'

/** What lies in a dresser since it was last loaded. */
export type Hopper = { readonly kind: 'damp' | 'kilnDried'; readonly massT: number }

/**
 * A week half laid out: where each machine stands on each day and when it is free, what each person has to do, how far each green has come.
 * Machines only go on at the end of their day; people may also fill gaps. Changed in place; `copyField` for a try.
 */
export type Field = {
  readonly problem: Problem
  readonly nowMin: number
  /** People trained for an operation, by index. */
  readonly skilled: ReadonlyMap<Operation, readonly number[]>
  /** Row `machine * days + day`: free from, place, and 1 where it has not been used that day. */
  readonly free: Int32Array
  readonly place: Int32Array
  readonly fresh: Uint8Array
  readonly hopper: (Hopper | null)[]
  readonly diaries: Diary[]
  readonly draws: Draw[]
  /** By green: steps done so far, finish of the last of them, finish of the last dress (-1: none). */
  readonly done: Int32Array
  readonly endMin: Int32Array
  readonly dressedMin: Int32Array
  /** By green: 1 where a step found no place, so that nothing after it is laid. */
  readonly stuck: Uint8Array
  readonly tasks: ScheduledTask[]
}

/** Index of the day in which a minute lies; the last one for later minutes. */
export const dayOf = (problem: Problem, minute: number): number => {
  const day = problem.days.findIndex(({ endMin }) => minute < endMin)
  return day < 0 ? problem.days.length - 1 : day
}

/** Whether a task is work on a green rather than for a machine. */
export const isWork = ({ kind }: Pick<ScheduledTask, 'kind'>): boolean => isOperation(kind)

/** Whether a task does a step. */
export const doesStep = (task: ScheduledTask, step: ProblemStep): boolean =>
  step.operation === task.kind &&
  step.pass === (task.pass ?? 1) &&
  step.load === (task.kind === 'dress' ? (task.load ?? 1) : null)

/** A field with nothing in it. Nothing will be laid before `nowMin`. */
export const newField = (problem: Problem, nowMin: number): Field => {
  const machines = problem.machines.length
  const days = problem.days.length
  const greens = problem.greens.length
  return {
    problem,
    nowMin,
    skilled: new Map(
      OPERATIONS.map((operation) => [
        operation,
        problem.people.flatMap((person, index) => (person.skills.has(operation) ? [index] : [])),
      ]),
    ),
    free: new Int32Array(machines * days),
    place: new Int32Array(machines * days),
    fresh: new Uint8Array(machines * days).fill(1),
    hopper: problem.machines.map(() => null),
    diaries: problem.people.map((_, person) => newDiary(problem, person)),
    draws: [],
    done: new Int32Array(greens),
    endMin: new Int32Array(greens),
    dressedMin: new Int32Array(greens).fill(-1),
    stuck: new Uint8Array(greens),
    tasks: [],
  }
}

/** The same field, to be carried on apart. */
export const copyField = (field: Field): Field => ({
  ...field,
  free: field.free.slice(),
  place: field.place.slice(),
  fresh: field.fresh.slice(),
  hopper: field.hopper.slice(),
  diaries: field.diaries.map(copyDiary),
  draws: field.draws.slice(),
  done: field.done.slice(),
  endMin: field.endMin.slice(),
  dressedMin: field.dressedMin.slice(),
  stuck: field.stuck.slice(),
  tasks: field.tasks.slice(),
})

/** The sand bay of a kind of sand. */
export const bayOf = (problem: Problem, kind: 'damp' | 'kilnDried'): number =>
  problem.stores.find((store) => store.kind === kind)?.place ?? 0

const goalOf = (field: Field, task: ScheduledTask, next: ScheduledTask | undefined): number => {
  const { problem } = field
  const own = task.green === null ? 0 : (problem.greens[task.green]?.place ?? 0)
  const sand = (one: ScheduledTask | undefined): 'damp' | 'kilnDried' =>
    one?.green == null ? 'damp' : (problem.greens[one.green]?.sand.kind ?? 'damp')
  if (task.kind === 'setUp') return 0
  if (task.kind === 'load') return bayOf(problem, sand(task))
  if (task.kind !== 'move' || task.green !== null) return own
  return next?.kind === 'load' ? bayOf(problem, sand(next)) : 0
}

const loadInto = (field: Field, task: ScheduledTask, machine: number): void => {
  const green = task.green === null ? undefined : field.problem.greens[task.green]
  const step = green?.steps.find((one) => one.operation === 'dress' && one.load === task.load)
  if (green === undefined || step === undefined) return
  const before = field.hopper[machine]?.massT ?? 0
  field.hopper[machine] = { kind: green.sand.kind, massT: before + step.sandT }
  field.draws.push({ stock: green.sand.kind, amount: step.sandT, atMin: task.startMin })
}

/** Writes work on a green into the field: how far the green has come, and the tines that are worn. */
export const markStep = (field: Field, task: ScheduledTask): void => {
  if (task.green === null || !isWork(task)) return
  const tines = field.problem.greens[task.green]?.steps[field.done[task.green] ?? 0]?.tines
  if (tines !== undefined) field.draws.push({ stock: tines.kind, amount: tines.sets, atMin: task.startMin })
  field.done[task.green] = (field.done[task.green] ?? 0) + 1
  field.endMin[task.green] = Math.max(field.endMin[task.green] ?? 0, task.finishMin)
  if (task.kind === 'dress') field.dressedMin[task.green] = task.finishMin
}

/** Writes a task that stands already: machine, people, sand and green go on from it. `next` is the machine's next standing task of that day. */
export const stand = (field: Field, task: ScheduledTask, next: ScheduledTask | undefined): void => {
  const { problem } = field
  const goal = goalOf(field, task, next)
  let from = goal
  if (task.machine !== null) {
    const row = task.machine * problem.days.length + dayOf(problem, task.startMin)
    if (task.kind === 'move') from = field.place[row] ?? 0
    field.free[row] = Math.max(field.free[row] ?? 0, task.finishMin)
    field.place[row] = goal
    field.fresh[row] = 0
    if (task.kind === 'load') loadInto(field, task, task.machine)
    if (task.kind === 'dress') field.hopper[task.machine] = null
  }
  for (const person of task.people) {
    const diary = field.diaries[person]
    if (diary !== undefined) write(diary, { start: task.startMin, end: task.finishMin }, from, goal)
  }
  markStep(field, task)
  field.tasks.push(task)
}

/** Forgets breaks that can't be had any more, whatever is laid from now on: what is lost must not push later work. */
export const forgetLostBreaks = (field: Field): void => {
  for (const diary of field.diaries)
    diary.breaks = diary.breaks.filter(
      ({ window, minutes }) => longestFree(diary, window, window.start, window.start) >= minutes,
    )
}
