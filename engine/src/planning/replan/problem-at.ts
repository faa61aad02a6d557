import type { Course } from '../../course/course.ts'
import type { Pin } from '../committed.ts'
import type { Pace } from '../pace/learn-paces.ts'
import type { Problem, ProblemGreen, ProblemPerson, ProblemStep, Span } from '../problem.ts'
import type { Sky } from '../sky.ts'
import { subtractSpans } from '../spans.ts'
import { doesStep, isWork } from './field.ts'
import type { Moment, Outage, Slower } from './moment.ts'
import type { Part, Standing } from './standing.ts'
import { stocksAt } from './stocks-at.ts'

/** What a problem is changed by. */
export type Changed = {
  readonly course: Course
  readonly moment: Moment
  readonly standing: Standing
  readonly paces: readonly Pace[]
  /** The sky, where the weather has changed. */
  readonly sky: Pick<Sky, 'rain' | 'workable' | 'driedMm'> | null
}

/** Spans of time in which one machine or person is out, in order and not touching. */
const outSpans = (outages: readonly Outage[], index: number): readonly Span[] =>
  outages
    .filter((one) => one.index === index)
    .map(({ fromMin, untilMin }) => ({ start: fromMin, end: untilMin }))
    .sort((a, b) => a.start - b.start)

/** Shifts less the time out. What is left of a shift keeps the end of its ordinary time. */
const withoutTime = (person: ProblemPerson, out: readonly Span[]): ProblemPerson => {
  if (out.length === 0) return person
  const parts = person.shifts.flatMap((shift, index) =>
    out
      .reduce<readonly Span[]>((left, hole) => subtractSpans(left, [hole]), [shift])
      .map((part) => ({ part, ordinaryEnd: person.ordinaryEndMin[index] ?? shift.end })),
  )
  return {
    ...person,
    shifts: parts.map(({ part }) => part),
    ordinaryEndMin: parts.map(({ ordinaryEnd }) => ordinaryEnd),
  }
}

/** How many times the planned minutes a step takes a machine: what the manager said stands before what was learned. */
export const factorOf = (
  slower: readonly Slower[],
  paces: readonly Pace[],
  green: number,
  step: ProblemStep,
  machine: { readonly index: number; readonly id: string },
): number => {
  const said = slower.filter(
    (one) =>
      (one.green === null || one.green === green) &&
      (one.operation === null || one.operation === step.operation) &&
      (one.machine === null || one.machine === machine.index),
  )
  const named = said.some((one) => one.operation !== null || one.machine !== null)
  const learned = paces.find((pace) => pace.machine === machine.id && pace.operation === step.operation)
  return said.reduce((product, one) => product * one.factor, named ? 1 : (learned?.ratio ?? 1))
}

const scaled = (minutes: number, factor: number): number => Math.max(1, Math.round(minutes * factor))

/** The whole wear of a covering counts with its first part. */
const withoutTines = (step: ProblemStep): ProblemStep => {
  const { tines: _tines, ...rest } = step
  return rest
}

/** The step as the spells that were broken off leave it: one step for each of them, then what remains. */
const splitStep = (
  step: ProblemStep,
  parts: readonly Part[],
  minutesLeft: ProblemStep['minutesByMachine'],
): readonly ProblemStep[] => [
  ...parts.map((_, index): ProblemStep => ({
    ...(index === 0 ? step : withoutTines(step)),
    // The whole load went into the hopper with the first part; whoever goes on has it there or, counted apart, in the next load.
    sandT: index === 0 ? step.sandT : 0,
    minutesByMachine: new Map([...step.minutesByMachine.keys()].map((machine) => [machine, 1])),
    effects: index === 0 ? step.effects.filter((effect) => effect === 'opens') : [],
    lagMin: index === 0 ? step.lagMin : 0,
    nextDay: index === 0 && step.nextDay,
    dryNeedMm: index === 0 ? step.dryNeedMm : 0,
  })),
  {
    ...withoutTines(step),
    minutesByMachine: minutesLeft,
    effects: step.effects.filter((effect) => effect !== 'opens'),
    sandT: 0,
    lagMin: 0,
    nextDay: false,
  },
]

