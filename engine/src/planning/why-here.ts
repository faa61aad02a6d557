import { chainMarks } from './chain.ts'
import { dryFrom } from './dried.ts'
import { namedTasksOf } from './plan-to-tasks.ts'
import type { PlanToCheck } from './plan.ts'
import type { Problem, ScheduledTask } from './problem.ts'
import { stockFrom, type Stock } from './stock.ts'
import { instantWriter } from './schedule-to-plan.ts'
import { walkTasks, type WalkTask } from './walk.ts'

/** What keeps a task from starting earlier. Closed. Indices are those of the tasks and machines asked about. */
export const HOLDS = [
  'stepBefore',
  'wait',
  'drying',
  'machineBusy',
  'setUp',
  'way',
  'filling',
  'personBusy',
  'rest',
  'shift',
  'hours',
  'rain',
  'firstGreenCheck',
  'delivery',
  'nothing',
] as const

/** The kind of what holds a task back. */
export type Hold = (typeof HOLDS)[number]

/** One thing that holds a task back, and the earliest minute that it allows. */
export type Reason = {
  readonly hold: Hold
  readonly earliestMin: number
  /** The task that it has to wait for, by index; null where it waits for no task. */
  readonly task: number | null
}

/** Why a task is where it is: what allows no earlier start, and by how many minutes it might start earlier if only that counted. */
export type WhyHere = {
  readonly task: number
  readonly startMin: number
  /** Latest first; the first is what binds. */
  readonly reasons: readonly Reason[]
  /** Minutes between what binds and the start: the plan leaves them free for what comes later, or had no better use. */
  readonly spareMin: number
}

const LEADS: Readonly<Record<string, Hold>> = { setUp: 'setUp', move: 'way', load: 'filling' }

const dayStart = (problem: Problem, walked: WalkTask): number => problem.days[walked.day]?.startMin ?? 0

/** The last task before `index` that passes, by finish. */
const lastBefore = (
  tasks: readonly ScheduledTask[],
  index: number,
  passes: (task: ScheduledTask) => boolean,
): number => {
  const start = tasks[index]?.startMin ?? 0
  let found = -1
  for (let i = 0; i < tasks.length; i++) {
    const task = tasks[i]
    if (i === index || task === undefined || task.finishMin > start || !passes(task)) continue
    if (found < 0 || task.finishMin >= (tasks[found]?.finishMin ?? 0)) found = i
  }
  return found
}

const chainReasons = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  walked: readonly WalkTask[],
  index: number,
): readonly Reason[] => {
  const own = walked[index]
  // The first step waits for none; what brings its machine is no step.
  if (own === undefined || own.step === null || own.stepIndex === 0) return []
  const before = walked.findIndex(
    ({ task, stepIndex }) => task.green === own.task.green && stepIndex === own.stepIndex - 1,
  )
  const finish = tasks[before]?.finishMin
  if (finish === undefined) return []
  const { lagMin, dryNeedMm } = own.step
  const dressed = walked.findLast(
    ({ task, stepIndex }) =>
      task.green === own.task.green && task.kind === 'dress' && stepIndex < own.stepIndex,
  )
  return [
    { hold: lagMin > 0 ? 'wait' : 'stepBefore', earliestMin: finish + lagMin, task: before },
    ...(dryNeedMm > 0 && dressed !== undefined
      ? [
          {
            hold: 'drying' as const,
            earliestMin: dryFrom(problem.driedMm, dressed.task.finishMin, dryNeedMm),
            task: walked.indexOf(dressed),
          },
        ]
      : []),
  ]
}

const machineReason = (
  tasks: readonly ScheduledTask[],
  walked: readonly WalkTask[],
  index: number,
): readonly Reason[] => {
  const { machine } = tasks[index] ?? { machine: null }
  if (machine === null) return []
  const before = lastBefore(tasks, index, (task) => task.machine === machine)
  const task = tasks[before]
  if (task === undefined || walked[before]?.day !== walked[index]?.day) return []
  return [{ hold: LEADS[task.kind] ?? 'machineBusy', earliestMin: task.finishMin, task: before }]
}

