import { chainMarks } from '../chain.ts'
import { OPERATIONS } from '../operations.ts'
import type { Problem } from '../problem.ts'
import { deadlinesByWindow } from './deadlines.ts'
import { dryingOf, type Drying } from './drying.ts'
import { groundOfPeople, type GroundPeople } from './ground-people.ts'
import { groundOfSteps, type GroundSteps } from './ground-steps.ts'
import { windowsOf, type WorkWindow } from './windows.ts'
import { spansByDay, type SpansByDay } from './spans-by-day.ts'
import { SAND_KINDS, suppliesOf, type Supply } from './supplies.ts'

/** What can be worked out once for a problem and serves every schedule: flat arrays of whole numbers, read and never written. */
export type Ground = GroundSteps &
  GroundPeople & {
    readonly problem: Problem
    readonly greens: number
    readonly machines: number
    readonly places: number
    readonly days: number
    readonly dayStart: Int32Array
    readonly dayEnd: Int32Array
    readonly greenPlace: Int32Array
    readonly weak: Uint8Array
    /** Index into `supplies` and `bay`. */
    readonly sandKind: Uint8Array
    /** Sand by kind, then tine sets by kind. */
    readonly supplies: readonly Supply[]
    readonly bay: Int32Array
    readonly setUpMin: Int32Array
    readonly loadMin: Int32Array
    readonly crew: Int32Array
    /** Most people on one machine. */
    readonly mostCrew: number
    /** Row `(machine * places + from) * places + to`. */
    readonly travelMin: Int32Array
    readonly usable: SpansByDay
    readonly workable: SpansByDay
    readonly drying: Drying
    readonly windows: readonly WorkWindow[]
    /** By when a step must be over: row `window * steps`. */
    readonly deadline: Int32Array
  }

const flat = (rows: readonly Int32Array[]): Int32Array => {
  const size = rows[0]?.length ?? 0
  const all = new Int32Array(size * rows.length)
  rows.forEach((row, index) => all.set(row, index * size))
  return all
}

/** Prepares a problem for the search. */
export const groundOf = (problem: Problem): Ground => {
  const { days, greens, machines } = problem
  const { workable } = problem
  const windows = windowsOf(problem)
  const marks = greens.map(chainMarks)
  return {
    problem,
    ...groundOfSteps(problem, marks),
    ...groundOfPeople(problem),
    greens: greens.length,
    machines: machines.length,
    places: problem.places.length,
    days: days.length,
    dayStart: Int32Array.from(days, (day) => day.startMin),
    dayEnd: Int32Array.from(days, (day) => day.endMin),
    greenPlace: Int32Array.from(greens, (green) => green.place),
    weak: Uint8Array.from(greens, (green) => (green.weak ? 1 : 0)),
    sandKind: Uint8Array.from(greens, (green) => SAND_KINDS.indexOf(green.sand.kind)),
    supplies: suppliesOf(problem),
    bay: Int32Array.from(
      SAND_KINDS,
      (kind) => problem.stores.find((store) => store.kind === kind)?.place ?? 0,
    ),
    setUpMin: Int32Array.from(machines, (machine) => machine.setUpMin),
    loadMin: Int32Array.from(machines, (machine) => machine.loadMin),
    crew: Int32Array.from(machines, (machine) => machine.crew),
    mostCrew: Math.max(1, ...machines.map((machine) => machine.crew)),
    travelMin: flat(machines.map((machine) => machine.travelMin)),
    usable: spansByDay(
      machines.map((machine) => machine.available),
      days,
    ),
    workable: spansByDay(
      OPERATIONS.map((operation) => workable.get(operation) ?? []),
      days,
    ),
    drying: dryingOf(problem),
    windows,
    deadline: deadlinesByWindow(problem, marks, windows),
  }
}

/** Index of the day in which a minute lies; the last day for what lies behind it. */
export const dayOf = (ground: Ground, minute: number): number => {
  let day = Math.min(ground.days - 1, Math.max(0, Math.floor(minute / 1440)))
  while (day > 0 && minute < (ground.dayStart[day] ?? 0)) day--
  while (day < ground.days - 1 && minute >= (ground.dayEnd[day] ?? 0)) day++
  return day
}
