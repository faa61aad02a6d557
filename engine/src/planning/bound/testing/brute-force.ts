import { isCleanSchedule } from '../../check/check.ts'
import { compileProblem } from '../../check/compile.ts'
import type { Problem, ProblemStep, ScheduledTask, Span } from '../../problem.ts'
import { TICK_MIN } from './tiny-problem.ts'

/** Where the tasks placed so far leave everybody. Tasks are placed in the order of their starts. */
type State = {
  readonly tasks: readonly ScheduledTask[]
  /** By green: steps done, and when the last of them ends. */
  readonly done: readonly number[]
  readonly greenFree: readonly number[]
  /** By machine and by person: free from, and where. */
  readonly machineFree: readonly number[]
  readonly machineAt: readonly number[]
  /** By machine: day on which it was set up last, or whatever it did last; -1 for none. */
  readonly machineDay: readonly number[]
  /** Has just been moved: moved again at once, it could as well have gone straight there. */
  readonly moved: readonly boolean[]
  /** Filled for so many loads. */
  readonly filled: readonly number[]
  readonly personFree: readonly number[]
  readonly personAt: readonly number[]
  readonly personDay: readonly number[]
  /** By green: when it was opened; -1 where it has not been. */
  readonly opened: readonly number[]
  /** When the next green may be opened: once the first has been looked over. */
  readonly openFrom: number
}

/** A task that could come next, without its time and people. */
type Next = {
  readonly kind: ScheduledTask['kind']
  readonly machine: number
  readonly green: number | null
  readonly load: number | null
  readonly from: number
  readonly to: number
  readonly minutes: number
  readonly crew: number
}

const within = (span: Span, list: readonly Span[]): boolean =>
  list.some(({ start, end }) => start <= span.start && span.end <= end)

const subsets = (items: readonly number[], size: number): readonly (readonly number[])[] =>
  size === 0
    ? [[]]
    : items.flatMap((item, index) => subsets(items.slice(index + 1), size - 1).map((rest) => [item, ...rest]))

const with_ = <T>(list: readonly T[], index: number, value: T): readonly T[] =>
  list.map((old, i) => (i === index ? value : old))

const dayAt = (problem: Problem, minute: number): number =>
  problem.days.findIndex(({ startMin, endMin }) => minute >= startMin && minute < endMin)

/** Everything that some machine could sensibly do next: the step that a green waits for, or what has to be done before it. */
const nextTasks = (problem: Problem, state: State, day: number): readonly Next[] => {
  const places = problem.places.length
  return problem.machines.flatMap((machine, m): Next[] => {
    const fresh = state.machineDay[m] !== day
    const at = fresh ? 0 : (state.machineAt[m] ?? 0)
    const plain = { machine: m, crew: 1, load: null, green: null }
    const moved = !fresh && state.moved[m] === true
    const move = (green: number | null, to: number): Next => ({
      ...plain,
      kind: 'move',
      green,
      from: at,
      to,
      minutes: machine.travelMin[at * places + to] ?? 0,
    })
    if (fresh && machine.setUpMin > 0)
      return [{ ...plain, kind: 'setUp', from: 0, to: 0, minutes: machine.setUpMin }]
    return problem.greens.flatMap((green, g): Next[] => {
      const wanted = green.steps.findIndex(
        (step, index) => index >= (state.done[g] ?? 0) && step.minutesByMachine.has(machine.id),
      )
      const step = green.steps[wanted]
      if (step === undefined) return []
      const bay = problem.stores[0]?.place ?? 0
      if (step.load !== null && state.filled[m] === 0)
        return at === bay
          ? [
              {
                ...plain,
                kind: 'load',
                green: g,
                load: step.load,
                from: bay,
                to: bay,
                minutes: machine.loadMin,
              },
            ]
          : moved
            ? []
            : [move(null, bay)]
      if (at !== green.place) return moved ? [] : [move(g, green.place)]
      if (wanted !== state.done[g]) return []
      const minutes = step.minutesByMachine.get(machine.id) ?? 0
      return [
        {
          kind: step.operation,
          machine: m,
          green: g,
          load: step.load,
          from: at,
          to: at,
          minutes,
          crew: machine.crew,
        },
      ]
    })
  })
}

