import { chainMarks, type ChainMarks } from '../chain.ts'
import type { Operation } from '../operations.ts'
import type { Problem, ProblemGreen, ProblemMachine, ProblemStep, Span } from '../problem.ts'
import { intersectSpans, mergeSpans, subtractSpans } from '../spans.ts'
import { heldAtLeast } from './presence.ts'
import { standingOf, type Standing } from './standing.ts'
import { shortestWays } from './ways.ts'

/** A machine that can do a step, its minutes, and when it could be doing it if it had nothing else to do. */
export type Choice = { readonly machine: number; readonly minutes: number; readonly spans: readonly Span[] }

/** A step that is still to do, or the span in which it was done. */
export type BoundStep = {
  readonly step: ProblemStep
  readonly choices: readonly Choice[]
  readonly done: Span | null
  /** A dressing that some dresser of the earlier step `since` must be filled for again: it starts so long after that one has finished. Null where none must. */
  readonly refill: { readonly since: number; readonly minutes: number } | null
}

/** A green with what its bounds need. */
export type BoundGreen = {
  /** Index in the problem. */
  readonly index: number
  readonly green: ProblemGreen
  readonly steps: readonly BoundStep[]
  readonly marks: ChainMarks
  /** The last step that lies in the window in which the green is opened. */
  readonly windowed: number
  /** By window: the parts of it in which the green may be in work; one without a window for a green that is open already. */
  readonly windows: readonly (readonly (Span | null)[])[]
  /** Opened already: no window is looked for. */
  readonly isOpen: boolean
  readonly openFromMin: number
}

/** What the bounds of a problem share. */
export type BoundGround = {
  readonly problem: Problem
  readonly standing: Standing
  readonly greens: readonly BoundGreen[]
  /** Stretches in which a green may be in work: dry, of one day's light, none over before now. */
  readonly windows: readonly Span[]
  /** By machine: shortest ways, minutes. */
  readonly ways: readonly Int32Array[]
  /** By machine, by place: least minutes to it from the shed or from another green. */
  readonly leastWayTo: readonly (readonly number[])[]
  /** By machine, by day: somebody can begin to get it ready; the day's end where nobody can. */
  readonly attendedFrom: readonly (readonly number[])[]
  /** By machine: when it is there and somebody who may drive it is on shift. */
  readonly attended: readonly (readonly Span[])[]
}

/** Which plans a bound is for. */
export type BoundFor = {
  /** Indices of the greens that are to be finished; all when not said. */
  readonly greens?: readonly number[]
  /** Only plans in which no green is in work while a fixture names it. */
  readonly keepFixtures?: boolean
  /** Only plans in which every green is finished on the day on which it is opened, even where the club lets greens stand a dry night. */
  readonly oneDay?: boolean
}

const SHED = 0

const shiftsWith = (problem: Problem, operations: readonly Operation[]): readonly (readonly Span[])[] =>
  problem.people
    .filter((person) => operations.some((operation) => person.skills.has(operation)))
    .map((person) => mergeSpans(person.shifts))

/** Whether a machine is filled before a step. A dresser without a hopper of its own is not. */
export const isFilled = (machine: ProblemMachine | undefined, step: ProblemStep): boolean =>
  step.load !== null && machine !== undefined && machine.hopperT !== null

const firstIn = (spans: readonly Span[], day: Span): number =>
  spans.find((span) => span.end > day.start && span.start < day.end)?.start ?? day.end

/** Place of the bay from which a green is dressed; null where there is none. */
export const bayFor = (problem: Problem, green: ProblemGreen): number | null =>
  problem.stores.find((store) => store.kind === green.sand.kind)?.place ?? null

/** Minutes from the shed to the start of a step: by way of the bay for a dresser. */
const arrivalMin = (
  problem: Problem,
  machine: ProblemMachine,
  ways: Int32Array,
  at: { readonly green: ProblemGreen; readonly step: ProblemStep },
): number => {
  const places = problem.places.length
  const way = (from: number, to: number): number => ways[from * places + to] ?? 0
  const bay = isFilled(machine, at.step) ? bayFor(problem, at.green) : null
  return bay === null
    ? way(SHED, at.green.place)
    : way(SHED, bay) + machine.loadMin + way(bay, at.green.place)
}

type Frame = Pick<BoundGround, 'problem' | 'standing' | 'ways' | 'attendedFrom'>

/** The soonest minute of a day at which a machine that spent the night in the shed can begin a step; the day's start where it is out already. */
export const readyMin = (
  { problem, standing, ways, attendedFrom }: Frame,
  machine: number,
  day: number,
  at: { readonly green: ProblemGreen; readonly step: ProblemStep },
): number => {
  const start = problem.days[day]?.startMin ?? 0
  const one = problem.machines[machine]
  const own = ways[machine]
  if (one === undefined || own === undefined || standing.begun.has(machine * problem.days.length + day))
    return start
  const from = attendedFrom[machine]?.[day] ?? start
  // Somebody is on shift over midnight: work of the day before may run on, so nothing is taken off.
  if (from < start) return start
  return Math.min(problem.days[day]?.endMin ?? start, from + one.setUpMin + arrivalMin(problem, one, own, at))
}

