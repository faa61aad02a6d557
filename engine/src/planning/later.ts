import { chainMarks } from './chain.ts'
import { dryFrom } from './dried.ts'
import type { Problem, ProblemPerson, ProblemStep, ScheduledTask, Span } from './problem.ts'
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

type Before = { end: number; place: number }

/** Later start that leaves the person's break: once the break can no longer come after this task, it comes before it. */
const afterBreaks = (person: ProblemPerson, freeFrom: number, start: number, minutes: number): number =>
  person.breaks.reduce((at, { window, minutes: pause }) => {
    if (at >= window.end || at + minutes <= window.start) return at
    const free = Math.max(window.start, freeFrom)
    const before = at - free >= pause
    const after = window.end - (at + minutes) >= pause
    return before || after ? at : Math.min(free + pause, window.end)
  }, start)

const stepOf = (problem: Problem, task: ScheduledTask): ProblemStep | undefined =>
  task.green === null
    ? undefined
    : problem.greens[task.green]?.steps.find(
        (s) => s.operation === task.kind && s.pass === task.pass && s.load === task.load,
      )

/**
 * The same tasks, machines, people and order, with one green opened at `openAt` instead and everything moved later only as far as it must.
 * Ways, waits, drying, workable hours, shifts and breaks push; nothing is re-ordered. Returns null when a task no longer fits a shift of its people.
 */
export const openLater = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  green: number,
  openAt: number,
): readonly ScheduledTask[] | null => {
  const openStep = problem.greens[green]?.steps[chainMarks(problem.greens[green]).open]
  const places = placesOfTasks(problem, tasks)
  const machineFree = new Map<number, number>()
  const people = new Map<number, Before>()
  const greenFree = new Map<number, number>()
  const dressed = new Map<number, number>()
  const moved: ScheduledTask[] = []
  const count = problem.places.length
  for (const [index, task] of tasks.entries()) {
    const minutes = task.finishMin - task.startMin
    const { from, to } = places[index] ?? { from: SHED, to: SHED }
    const step = stepOf(problem, task)
    const chained = isOperation(task) && task.green !== null
    const opens = chained && task.green === green && step === openStep
    let start = Math.max(task.startMin, opens ? openAt : 0, machineFree.get(task.machine ?? -1) ?? 0)
    if (chained) start = Math.max(start, (greenFree.get(task.green ?? -1) ?? 0) + (step?.lagMin ?? 0))
    if (chained && (step?.dryNeedMm ?? 0) > 0)
      start = Math.max(
        start,
        dryFrom(problem.driedMm, dressed.get(task.green ?? -1) ?? 0, step?.dryNeedMm ?? 0),
      )
    const spans: readonly Span[] | undefined = isOperation(task)
      ? problem.workable.get(task.kind as ProblemStep['operation'])
      : undefined
    for (let round = 0; ; round++) {
      const before = start
      for (const person of task.people) {
        const last = people.get(person)
        const sameDay =
          last !== undefined &&
          problem.days.some((d) => d.startMin <= last.end && start < d.endMin && start >= d.startMin)
        const freeFrom = last?.end ?? 0
        if (last !== undefined && sameDay)
          start = Math.max(start, last.end + (problem.personTravelMin[last.place * count + from] ?? 0))
        const who = problem.people[person]
        if (who !== undefined) start = afterBreaks(who, freeFrom, start, minutes)
      }
      if (spans !== undefined) start = firstFit(spans, start, minutes)
      if (start >= NEVER || round > 20) return null
      if (start === before) break
    }
    const finish = start + minutes
    if (!fitsShifts(problem, task.people, start, finish)) return null
    moved.push({ ...task, startMin: start, finishMin: finish })
    if (task.machine !== null) machineFree.set(task.machine, finish)
    for (const person of task.people) people.set(person, { end: finish, place: to })
    if (chained) greenFree.set(task.green ?? -1, finish)
    if (task.kind === 'dress') dressed.set(task.green ?? -1, finish)
  }
  return moved
}
