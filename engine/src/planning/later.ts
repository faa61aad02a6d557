import { chainMarks } from './chain.ts'
import { dryFrom } from './dried.ts'
import type { Problem, ProblemPerson, ProblemStep, ScheduledTask } from './problem.ts'
import { firstFit, NEVER } from './spans.ts'

const SHED = 0

const isOperation = (task: ScheduledTask): boolean =>
  task.kind !== 'move' && task.kind !== 'load' && task.kind !== 'setUp'

/** Where each task begins and ends, for the ways of people: worked out from the order of each machine's tasks. */
const placesOfTasks = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
): readonly { readonly from: number; readonly to: number }[] => {
  const at = new Map<number, { place: number; day: number }>()
  return tasks.map((task, index) => {
    const day = problem.days.findIndex((d) => task.startMin < d.endMin)
    const own = task.green === null ? SHED : (problem.greens[task.green]?.place ?? SHED)
    if (task.machine === null) return { from: own, to: own }
    const state = at.get(task.machine)
    const from = state !== undefined && state.day === day ? state.place : SHED
    const to = task.kind === 'move' ? goalOf(problem, tasks, index) : isOperation(task) ? own : from
    at.set(task.machine, { place: to, day })
    return { from: task.kind === 'move' ? from : to, to }
  })
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

const fitsShifts = (problem: Problem, people: readonly number[], start: number, finish: number): boolean =>
  people.every(
    (person) =>
      problem.people[person]?.shifts.some((shift) => start >= shift.start && finish <= shift.end) === true,
  )

/** A person's day so far: end and place of the last task, and the breaks (by index) that have had their time. */
type Before = { readonly end: number; readonly place: number; readonly rested: ReadonlySet<number> }

const FRESH: Before = { end: 0, place: SHED, rested: new Set() }

/** Breaks that fit between the last task and a start. */
const restedBy = (person: ProblemPerson, before: Before, start: number): ReadonlySet<number> => {
  const rested = new Set(before.rested)
  person.breaks.forEach(({ window, minutes }, index) => {
    if (Math.min(start, window.end) - Math.max(before.end, window.start) >= minutes) rested.add(index)
  })
  return rested
}

/** Later start that leaves the person's breaks: one that can no longer come after this task comes before it. */
const afterBreaks = (person: ProblemPerson, before: Before, start: number, minutes: number): number =>
  person.breaks.reduce((at, { window, minutes: pause }, index) => {
    if (at >= window.end || at + minutes <= window.start || restedBy(person, before, at).has(index)) return at
    const stillAfter = window.end - (at + minutes) >= pause
    return stillAfter ? at : Math.min(Math.max(window.start, before.end) + pause, window.end)
  }, start)

const stepOf = (problem: Problem, task: ScheduledTask): ProblemStep | undefined =>
  task.green === null
    ? undefined
    : problem.greens[task.green]?.steps.find(
        (s) => s.operation === task.kind && s.pass === task.pass && s.load === task.load,
      )

/** How far each machine, person and green has come while the tasks are walked through in order. */
type Walk = {
  readonly problem: Problem
  readonly machineFree: Map<number, number>
  readonly people: Map<number, Before>
  readonly greenFree: Map<number, number>
  readonly dressed: Map<number, number>
}

/** Start allowed by the machine and by the chain of the green: the step before, its wait, the dry sand. */
const chainStart = (walk: Walk, task: ScheduledTask, step: ProblemStep | undefined): number => {
  const start = Math.max(task.startMin, walk.machineFree.get(task.machine ?? -1) ?? 0)
  if (step === undefined || task.green === null) return start
  const waited = Math.max(start, (walk.greenFree.get(task.green) ?? 0) + step.lagMin)
  return step.dryNeedMm > 0
    ? Math.max(waited, dryFrom(walk.problem.driedMm, walk.dressed.get(task.green) ?? 0, step.dryNeedMm))
    : waited
}

/** Start allowed by one person: the way from the last task of that day, and the breaks. */
const personStart = (walk: Walk, index: number, from: number, start: number, minutes: number): number => {
  const { problem } = walk
  const person = problem.people[index]
  const before = walk.people.get(index)
  if (person === undefined) return start
  const sameDay =
    before !== undefined &&
    problem.days.some((day) => day.startMin <= before.end && start >= day.startMin && start < day.endMin)
  const arrived = sameDay
    ? before.end + (problem.personTravelMin[before.place * problem.places.length + from] ?? 0)
    : start
  return afterBreaks(person, before ?? FRESH, Math.max(start, arrived), minutes)
}

/** Rounds of pushing by people and hours after which a task is given up; each push moves on, so a few settle it. */
const MOST_ROUNDS = 20

/** Earliest start from `from` on that its people and the workable hours allow; NEVER when there is none. */
const settledStart = (walk: Walk, task: ScheduledTask, place: number, least: number): number => {
  const minutes = task.finishMin - task.startMin
  const spans = isOperation(task)
    ? walk.problem.workable.get(task.kind as ProblemStep['operation'])
    : undefined
  let start = least
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = start
    for (const person of task.people) start = personStart(walk, person, place, start, minutes)
    if (spans !== undefined) start = firstFit(spans, start, minutes)
    if (start === before || start >= NEVER) return start
  }
  return NEVER
}