/** Whether anybody is on shift at a minute. */
const isManned = (problem: Problem, minute: number): boolean =>
  problem.people.some(({ shifts }) => shifts.some(({ start, end }) => start <= minute && minute < end))

const isMachineTask = (kind: ScheduledTask['kind']): boolean =>
  kind === 'move' || kind === 'load' || kind === 'setUp'

/** The soonest end of a branch: each green's rest one step after the other, each machine's rest where no other can do it. */
const soonestEnd = (problem: Problem, state: State, sinceMin: number): number => {
  let most = sinceMin
  const byMachine = problem.machines.map((_, m) => Math.max(sinceMin, state.machineFree[m] ?? 0))
  for (const [g, green] of problem.greens.entries()) {
    const rest = green.steps.slice(state.done[g] ?? 0)
    let end = state.greenFree[g] ?? 0
    for (const step of rest) {
      const minutes = Math.min(...step.minutesByMachine.values())
      end = Math.max(end + step.lagMin, sinceMin) + minutes
      const only = step.minutesByMachine.size === 1 ? [...step.minutesByMachine.keys()][0] : undefined
      const m = problem.machines.findIndex(({ id }) => id === only)
      if (m >= 0) byMachine[m] = (byMachine[m] ?? 0) + minutes
      most = Math.max(most, end)
    }
  }
  // A machine that has nothing left may run on: its end is in `greenFree` already.
  return byMachine.reduce(
    (last, endMin, m) => (restsOn(problem, state, m) ? Math.max(last, endMin) : last),
    most,
  )
}

/** Whether a machine has anything left to do that no other can. */
const restsOn = (problem: Problem, state: State, m: number): boolean =>
  problem.greens.some((green, g) =>
    green.steps
      .slice(state.done[g] ?? 0)
      .some(
        ({ minutesByMachine }) =>
          minutesByMachine.size === 1 && minutesByMachine.has(problem.machines[m]?.id ?? ''),
      ),
  )

/** People who are alike in all that the problem says of them; one with a break is like no other, since it matters what was done before. */
const signaturesOf = (problem: Problem): readonly string[] =>
  problem.people.map(({ skills, shifts, breaks }, p) =>
    JSON.stringify([[...skills].toSorted(), shifts, breaks.length > 0 ? p : '']),
  )

const known = new WeakMap<Problem, readonly string[]>()

const signatures = (problem: Problem): readonly string[] => {
  const before = known.get(problem) ?? signaturesOf(problem)
  known.set(problem, before)
  return before
}

const peopleFor = (
  problem: Problem,
  state: State,
  next: Next,
  span: Span,
  day: number,
): readonly (readonly number[])[] => {
  const places = problem.places.length
  const operations = isMachineTask(next.kind)
    ? (problem.machines[next.machine]?.operations ?? [])
    : [next.kind]
  const able = problem.people.flatMap((person, p) => {
    if (!operations.some((one) => [...person.skills].some((skill) => skill === one))) return []
    const shift = person.shifts.find(({ start, end }) => start <= span.start && span.end <= end)
    if (shift === undefined) return []
    const fresh = state.personDay[p] !== day
    const way = problem.personTravelMin[(fresh ? 0 : (state.personAt[p] ?? 0)) * places + next.from] ?? 0
    return (fresh ? shift.start : (state.personFree[p] ?? 0)) + way <= span.start ? [p] : []
  })
  const alike = signatures(problem)
  const crews = new Map(
    subsets(able, next.crew).map((crew) => [
      crew
        .map(
          (p) =>
            `${alike[p]} ${state.personDay[p] === day ? `${state.personAt[p]} ${state.personFree[p]}` : ''}`,
        )
        .toSorted()
        .join(' '),
      crew,
    ]),
  )
  return [...crews.values()]
}