const peopleReasons = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  walked: readonly WalkTask[],
  index: number,
): readonly Reason[] => {
  const own = walked[index]
  if (own === undefined) return []
  return own.task.people.flatMap((person): readonly Reason[] => {
    const shift = problem.people[person]?.shifts.find(({ end }) => end > own.task.startMin)
    const fromShift: Reason[] =
      shift === undefined
        ? []
        : [{ hold: 'shift', earliestMin: shift.start + way(problem, 0, own.from), task: null }]
    const before = lastBefore(tasks, index, (task) => task.people.includes(person))
    const last = walked[before]
    if (last === undefined || last.day !== own.day) return fromShift
    const arrived = last.task.finishMin + way(problem, last.to, own.from)
    const breaks = problem.people[person]?.breaks ?? []
    const rest = breaks.find(
      ({ window, minutes }) =>
        window.start < own.task.startMin &&
        window.end > last.task.finishMin &&
        own.task.startMin - Math.max(last.task.finishMin, window.start) <
          minutes + way(problem, last.to, own.from) + 1 &&
        own.task.startMin - Math.max(last.task.finishMin, window.start) >= minutes,
    )
    return [
      ...fromShift,
      { hold: 'personBusy', earliestMin: arrived, task: before },
      ...(rest === undefined
        ? []
        : [
            {
              hold: 'rest' as const,
              earliestMin: Math.max(last.task.finishMin, rest.window.start) + rest.minutes,
              task: null,
            },
          ]),
    ]
  })
}

const way = (problem: Problem, from: number, to: number): number =>
  problem.personTravelMin[from * problem.places.length + to] ?? 0

/** The sky: the hour from which the operation may be worked, and the end of the rain before it. */
const skyReasons = (problem: Problem, walked: WalkTask): readonly Reason[] => {
  const { task, step } = walked
  if (step === null) return []
  const span = problem.workable
    .get(step.operation)
    ?.find(({ start, end }) => start <= task.startMin && end >= task.finishMin)
  const from = dayStart(problem, walked)
  const wet = problem.rain.findLast(({ end }) => end <= task.startMin && end > from)
  return [
    ...(span === undefined || span.start <= from
      ? []
      : [{ hold: 'hours' as const, earliestMin: span.start, task: null }]),
    ...(wet === undefined ? [] : [{ hold: 'rain' as const, earliestMin: wet.end, task: null }]),
  ]
}

/** What a task takes from stock: which, how much, and in which minute. */
type Taken = { readonly stock: Stock; readonly amount: number; readonly atMin: number }

const takenBy = (problem: Problem, { task, step }: WalkTask): Taken | null => {
  const green = task.green === null ? undefined : problem.greens[task.green]
  if (green === undefined) return null
  if (step?.tines !== undefined)
    return { stock: step.tines.kind, amount: step.tines.sets, atMin: task.startMin }
  const filled =
    task.kind === 'load'
      ? green.steps.find((one) => one.operation === 'dress' && one.load === task.load)
      : undefined
  return filled === undefined ? null : { stock: green.sand.kind, amount: filled.sandT, atMin: task.startMin }
}

/** The delivery that what a task takes came with, where less than that lay there before it. */
const deliveryReason = (problem: Problem, walked: readonly WalkTask[], index: number): readonly Reason[] => {
  const own = walked[index] === undefined ? null : takenBy(problem, walked[index])
  if (own === null) return []
  const draws = walked.slice(0, index).flatMap((one) => takenBy(problem, one) ?? [])
  const earliestMin = stockFrom({ problem, draws }, own.stock, 0, own.amount)
  return earliestMin > 0 && earliestMin <= own.atMin ? [{ hold: 'delivery', earliestMin, task: null }] : []
}