/** Spans of a machine and operation by themselves: workable, machine there, crew on shift. */
const baseSpans = (problem: Problem): ((machine: number, operation: Operation) => readonly Span[]) => {
  const known = new Map<string, readonly Span[]>()
  return (machine, operation) => {
    const key = `${machine} ${operation}`
    const before = known.get(key)
    if (before !== undefined) return before
    const one = problem.machines[machine]
    const crew = heldAtLeast(shiftsWith(problem, [operation]), Math.max(1, one?.crew ?? 1))
    const there = intersectSpans(
      mergeSpans(problem.workable.get(operation) ?? []),
      mergeSpans(one?.available ?? []),
    )
    const spans = intersectSpans(there, crew)
    known.set(key, spans)
    return spans
  }
}

const choicesOf = (
  frame: Frame,
  base: ReturnType<typeof baseSpans>,
  green: ProblemGreen,
  step: ProblemStep,
): readonly Choice[] =>
  frame.problem.machines.flatMap((machine, index) => {
    const minutes = step.minutesByMachine.get(machine.id)
    if (minutes === undefined) return []
    const mornings = frame.problem.days
      .map((day, d) => ({ start: day.startMin, end: readyMin(frame, index, d, { green, step }) }))
      .filter(({ start, end }) => end > start)
    const now = [{ start: 0, end: frame.standing.nowMin }]
    const spans = subtractSpans(subtractSpans(base(index, step.operation), now), mergeSpans(mornings))
    return [{ machine: index, minutes, spans }]
  })

const leastWays = ({ greens, places }: Problem, ways: Int32Array): readonly number[] =>
  places.map((_, to) => {
    const here = greens.filter(({ place }) => place === to).length
    // Who is there already has no way; of two greens at one place one may follow the other.
    if (to === SHED || here > 1) return 0
    return greens.reduce(
      (least, { place }) => (place === to ? least : Math.min(least, ways[place * places.length + to] ?? 0)),
      ways[to] ?? 0,
    )
  })

/**
 * With so many dressers for a load, one of them has done one of as many loads before it, and has been to the bay since. So much is certain only where nothing stands
 * already: a filling may be among what does.
 */
const refillOf = (frame: Frame, index: number, step: number): BoundStep['refill'] => {
  const { problem, standing, ways } = frame
  const green = problem.greens[index]
  const dressers = problem.machines.flatMap((machine, m) =>
    green?.steps[step]?.minutesByMachine.has(machine.id) === true ? [m] : [],
  )
  const since = step - dressers.length
  if (dressers.some((m) => problem.machines[m]?.hopperT === null)) return null
  if (green === undefined || standing.named.has(index) || since < 0 || dressers.length === 0) return null
  if (green.steps.slice(since, step + 1).some(({ load }) => load === null)) return null
  const bay = bayFor(problem, green)
  if (bay === null) return null
  const places = problem.places.length
  const way = (m: number, from: number, to: number): number => ways[m]?.[from * places + to] ?? 0
  const minutes = dressers.map(
    (m) => way(m, green.place, bay) + (problem.machines[m]?.loadMin ?? 0) + way(m, bay, green.place),
  )
  return { since, minutes: Math.min(...minutes) }
}

type GreenFrame = Frame & { readonly windows: readonly Span[]; readonly wanted: BoundFor }

const greenOf = (frame: GreenFrame, base: ReturnType<typeof baseSpans>, index: number): BoundGreen[] => {
  const { problem, standing, wanted } = frame
  const green = problem.greens[index]
  if (green === undefined) return []
  const marks = chainMarks(green)
  const done = standing.done[index] ?? []
  const isOpen = done[marks.open] != null
  const barred = wanted.keepFixtures === true ? mergeSpans(green.fixtures) : []
  const mayStand = problem.settings.mayStandDryNight && wanted.oneDay !== true
  return [
    {
      index,
      green,
      steps: green.steps.map((step, i): BoundStep => ({
        step,
        done: done[i] ?? null,
        choices: choicesOf(frame, base, green, step),
        refill: step.load === null ? null : refillOf(frame, index, i),
      })),
      marks,
      windowed: mayStand ? marks.clear : marks.finish,
      windows: isOpen ? [[null]] : frame.windows.map((window) => subtractSpans([window], barred)),
      isOpen,
      openFromMin: standing.openFrom[index] ?? 0,
    },
  ]
}

/** Prepares a problem for its bounds. */
export const boundGroundOf = (problem: Problem, wanted: BoundFor): BoundGround => {
  const standing = standingOf(problem)
  const ways = problem.machines.map((machine) => shortestWays(machine.travelMin, problem.places.length))
  const attended = problem.machines.map((machine) =>
    intersectSpans(mergeSpans(machine.available), heldAtLeast(shiftsWith(problem, machine.operations), 1)),
  )
  const attendedFrom = attended.map((spans) =>
    problem.days.map((day) => firstIn(spans, { start: day.startMin, end: day.endMin })),
  )
  const windows = problem.days
    .flatMap((day) => subtractSpans([{ start: day.startMin, end: day.darkMin }], problem.rain))
    .filter(({ end }) => end > standing.nowMin)
  const frame = { problem, standing, ways, attendedFrom, windows, wanted }
  const base = baseSpans(problem)
  const greens = wanted.greens ?? problem.greens.map((_, index) => index)
  const leastWayTo = ways.map((own) => leastWays(problem, own))
  return { ...frame, leastWayTo, attended, greens: greens.flatMap((index) => greenOf(frame, base, index)) }
}
