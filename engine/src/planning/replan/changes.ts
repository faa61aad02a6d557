import { chainMarks } from '../chain.ts'
import type { Operation } from '../operations.ts'
import type { Schedule, ScheduledTask } from '../problem.ts'
import { instantWriter } from '../schedule-to-plan.ts'
import { coursesOf } from './judge-field.ts'
import { sameHands } from './change.ts'
import { isWork } from './field.ts'
import { stepTasks } from './old-plan.ts'
import type { Because, Causes } from './because.ts'
import { missedPins } from './pins-missed.ts'
import type { Broken } from './repair.ts'

/** One thing that is otherwise in the new plan; instants of the course. Closed; `present` words it. */
export type PlanChange =
  /** A green that was not in work is opened at another time of the same or an earlier day. */
  | {
      readonly kind: 'greenMoved'
      readonly green: string
      readonly from: string
      readonly to: string
      readonly because: Because
    }
  /** A green is opened on a later day. */
  | {
      readonly kind: 'greenPutOff'
      readonly green: string
      readonly from: string
      readonly to: string
      readonly because: Because
    }
  /** A green that was planned is not any more. */
  | {
      readonly kind: 'greenLeftOut'
      readonly green: string
      readonly from: string
      readonly because: Because
    }
  /** A green that was left out is planned now. */
  | { readonly kind: 'greenTakenIn'; readonly green: string; readonly to: string; readonly because: Because }
  /** A green in work is finished at another time; null: not within the days planned. */
  | {
      readonly kind: 'finishMoved'
      readonly green: string
      readonly from: string
      readonly to: string | null
      readonly because: Because
    }
  | (StepChange & {
      readonly kind: 'machineChanged'
      readonly from: string | null
      readonly to: string | null
    })
  | (StepChange & {
      readonly kind: 'peopleChanged'
      readonly from: readonly string[]
      readonly to: readonly string[]
    })
  /** A pin could not be kept at all: machines, people, sand or greens in work do not allow it. */
  | {
      readonly kind: 'pinNotKept'
      readonly green: string
      readonly wanted: string
      readonly got: string | null
      readonly because: Because
    }

type StepChange = {
  readonly green: string
  readonly operation: Operation
  readonly pass: number
  readonly load: number | null
  /** When the step starts now. */
  readonly at: string
  readonly because: Because
}

/** Minutes within which an opening or a finish counts as unmoved in the list (the measure counts every minute): nobody sets out for less. */
const UNMOVED_MIN = 5

type Scene = {
  readonly broken: Broken
  readonly schedule: Schedule
  readonly causes: Causes
}

const greenChanges = ({ broken, schedule, causes }: Scene): readonly PlanChange[] => {
  const { problem, old, oldOpening, opened, marks } = broken
  const write = instantWriter(problem)
  const now = new Map(coursesOf(problem, schedule.tasks, marks).map((one) => [one.green, one]))
  const dayOf = (minute: number): number => problem.days.findIndex(({ endMin }) => minute < endMin)
  return problem.greens.flatMap((green, index): readonly PlanChange[] => {
    const was = oldOpening[index] ?? null
    const is = now.get(index)
    const { id } = green
    const because = causes.green(index)
    if (opened.has(index)) {
      const finishedWas = old[index]?.[chainMarks(green).finish]?.finishMin
      if (finishedWas === undefined || finishedWas <= (problem.committed?.nowMin ?? 0)) return []
      const finished = is === undefined || is.finished > problem.horizonMin ? null : is.finished
      return finished !== null && Math.abs(finished - finishedWas) < UNMOVED_MIN
        ? []
        : [
            {
              kind: 'finishMoved',
              green: id,
              from: write(finishedWas),
              to: finished === null ? null : write(finished),
              because,
            },
          ]
    }
    if (was === null)
      return is === undefined ? [] : [{ kind: 'greenTakenIn', green: id, to: write(is.opened), because }]
    if (is === undefined) return [{ kind: 'greenLeftOut', green: id, from: write(was), because }]
    if (dayOf(is.opened) > dayOf(was))
      return [{ kind: 'greenPutOff', green: id, from: write(was), to: write(is.opened), because }]
    return Math.abs(is.opened - was) < UNMOVED_MIN
      ? []
      : [{ kind: 'greenMoved', green: id, from: write(was), to: write(is.opened), because }]
  })
}

const handChanges = ({ broken, schedule, causes }: Scene): readonly PlanChange[] => {
  const { problem, old } = broken
  const write = instantWriter(problem)
  const nowMin = problem.committed?.nowMin ?? 0
  const now = stepTasks(problem, schedule.tasks.filter(isWork))
  const machineId = (task: ScheduledTask): string | null =>
    task.machine === null ? null : (problem.machines[task.machine]?.id ?? null)
  const peopleIds = (task: ScheduledTask): readonly string[] =>
    task.people.map((person) => problem.people[person]?.id ?? '')
  return problem.greens.flatMap((green, index) =>
    green.steps.flatMap((step, at): readonly PlanChange[] => {
      const was = old[index]?.[at] ?? null
      const is = now[index]?.[at] ?? null
      if (was === null || is === null || is.startMin < nowMin || sameHands(was, is)) return []
      const common = {
        green: green.id,
        operation: step.operation,
        pass: step.pass,
        load: step.load,
        at: write(is.startMin),
        because: causes.task(index, was, is),
      }
      const machine: readonly PlanChange[] =
        was.machine === is.machine
          ? []
          : [{ kind: 'machineChanged', ...common, from: machineId(was), to: machineId(is) }]
      const samePeople =
        was.people.length === is.people.length && was.people.every((one) => is.people.includes(one))
      return samePeople
        ? machine
        : [...machine, { kind: 'peopleChanged', ...common, from: peopleIds(was), to: peopleIds(is) }]
    }),
  )
}

const pinChanges = ({ broken, schedule, causes }: Scene): readonly PlanChange[] => {
  const { problem } = broken
  const write = instantWriter(problem)
  return missedPins(broken, schedule.tasks).map(({ green, wantedMin, gotMin }) => ({
    kind: 'pinNotKept',
    green: problem.greens[green]?.id ?? '',
    wanted: write(wantedMin),
    got: gotMin === null ? null : write(gotMin),
    because: causes.green(green),
  }))
}

/** All that is otherwise in the new plan: greens first, then steps that go to other hands, then pins that could not be kept. */
export const changesOf = (scene: Scene): readonly PlanChange[] => [
  ...greenChanges(scene),
  ...handChanges(scene),
  ...pinChanges(scene),
]