/** Share of a step that is left after its parts: one part after the other takes its share of what it found. */
const shareLeft = (
  step: ProblemStep,
  parts: readonly Part[],
  machineId: (index: number) => string,
  factor: (machine: string) => number,
): number =>
  parts.reduce((left, { task, doneShare }) => {
    const id = task.machine === null ? '' : machineId(task.machine)
    const whole = scaled(step.minutesByMachine.get(id) ?? 1, factor(id))
    const done = doneShare ?? Math.min(1, (task.finishMin - task.startMin) / whole)
    return Math.max(0, left - done)
  }, 1)

const greenAt = (problem: Problem, green: ProblemGreen, index: number, changed: Changed): ProblemGreen => {
  const { moment, standing, paces } = changed
  const machineId = (machine: number): string => problem.machines[machine]?.id ?? ''
  const machines = problem.machines.map(({ id }, at) => ({ id, index: at }))
  const begun = standing.tasks.filter((task) => task.green === index && isWork(task))
  return {
    ...green,
    steps: green.steps.flatMap((step, at) => {
      const factor = (id: string): number => {
        const machine = machines.find((one) => one.id === id)
        return machine === undefined ? 1 : factorOf(moment.slower, paces, index, step, machine)
      }
      const parts = standing.parts.filter((part) => part.task.green === index && part.step === at)
      const whole = begun.filter((task) => doesStep(task, step)).length > parts.length
      if (parts.length === 0 && whole) return [step]
      const left = shareLeft(step, parts, machineId, factor)
      const minutes = new Map(
        [...step.minutesByMachine].map(([id, min]) => [id, scaled(min, factor(id) * left)]),
      )
      return parts.length === 0 ? [{ ...step, minutesByMachine: minutes }] : splitStep(step, parts, minutes)
    }),
  }
}

/** Index that a step of the plain problem has once the parts before it are split off: that of what remains of it. */
export const splitIndex = (standing: Standing, green: number, step: number): number =>
  step + standing.parts.filter((part) => part.task.green === green && part.step <= step).length

/** Pins on what has not begun, in the problem's own steps. */
const pinsAt = ({ moment, standing }: Changed): readonly Pin[] =>
  moment.pins.map((pin): Pin =>
    pin.kind === 'green'
      ? { kind: 'green', green: pin.green, day: pin.day, openMin: pin.openMin }
      : {
          kind: 'step',
          green: pin.green,
          step: splitIndex(standing, pin.green, pin.step),
          startMin: pin.startMin,
          machine: pin.machine,
          people: pin.people,
        },
  )

/**
 * The problem as it is at `now`: what stands already, machines and people without the time they are out, minutes by today's paces, steps that were broken off split in
 * two, stores and sky as they were told. The solver, the repair and the checker all read this; the checker makes it again for itself from the facts.
 */
export const problemAt = (problem: Problem, changed: Changed): Problem => {
  const { moment, standing, sky } = changed
  return {
    ...problem,
    ...(sky === null ? {} : { rain: sky.rain, workable: sky.workable, driedMm: sky.driedMm }),
    machines: problem.machines.map((machine, index) => ({
      ...machine,
      available: outSpans(moment.machinesOut, index).reduce<readonly Span[]>(
        (left, hole) => subtractSpans(left, [hole]),
        machine.available,
      ),
    })),
    people: problem.people.map((person, index) => withoutTime(person, outSpans(moment.peopleOut, index))),
    greens: problem.greens.map((green, index) => greenAt(problem, green, index, changed)),
    ...stocksAt(problem, changed),
    committed: { nowMin: moment.nowMin, tasks: standing.tasks, pins: pinsAt(changed) },
  }
}
