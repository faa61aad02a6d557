import type { Pin } from '../committed.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { isWork } from './field.ts'
import { coursesOf } from './judge-field.ts'
import { stepTasks } from './old-plan.ts'
import type { Broken } from './repair.ts'

/** A pin that a schedule does not keep: what was wanted, and what comes instead (null: nothing), minutes. */
export type MissedPin = { readonly green: number; readonly wantedMin: number; readonly gotMin: number | null }

type PinOf<Kind> = Extract<Pin, { readonly kind: Kind }>

const missedGreen = (problem: Problem, pin: PinOf<'green'>, opened: number | undefined): MissedPin | null => {
  const day = problem.days[pin.day]
  const kept =
    opened !== undefined &&
    (pin.openMin === null
      ? day !== undefined && opened >= day.startMin && opened < day.endMin
      : opened === pin.openMin)
  return kept
    ? null
    : { green: pin.green, wantedMin: pin.openMin ?? day?.startMin ?? 0, gotMin: opened ?? null }
}

const missedStep = (pin: PinOf<'step'>, task: ScheduledTask | null): MissedPin | null => {
  const kept =
    task !== null &&
    task.startMin === pin.startMin &&
    (pin.machine === null || pin.machine === task.machine) &&
    (pin.people === null || pin.people.every((person) => task.people.includes(person)))
  return kept ? null : { green: pin.green, wantedMin: pin.startMin, gotMin: task?.startMin ?? null }
}

/** Pins on what has not begun that the tasks do not keep. */
export const missedPins = (
  { problem, opened, marks }: Pick<Broken, 'problem' | 'opened' | 'marks'>,
  tasks: readonly ScheduledTask[],
): readonly MissedPin[] => {
  const pins = problem.committed?.pins ?? []
  if (pins.length === 0) return []
  const courses = coursesOf(problem, tasks, marks)
  const steps = stepTasks(problem, tasks.filter(isWork))
  const nowMin = problem.committed?.nowMin ?? 0
  return pins.flatMap((pin): readonly MissedPin[] => {
    if (pin.kind === 'green') {
      if (opened.has(pin.green)) return []
      const missed = missedGreen(problem, pin, courses.find(({ green }) => green === pin.green)?.opened)
      return missed === null ? [] : [missed]
    }
    const task = steps[pin.green]?.[pin.step] ?? null
    const missed = task !== null && task.startMin < nowMin ? null : missedStep(pin, task)
    return missed === null ? [] : [missed]
  })
}