/** The look over the first green, which every later opening waits for. */
const checkReason = (problem: Problem, walked: readonly WalkTask[], index: number): readonly Reason[] => {
  const isOpening = ({ task, stepIndex }: WalkTask): boolean => {
    const green = task.green === null ? undefined : problem.greens[task.green]
    return green !== undefined && stepIndex === chainMarks(green).open
  }
  const own = walked[index]
  const first = walked.findIndex(isOpening)
  if (own === undefined || !isOpening(own) || first < 0 || first === index) return []
  const finish = walked[first]?.task.finishMin ?? 0
  return [{ hold: 'firstGreenCheck', earliestMin: finish + problem.settings.firstGreenCheckMin, task: first }]
}

/**
 * Why a task (by index; tasks in start order) starts when it does: all that it had to wait for, the latest first. A task for a machine's set-up, way or filling right before it is looked
 * through, so that the answer names the work behind it. `nothing` binds where the plan leaves the task more room than anything asks.
 */
export const whyHere = (problem: Problem, tasks: readonly ScheduledTask[], index: number): WhyHere => {
  const walked = walkTasks(problem, tasks)
  const startMin = tasks[index]?.startMin ?? 0
  const own = walked[index]
  const direct = (at: number): readonly Reason[] => [
    ...machineReason(tasks, walked, at),
    ...peopleReasons(problem, tasks, walked, at),
    ...deliveryReason(problem, walked, at),
  ]
  const leads: Reason[] = []
  let at = index
  let between = 0
  for (;;) {
    const lead = machineReason(tasks, walked, at)[0]
    const task = lead?.task === null || lead === undefined ? undefined : tasks[lead.task]
    if (lead?.task === null || lead === undefined || task === undefined || LEADS[task.kind] === undefined)
      break
    // What the lead waits for holds the task back as well, by the length of the leads between.
    between += task.finishMin - task.startMin
    const shift = between
    leads.push(...direct(lead.task).map((reason) => ({ ...reason, earliestMin: reason.earliestMin + shift })))
    at = lead.task
  }
  const all = [
    ...chainReasons(problem, tasks, walked, index),
    ...direct(index).filter(({ task }) => task === null || LEADS[tasks[task]?.kind ?? ''] === undefined),
    ...leads.filter(({ task }) => task === null || LEADS[tasks[task]?.kind ?? ''] === undefined),
    ...(own === undefined ? [] : skyReasons(problem, own)),
    ...checkReason(problem, walked, index),
  ]
  const latest = new Map<string, Reason>()
  for (const reason of all) {
    const key = `${reason.hold} ${reason.task}`
    if (reason.earliestMin <= startMin && reason.earliestMin > (latest.get(key)?.earliestMin ?? -1))
      latest.set(key, reason)
  }
  const reasons = [...latest.values()].sort((a, b) => b.earliestMin - a.earliestMin)
  const spareMin = startMin - (reasons[0]?.earliestMin ?? startMin)
  return {
    task: index,
    startMin,
    spareMin,
    reasons: spareMin > 0 ? [{ hold: 'nothing', earliestMin: startMin, task: null }, ...reasons] : reasons,
  }
}

/** The same for a task of a plan: instants of the course, and tasks by id. */
export type WhyTask = {
  readonly task: string
  readonly spareMin: number
  readonly reasons: readonly {
    readonly hold: Hold
    readonly earliest: string
    readonly task: string | null
  }[]
}

/** Why a task of a plan is where it is; null where the plan has no such task or the course can't place it. */
export const whyTask = (problem: Problem, plan: Pick<PlanToCheck, 'tasks'>, id: string): WhyTask | null => {
  const named = namedTasksOf(problem, plan)
  const index = named.findIndex((one) => one.id === id)
  if (index < 0) return null
  const write = instantWriter(problem)
  const tasks = named.map(({ task }) => task)
  const { spareMin, reasons } = whyHere(problem, tasks, index)
  return {
    task: id,
    spareMin,
    reasons: reasons.map(({ hold, earliestMin, task }) => ({
      hold,
      earliest: write(earliestMin),
      task: task === null ? null : (named[task]?.id ?? null),
    })),
  }
}