const placed = (
  problem: Problem,
  state: State,
  next: Next,
  span: Span,
  people: readonly number[],
  day: number,
): State => {
  const work = !isMachineTask(next.kind)
  const g = next.green ?? -1
  const step = work ? problem.greens[g]?.steps[state.done[g] ?? 0] : undefined
  const task: ScheduledTask = {
    kind: next.kind,
    green: next.green,
    pass: step?.pass ?? null,
    load: next.load,
    machine: next.machine,
    people,
    startMin: span.start,
    finishMin: span.end,
  }
  const busy = <T>(list: readonly T[], value: T): readonly T[] =>
    list.map((old, p) => (people.includes(p) ? value : old))
  const opens = step?.effects.includes('opens') === true
  const fill = next.kind === 'load' ? 1 : next.kind === 'dress' ? 0 : (state.filled[next.machine] ?? 0)
  return {
    tasks: [...state.tasks, task],
    done: work ? with_(state.done, g, (state.done[g] ?? 0) + 1) : state.done,
    greenFree: work ? with_(state.greenFree, g, span.end) : state.greenFree,
    machineFree: with_(state.machineFree, next.machine, span.end),
    machineAt: with_(state.machineAt, next.machine, next.to),
    machineDay: with_(state.machineDay, next.machine, day),
    moved: with_(state.moved, next.machine, next.kind === 'move'),
    filled: with_(state.filled, next.machine, fill),
    personFree: busy(state.personFree, span.end),
    personAt: busy(state.personAt, next.to),
    personDay: busy(state.personDay, day),
    opened: opens ? with_(state.opened, g, span.start) : state.opened,
    openFrom:
      opens && state.opened.every((minute) => minute < 0)
        ? span.end + problem.settings.firstGreenCheckMin
        : state.openFrom,
  }
}

/** How many greens are in work at a minute. */
const inWorkAt = (problem: Problem, state: State, minute: number): number =>
  problem.greens.filter((green, g) => {
    const finished =
      green.steps.findLastIndex(({ effects }) => effects.includes('finishes')) < (state.done[g] ?? 0)
    return (state.opened[g] ?? -1) >= 0 && !(finished && (state.greenFree[g] ?? 0) <= minute)
  }).length

/** Whether a step may be done then as far as its green is concerned: no later task can mend it. */
const mayBe = (problem: Problem, state: State, step: ProblemStep, g: number, span: Span): boolean => {
  if (span.start < (state.greenFree[g] ?? 0) + ((state.done[g] ?? 0) > 0 ? step.lagMin : 0)) return false
  if (!within(span, problem.workable.get(step.operation) ?? [])) return false
  if (step.effects.includes('opens'))
    return (
      span.start >= state.openFrom && inWorkAt(problem, state, span.start) < problem.settings.openGreensCap
    )
  const opened = state.opened[g] ?? 0
  const finished = problem.greens[g]?.steps.findLastIndex(({ effects }) => effects.includes('finishes')) ?? 0
  if ((state.done[g] ?? 0) > finished) return true
  const day = problem.days[dayAt(problem, opened)]
  return (
    span.end <= (day?.darkMin ?? 0) &&
    !problem.rain.some(({ start, end }) => start < span.end && end > opened)
  )
}

