import type { Course } from '../../course/course.ts'
import type { Pin } from '../committed.ts'
import type { Pace } from '../pace/learn-paces.ts'
import type {
  Problem,
  ProblemGreen,
  ProblemPerson,
  ProblemStep,
  ProblemStore,
  ProblemTines,
  ScheduledTask,
  Span,
} from '../problem.ts'
import type { Sky } from '../sky.ts'
import { subtractSpans } from '../spans.ts'
import { doesStep, isWork } from './field.ts'
import type { Moment, Outage, Slower } from './moment.ts'
import type { Part, Standing } from './standing.ts'

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

/** Sand taken by loads that began before a moment, by kind. */
const takenT = (problem: Problem, tasks: readonly ScheduledTask[], kind: string, beforeMin: number): number =>
  tasks.reduce((sum, task) => {
    const green = task.kind === 'load' && task.green !== null ? problem.greens[task.green] : undefined
    if (green === undefined || green.sand.kind !== kind || task.startMin >= beforeMin) return sum
    return (
      sum + (green.steps.find((step) => step.operation === 'dress' && step.load === task.load)?.sandT ?? 0)
    )
  }, 0)

/** Deliveries of one entry of the course as the facts have them; `at` is its place among the stores and then the tine sets. */
const movedBy = <T extends { readonly atMin: number }>(
  moment: Moment,
  at: number,
  own: { readonly deliveries: readonly { readonly date: string }[] } | undefined,
  deliveries: readonly T[],
): readonly T[] =>
  deliveries.map((delivery, index) => {
    const date = own?.deliveries[index]?.date
    const again = moment.deliveries.find((one) => one.store === at && one.date === date)
    return again === undefined ? delivery : { ...delivery, atMin: again.atMin }
  })

/** Stores as the facts have them. What was seen in the bays counts with what had been taken by then, all of it in the first store of its kind. */
const storesAt = (problem: Problem, { course, moment, standing }: Changed): readonly ProblemStore[] => {
  const moved = problem.stores.map((store, index) => ({
    ...store,
    deliveries: movedBy(moment, index, course.stores[index], store.deliveries),
  }))
  return [...moment.sand]
    .sort((a, b) => a.atMin - b.atMin)
    .reduce<readonly ProblemStore[]>((stores, seen) => {
      const first = stores.findIndex(({ kind }) => kind === seen.kind)
      const stockT = seen.massT + takenT(problem, standing.tasks, seen.kind, seen.atMin)
      return stores.map((store, index) =>
        store.kind !== seen.kind
          ? store
          : {
              ...store,
              stockT: index === first ? stockT : 0,
              deliveries: store.deliveries.filter(({ atMin }) => atMin > seen.atMin),
            },
      )
    }, moved)
}

/** Tine sets as the facts have them; nothing where no count is kept. */
const tinesAt = (
  { tines }: Problem,
  { course, moment }: Changed,
): { readonly tines?: readonly ProblemTines[] } =>
  tines === undefined
    ? {}
    : {
        tines: tines.map((entry, index) => ({
          ...entry,
          deliveries: movedBy(
            moment,
            course.stores.length + index,
            course.tineSets?.[index],
            entry.deliveries,
          ),
        })),
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
    stores: storesAt(problem, changed),
    ...tinesAt(problem, changed),
    committed: { nowMin: moment.nowMin, tasks: standing.tasks, pins: pinsAt(changed) },
  }
}
