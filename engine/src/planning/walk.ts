import { dryFrom } from './dried.ts'
import { isOperation } from './operations.ts'
import type { Problem, ProblemPerson, ProblemStep, ScheduledTask } from './problem.ts'
import { firstFit, NEVER } from './spans.ts'

const SHED = 0

/** A task with what a walk asks of it again and again. */
export type WalkTask = {
  readonly task: ScheduledTask
  /** Index of its day in the problem. */
  readonly day: number
  /** The green's step, and its index, where the task is an operation. */
  readonly step: ProblemStep | null
  readonly stepIndex: number
  /** Places where it begins and ends. */
  readonly from: number
  readonly to: number
}

/** Where a move goes: the green it names, or the bay if the machine loads next. */
const goalOf = (problem: Problem, tasks: readonly ScheduledTask[], index: number): number => {
  const move = tasks[index]
  if (move?.green !== null && move?.green !== undefined) return problem.greens[move.green]?.place ?? SHED
  const next = tasks.slice(index + 1).find((task) => task.machine === move?.machine)
  const kind =
    next?.green === null || next?.green === undefined ? undefined : problem.greens[next.green]?.sand.kind
  return next?.kind === 'load' ? (problem.stores.find((store) => store.kind === kind)?.place ?? SHED) : SHED
}

/** Reads tasks (in start order) for walking: their steps, and the places between which each takes its machine and people. */
export const walkTasks = (problem: Problem, tasks: readonly ScheduledTask[]): readonly WalkTask[] => {
  const at = new Map<number, { place: number; day: number }>()
  return tasks.map((task, index) => {
    const day = problem.days.findIndex((d) => task.startMin < d.endMin)
    const green = task.green === null ? undefined : problem.greens[task.green]
    const own = green?.place ?? SHED
    const stepIndex =
      green === undefined || !isOperation(task.kind)
        ? -1
        : green.steps.findIndex(
            (s) => s.operation === task.kind && s.pass === task.pass && s.load === task.load,
          )
    const known = { task, day, step: green?.steps[stepIndex] ?? null, stepIndex }
    if (task.machine === null) return { ...known, from: own, to: own }
    const state = at.get(task.machine)
    const from = state !== undefined && state.day === day ? state.place : SHED
    const to = task.kind === 'move' ? goalOf(problem, tasks, index) : isOperation(task.kind) ? own : from
    at.set(task.machine, { place: to, day })
    return { ...known, from: task.kind === 'move' ? from : to, to }
  })
}

/** Whether the shifts of all its people hold a span. */
export const fitsShifts = (
  problem: Problem,
  people: readonly number[],
  start: number,
  finish: number,
): boolean =>
  people.every(
    (person) =>
      problem.people[person]?.shifts.some((shift) => start >= shift.start && finish <= shift.end) === true,
  )

/** A person's day so far: end and place of the last task, and a bit for each break (by index, at most 31) that has had its time. */
type Before = { readonly end: number; readonly place: number; readonly rested: number }

const FRESH: Before = { end: 0, place: SHED, rested: 0 }

/** Breaks that have had their time by a start, those that fit between the last task and it included. */
const restedBy = (person: ProblemPerson, before: Before, start: number): number => {
  let { rested } = before
  for (let index = 0; index < person.breaks.length; index++) {
    const pause = person.breaks[index]
    if (pause === undefined) continue
    const { window, minutes } = pause
    if (Math.min(start, window.end) - Math.max(before.end, window.start) >= minutes) rested |= 1 << index
  }
  return rested
}

/** Later start that leaves the person's breaks: one that can no longer come after this task comes before it. */
const afterBreaks = (person: ProblemPerson, before: Before, start: number, minutes: number): number => {
  let at = start
  for (let index = 0; index < person.breaks.length; index++) {
    const pause = person.breaks[index]
    if (pause === undefined) continue
    const { window } = pause
    if (at >= window.end || at + minutes <= window.start) continue
    if ((restedBy(person, before, at) & (1 << index)) !== 0) continue
    const isStillAfter = window.end - (at + minutes) >= pause.minutes
    if (!isStillAfter) at = Math.min(Math.max(window.start, before.end) + pause.minutes, window.end)
  }
  return at
}