/** Writes a moved task into the walk. */
const pass = (walk: Walk, task: ScheduledTask, to: number): void => {
  if (task.machine !== null) walk.machineFree.set(task.machine, task.finishMin)
  for (const index of task.people) {
    const person = walk.problem.people[index]
    const rested =
      person === undefined
        ? new Set<number>()
        : restedBy(person, walk.people.get(index) ?? FRESH, task.startMin)
    walk.people.set(index, { end: task.finishMin, place: to, rested })
  }
  if (task.green === null || !isOperation(task)) return
  walk.greenFree.set(task.green, task.finishMin)
  if (task.kind === 'dress') walk.dressed.set(task.green, task.finishMin)
}

const copyOf = (walk: Walk): Walk => ({
  problem: walk.problem,
  machineFree: new Map(walk.machineFree),
  people: new Map(walk.people),
  greenFree: new Map(walk.greenFree),
  dressed: new Map(walk.dressed),
})

/** Opens the green at a minute: the same tasks, some of them later; null when one no longer fits its day and the shifts of its people. */
export type OpenAt = (minute: number) => readonly ScheduledTask[] | null

/**
 * Asks what happens when one green is opened later. The same tasks, machines, people and order; everything is moved later only as far as it must.
 * Ways, waits, drying, workable hours, shifts and breaks push; nothing is re-ordered, and no task leaves its day.
 * What comes before the opening and on other days stays, so it is worked out once for all minutes that are asked.
 */
export const openLater = (problem: Problem, tasks: readonly ScheduledTask[], green: number): OpenAt => {
  const own = problem.greens[green]
  const openStep = own?.steps[chainMarks(own).open]
  const opening = tasks.findIndex(
    (task) => task.green === green && isOperation(task) && stepOf(problem, task) === openStep,
  )
  const openTask = tasks[opening]
  const day = problem.days.find((d) => openTask !== undefined && openTask.startMin < d.endMin)
  if (openTask === undefined || day === undefined) return () => null
  const places = placesOfTasks(problem, tasks)
  const placeOf = (index: number): { readonly from: number; readonly to: number } =>
    places[index] ?? { from: SHED, to: SHED }
  const before: Walk = {
    problem,
    machineFree: new Map(),
    people: new Map(),
    greenFree: new Map(),
    dressed: new Map(),
  }
  for (const [index, task] of tasks.slice(0, opening).entries()) pass(before, task, placeOf(index).to)
  const last = tasks.findLastIndex((task) => task.startMin < day.endMin)
  return (minute) => {
    const walk = copyOf(before)
    const moved: ScheduledTask[] = []
    for (let index = opening; index <= last; index++) {
      const task = tasks[index] ?? openTask
      const step = isOperation(task) ? stepOf(problem, task) : undefined
      const least = Math.max(chainStart(walk, task, step), index === opening ? minute : 0)
      const start = settledStart(walk, task, placeOf(index).from, least)
      const finish = start + task.finishMin - task.startMin
      if (finish > day.endMin || !fitsShifts(problem, task.people, start, finish)) return null
      const next = { ...task, startMin: start, finishMin: finish }
      moved.push(next)
      pass(walk, next, placeOf(index).to)
    }
    return [...tasks.slice(0, opening), ...moved, ...tasks.slice(last + 1)]
  }
}