/** All that the rest of a plan depends on: two ways to the same leave the same to be done. */
const keyOf = (problem: Problem, state: State, sinceMin: number): string => {
  const alike = signatures(problem)
  const long = sinceMin - 20
  const day = dayAt(problem, sinceMin)
  const clip = (list: readonly number[]): readonly number[] => list.map((minute) => Math.max(minute, long))
  const busy = state.tasks
    .filter(({ people }) => people.some((p) => (problem.people[p]?.breaks.length ?? 0) > 0))
    .map(({ people, startMin, finishMin }) => [people, startMin, finishMin])
  const last = state.tasks.at(-1)
  return JSON.stringify([
    sinceMin,
    last?.startMin === sinceMin && last.finishMin > sinceMin ? last.machine : -1,
    state.done,
    clip(state.greenFree),
    state.machineDay.map((d, m) =>
      d === day ? [state.machineAt[m], Math.max(long, state.machineFree[m] ?? 0)] : 0,
    ),
    state.filled,
    state.moved,
    problem.people
      .map(
        (_, p) =>
          `${alike[p]} ${state.personDay[p] === day ? `${state.personAt[p]} ${Math.max(long, state.personFree[p] ?? 0)}` : ''}`,
      )
      .toSorted(),
    state.opened,
    state.openFrom,
    busy,
  ])
}

/**
 * The least last finishing minute of any plan of a tiny problem in which all greens are finished, by trying every order, machine, crew and start on the
 * grid; null when there is none by `atMostMin`. The checker judges every whole plan; what is tried on the way only keeps to rules that no later task can mend.
 * Written apart from the search and from the bounds. Throws when there is more to try than `mostNodes`.
 */
export const bestFinish = (problem: Problem, atMostMin: number, mostNodes: number): number | null => {
  const compiled = compileProblem(problem)
  const seen = new Set<string>()
  let nodes = 0
  const first: State = {
    tasks: [],
    done: problem.greens.map(() => 0),
    greenFree: problem.greens.map(() => 0),
    machineFree: problem.machines.map(() => 0),
    machineAt: problem.machines.map(() => 0),
    machineDay: problem.machines.map(() => -1),
    moved: problem.machines.map(() => false),
    filled: problem.machines.map(() => 0),
    personFree: problem.people.map(() => 0),
    personAt: problem.people.map(() => 0),
    personDay: problem.people.map(() => -1),
    opened: problem.greens.map(() => -1),
    openFrom: 0,
  }
  const isWhole = (state: State): boolean =>
    state.done.every((count, g) => count === problem.greens[g]?.steps.length)
  let untilMin = atMostMin
  let best: number | null = null
  const end = (state: State): number => state.tasks.reduce((last, task) => Math.max(last, task.finishMin), 0)
  const search = (state: State, sinceMin: number): void => {
    if (isWhole(state)) {
      const finishMin = end(state)
      if (finishMin > untilMin || !isCleanSchedule(compiled, { tasks: state.tasks, unplanned: [] })) return
      best = finishMin
      untilMin = finishMin - TICK_MIN
      return
    }
    if (soonestEnd(problem, state, sinceMin) > untilMin) return
    // What led to nothing by a later minute leads to nothing by a sooner one.
    const key = keyOf(problem, state, sinceMin)
    if (seen.has(key)) return
    seen.add(key)
    for (let start = sinceMin; start < untilMin; start += TICK_MIN) {
      if (!isManned(problem, start)) continue
      const day = dayAt(problem, start)
      for (const next of nextTasks(problem, state, day)) {
        const span = { start, end: start + next.minutes }
        // Tasks that start together are placed in the order of machines; one of no length may be followed by any.
        const last = state.tasks.at(-1)
        const together = last !== undefined && last.startMin === start && last.finishMin > start
        if (together && (last.machine ?? 0) > next.machine) continue
        const g = next.green ?? -1
        const step = isMachineTask(next.kind) ? undefined : problem.greens[g]?.steps[state.done[g] ?? 0]
        if (span.end > untilMin || start < (state.machineFree[next.machine] ?? 0)) continue
        if (step !== undefined && !mayBe(problem, state, step, g, span)) continue
        for (const people of peopleFor(problem, state, next, span, day)) {
          if (++nodes > mostNodes) throw new Error('too much to try')
          search(placed(problem, state, next, span, people, day), start)
        }
      }
    }
  }
  search(first, 0)
  return best
}