/** How far each machine, person and green has come while tasks are walked through in order. Changed in place. */
export type Walk = {
  readonly problem: Problem
  readonly machineFree: Map<number, number>
  readonly people: Map<number, Before>
  readonly greenFree: Map<number, number>
  readonly dressed: Map<number, number>
}

/** A walk that has not begun. */
export const newWalk = (problem: Problem): Walk => ({
  problem,
  machineFree: new Map(),
  people: new Map(),
  greenFree: new Map(),
  dressed: new Map(),
})

/** The same walk, to be carried on apart. */
export const copyWalk = (walk: Walk): Walk => ({
  problem: walk.problem,
  machineFree: new Map(walk.machineFree),
  people: new Map(walk.people),
  greenFree: new Map(walk.greenFree),
  dressed: new Map(walk.dressed),
})

/** Start allowed by the machine and by the chain of the green: the step before, its wait, the dry sand. */
const chainStart = (walk: Walk, { task, step }: WalkTask): number => {
  const start = Math.max(task.startMin, walk.machineFree.get(task.machine ?? -1) ?? 0)
  if (step === null || task.green === null) return start
  const waited = Math.max(start, (walk.greenFree.get(task.green) ?? 0) + step.lagMin)
  return step.dryNeedMm > 0
    ? Math.max(waited, dryFrom(walk.problem.driedMm, walk.dressed.get(task.green) ?? 0, step.dryNeedMm))
    : waited
}

/** Start allowed by one person: the way from the last task of that day, and the breaks. */
const personStart = (
  walk: Walk,
  { day, from }: WalkTask,
  index: number,
  start: number,
  minutes: number,
): number => {
  const { problem } = walk
  const person = problem.people[index]
  const before = walk.people.get(index)
  if (person === undefined) return start
  const sameDay = before !== undefined && before.end >= (problem.days[day]?.startMin ?? 0)
  const arrived = sameDay
    ? before.end + (problem.personTravelMin[before.place * problem.places.length + from] ?? 0)
    : start
  return afterBreaks(person, before ?? FRESH, Math.max(start, arrived), minutes)
}

/** Rounds of pushing by people and hours after which a task is given up; each push moves on, so a few settle it. */
const MOST_ROUNDS = 20

/**
 * Earliest start of a task, no earlier than planned and than `least`, that its machine, the chain of its green, its people and the workable hours allow;
 * NEVER where there is none.
 */
export const settledStart = (walk: Walk, walked: WalkTask, least: number): number => {
  const { task, step } = walked
  const minutes = task.finishMin - task.startMin
  const spans = step === null ? undefined : walk.problem.workable.get(step.operation)
  let start = Math.max(chainStart(walk, walked), least)
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = start
    for (const person of task.people) start = personStart(walk, walked, person, start, minutes)
    if (spans !== undefined) start = firstFit(spans, start, minutes)
    if (start === before || start >= NEVER) return start
  }
  return NEVER
}

/** Writes a task, moved or not, into the walk. */
export const passTask = (walk: Walk, walked: WalkTask, startMin: number): void => {
  const { task, step, to } = walked
  const finishMin = startMin + task.finishMin - task.startMin
  if (task.machine !== null) walk.machineFree.set(task.machine, finishMin)
  for (const index of task.people) {
    const person = walk.problem.people[index]
    const rested = person === undefined ? 0 : restedBy(person, walk.people.get(index) ?? FRESH, startMin)
    walk.people.set(index, { end: finishMin, place: to, rested })
  }
  if (task.green === null || step === null) return
  walk.greenFree.set(task.green, finishMin)
  if (task.kind === 'dress') walk.dressed.set(task.green, finishMin)
}
