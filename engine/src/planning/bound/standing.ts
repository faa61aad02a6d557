import type { Problem, ProblemGreen, ScheduledTask, Span } from '../problem.ts'

/** What stands already, as a bound needs it. All of it is empty for a first plan. */
export type Standing = {
  /** Nothing else starts before. */
  readonly nowMin: number
  /** By green, by step: when it is or will have been done; null where it is still to do. */
  readonly done: readonly (readonly (Span | null)[])[]
  /** Last finish of what stands; 0 when nothing does. */
  readonly finishMin: number
  /** Machine and day (`machine * days + day`) on which a machine has been out of the shed. */
  readonly begun: ReadonlySet<number>
  /** Greens that a standing task names: a machine may be there, or be filled for them. */
  readonly named: ReadonlySet<number>
  /** A machine may stand at a bay. */
  readonly atBay: boolean
  /** Machines that lie filled: their next dressing, on whatever green, needs no filling. */
  readonly filled: ReadonlySet<number>
  /** By green: the opening is no earlier, as the manager has pinned it. */
  readonly openFrom: readonly number[]
}

const doneOf = (green: ProblemGreen, tasks: readonly ScheduledTask[]): readonly (Span | null)[] =>
  green.steps.map(({ operation, pass, load }) => {
    const task = tasks.find((one) => one.kind === operation && one.pass === pass && one.load === load)
    return task === undefined ? null : { start: task.startMin, end: task.finishMin }
  })

const daysTouched = (problem: Problem, task: ScheduledTask): readonly number[] =>
  problem.days.flatMap((day, index) =>
    task.startMin < day.endMin && Math.max(task.finishMin, task.startMin + 1) > day.startMin ? [index] : [],
  )

const filledOf = (tasks: readonly ScheduledTask[]): ReadonlySet<number> => {
  const filled = new Set<number>()
  for (const { kind, machine } of tasks) {
    if (machine === null) continue
    if (kind === 'load') filled.add(machine)
    if (kind === 'dress') filled.delete(machine)
  }
  return filled
}

/** Reads what stands. Pins count only as far as they keep a green from being opened sooner. */
export const standingOf = (problem: Problem): Standing => {
  const { committed, days, greens } = problem
  const tasks = committed?.tasks ?? []
  const openFrom = greens.map(() => 0)
  for (const pin of committed?.pins ?? [])
    if (pin.kind === 'green')
      openFrom[pin.green] = Math.max(openFrom[pin.green] ?? 0, pin.openMin ?? days[pin.day]?.startMin ?? 0)
  return {
    nowMin: committed?.nowMin ?? 0,
    done: greens.map((green, index) =>
      doneOf(
        green,
        tasks.filter((task) => task.green === index),
      ),
    ),
    finishMin: tasks.reduce((last, task) => Math.max(last, task.finishMin), 0),
    begun: new Set(
      tasks.flatMap((task) =>
        task.machine === null
          ? []
          : daysTouched(problem, task).map((day) => (task.machine ?? 0) * days.length + day),
      ),
    ),
    named: new Set(tasks.flatMap((task) => task.green ?? [])),
    atBay: tasks.some((task) => task.kind === 'load' || (task.kind === 'move' && task.green === null)),
    filled: filledOf(tasks),
    openFrom,
  }
}
