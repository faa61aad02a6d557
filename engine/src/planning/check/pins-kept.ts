import { chainMarks } from '../chain.ts'
import type { Pin } from '../committed.ts'
import type { Plan } from '../plan.ts'
import { parseInstant } from './instant.ts'
import type { Facts, TaskFact } from './facts.ts'

/** A pin that the plan keeps. */
export type KeptPin = {
  readonly green: number
  /** The pinned step: the opening one where the green is pinned. */
  readonly step: number
  readonly task: TaskFact
  /** Whether it is pinned to a minute; else only to a day. */
  readonly isExact: boolean
  /** The people that the pin names, null where it names none. */
  readonly people: readonly number[] | null
}

type Wish = Omit<KeptPin, 'task' | 'isExact'> & {
  readonly day: number
  readonly startMin: number | null
  readonly machine: number | null
}

const openStep = ({ problem }: Facts, green: number): number => {
  const own = problem.greens[green]
  return own === undefined ? -1 : chainMarks(own).open
}

const wishOfPlan = (facts: Facts, pin: NonNullable<Plan['pins']>[number]): Wish => {
  const { compiled, problem } = facts
  const green = compiled.greenIndex.get(pin.green) ?? -1
  return {
    green,
    step: openStep(facts, green),
    day: problem.days.findIndex(({ date }) => date === pin.date),
    startMin: pin.opens === null ? null : (parseInstant(pin.opens) - problem.originMs) / 60_000,
    machine: null,
    people: null,
  }
}

const wishOfProblem = (facts: Facts, pin: Pin): Wish => {
  const { green } = pin
  return pin.kind === 'green'
    ? {
        green,
        step: openStep(facts, green),
        day: pin.day,
        startMin: pin.openMin,
        machine: null,
        people: null,
      }
    : { green, step: pin.step, day: -1, startMin: pin.startMin, machine: pin.machine, people: pin.people }
}

const isKept = ({ problem }: Facts, wish: Wish, task: TaskFact): boolean => {
  const day = problem.days[wish.day]
  const inTime =
    wish.startMin === null
      ? day !== undefined && task.startMin >= day.startMin && task.startMin < day.endMin
      : task.startMin === wish.startMin
  return (
    inTime &&
    (wish.machine === null || wish.machine === task.machine) &&
    (wish.people === null || wish.people.every((person) => task.people.includes(person)))
  )
}

/** Pins of the plan and of the problem that the tasks keep. A pin that is not kept excuses nothing. */
export const keptPins = (facts: Facts, planPins: NonNullable<Plan['pins']>): readonly KeptPin[] => {
  const wishes = [
    ...planPins.map((pin) => wishOfPlan(facts, pin)),
    ...(facts.problem.committed?.pins ?? []).map((pin) => wishOfProblem(facts, pin)),
  ]
  return wishes.flatMap((wish) => {
    const task = facts.stepTasks[wish.green]?.[wish.step]
    if (task === undefined || !task.timed || !isKept(facts, wish, task)) return []
    const { green, step, people } = wish
    return [{ green, step, task, isExact: wish.startMin !== null, people }]
  })
}
