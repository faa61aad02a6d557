import { dryFrom } from '../../dried.ts'
import type { ProblemStep, Span } from '../../problem.ts'
import { NEVER } from '../../spans.ts'
import { SHED } from '../compile.ts'
import { dayOfStart } from '../days.ts'
import type { Facts, TaskFact } from '../facts.ts'
import { sharedMin } from '../spans.ts'
import { peopleAt, soonestCrew, type PersonAt } from './people-at.ts'
import { sandLeft, type SandLeft } from './sand-left.ts'
import { tinesFrom } from './tines-left.ts'

/** One step that a green still needs at now: its least minutes, and the earliest start and latest end that it can have at all. */
export type LeftStep = {
  readonly green: number
  readonly step: ProblemStep
  /** Least wait after the step before, minutes: the stated one, or the trip for the next load. */
  readonly waitMin: number
  readonly operation: ProblemStep['operation']
  readonly minutes: number
  /** People that its least demanding machine takes. */
  readonly crew: number
  readonly earliestStart: number
  readonly latestEnd: number
  /** Least minutes that its machine is busy just before it whenever it comes from other work: the way to the green, and for a load of sand the way to the bay and the filling. */
  readonly leadMin: number
}

/** Where and from when a machine can be had: after what it has begun by now. */
type Ready = { readonly fromMin: number; readonly place: number; readonly fresh: boolean }

/** The state of a machine after all that was begun before now. */
const readyAfter = (facts: Facts, machine: number, nowMin: number): Ready => {
  const begun = (facts.byMachine[machine] ?? []).filter(({ startMin }) => startMin < nowMin)
  const last = begun.at(-1)
  const today = dayOfStart(facts.problem.days, nowMin)
  if (last === undefined || dayOfStart(facts.problem.days, last.startMin) !== today)
    return { fromMin: nowMin, place: SHED, fresh: true }
  const busyUntil = begun.reduce((most, task) => Math.max(most, task.finishMin), nowMin)
  return { fromMin: busyUntil, place: last.way.ends ?? SHED, fresh: false }
}

/** Spans inside some list in which both hold. Both lists in order. */
const both = (a: readonly Span[], b: readonly Span[]): readonly Span[] =>
  a.flatMap((one) =>
    b.flatMap((other) => {
      const start = Math.max(one.start, other.start)
      const end = Math.min(one.end, other.end)
      return end > start ? [{ start, end }] : []
    }),
  )

/** Spans in which at least so many people who are trained for an operation are on shift. */
const crewSpans = (facts: Facts, operation: ProblemStep['operation'], crew: number): readonly Span[] => {
  const shifts = facts.problem.people.flatMap((person, index) =>
    person.skills.has(operation) ? (facts.compiled.shifts[index] ?? []) : [],
  )
  const moments = [...new Set(shifts.flatMap(({ start, end }) => [start, end]))].sort((a, b) => a - b)
  return moments.flatMap((start, index) => {
    const end = moments[index + 1]
    if (end === undefined) return []
    return shifts.filter((shift) => shift.start <= start && shift.end >= end).length >= crew
      ? [{ start, end }]
      : []
  })
}

const joined = (spans: readonly Span[]): readonly Span[] =>
  spans.reduce<Span[]>((list, span) => {
    const last = list.at(-1)
    if (last !== undefined && last.end === span.start)
      list[list.length - 1] = { start: last.start, end: span.end }
    else list.push(span)
    return list
  }, [])

const bayOf = ({ problem }: Facts, green: number): number | undefined =>
  problem.stores.find(({ kind }) => kind === problem.greens[green]?.sand.kind)?.place

const wayOf =
  ({ problem }: Facts, machine: number) =>
  (from: number, to: number): number =>
    problem.machines[machine]?.travelMin[from * problem.places.length + to] ?? 0

/** Whether a dresser goes from now on with sand that it has not spread yet. */
const isLoaded = (facts: Facts, machine: number, nowMin: number): boolean =>
  (facts.byMachine[machine] ?? [])
    .filter(({ kind, startMin }) => startMin < nowMin && (kind === 'load' || kind === 'dress'))
    .at(-1)?.kind === 'load'

/** Whether a step takes sand that must be fetched. */
const takesSand = (step: ProblemStep): boolean => step.load !== null && step.sandT > 0

/** First minute by which a machine has had so many minutes of being there from a minute on; NEVER where it never has. */
const thereFor = (available: readonly Span[], from: number, minutes: number): number => {
  let left = minutes
  for (const span of available) {
    const start = Math.max(span.start, from)
    if (span.end <= start) continue
    if (span.end - start >= left) return start + left
    left -= span.end - start
  }
  return NEVER
}

/** How a machine comes to a green from where it stands now: from when, from where, and how long setting up, filling where it has no sand, and the ways take. */
const bringing = (
  facts: Facts,
  machine: number,
  green: number,
  step: ProblemStep,
  nowMin: number,
): { readonly fromMin: number; readonly from: number; readonly minutes: number } => {
  const { problem } = facts
  if (machine < 0) return { fromMin: nowMin, from: SHED, minutes: 0 }
  const ready = readyAfter(facts, machine, nowMin)
  const own = problem.machines[machine]
  const goal = problem.greens[green]?.place ?? SHED
  const way = wayOf(facts, machine)
  const bay = bayOf(facts, green)
  const setUp = ready.fresh ? (own?.setUpMin ?? 0) : 0
  const filling = takesSand(step) && bay !== undefined && !isLoaded(facts, machine, nowMin)
  const ways = filling ? way(ready.place, bay) + (own?.loadMin ?? 0) + way(bay, goal) : way(ready.place, goal)
  return { fromMin: ready.fromMin, from: ready.place, minutes: setUp + ways }
}

/** Minutes for the trip to the bay and back between two loads on one green, where only one machine can spread them; 0 where another could be there already. */
const refillMin = (
  facts: Facts,
  green: number,
  step: ProblemStep,
  before: ProblemStep | undefined,
): number => {
  if (before?.operation !== 'dress' || !takesSand(step) || step.minutesByMachine.size !== 1) return 0
  const machine = facts.problem.machines.findIndex(({ id }) => step.minutesByMachine.has(id))
  const bay = bayOf(facts, green)
  const goal = facts.problem.greens[green]?.place ?? SHED
  const way = wayOf(facts, machine)
  return bay === undefined
    ? 0
    : way(goal, bay) + (facts.problem.machines[machine]?.loadMin ?? 0) + way(bay, goal)
}

/** Stands for no machine. */
const HANDS = -1

/** A machine that can do a step: its minutes, and the spans in which it, its crew and the hours allow the work. */
type Doer = {
  readonly machine: number
  readonly minutes: number
  readonly crew: number
  readonly spans: readonly Span[]
}

/** What the proof of a lost green asks again and again: who can do a step, and everybody at now. Made once for a plan that is judged. */
export type LostGround = {
  readonly facts: Facts
  readonly nowMin: number
  readonly people: readonly PersonAt[]
  readonly sand: SandLeft
  /** The machines that can do a step at all. */
  readonly doers: (step: ProblemStep) => readonly Doer[]
  /** What a pin holds a step to; absent where nothing is pinned. */
  readonly held?: (green: number, step: number) => Held | null
}

/** A pinned step: no earlier than then; with its end, exactly then. */
type Held = { readonly start: number; readonly end: number | null }

const doersOf = (
  facts: Facts,
  step: ProblemStep,
  crewTimes: (operation: ProblemStep['operation'], crew: number) => readonly Span[],
): readonly Doer[] => {
  const workable = facts.compiled.workable.get(step.operation) ?? []
  if (step.minutesByMachine.size === 0)
    return [{ machine: HANDS, minutes: 0, crew: 1, spans: both(workable, crewTimes(step.operation, 1)) }]
  return facts.problem.machines.flatMap((machine, index): readonly Doer[] => {
    const minutes = step.minutesByMachine.get(machine.id)
    if (minutes === undefined) return []
    const open = both(facts.compiled.available[index] ?? [], workable)
    return [
      {
        machine: index,
        minutes,
        crew: machine.crew,
        spans: both(open, crewTimes(step.operation, machine.crew)),
      },
    ]
  })
}

/** Prepares the proof; answers are kept. */
export const lostGround = (facts: Facts, nowMin: number): LostGround => {
  const times = new Map<string, readonly Span[]>()
  const known = new Map<ProblemStep, readonly Doer[]>()
  const crewTimes = (operation: ProblemStep['operation'], crew: number): readonly Span[] => {
    const key = `${operation} ${crew}`
    const found = times.get(key) ?? joined(crewSpans(facts, operation, crew))
    times.set(key, found)
    return found
  }
  const doers = (step: ProblemStep): readonly Doer[] => {
    const found = known.get(step) ?? doersOf(facts, step, crewTimes)
    known.set(step, found)
    return found
  }
  // Often all is proven already: then nobody and nothing is looked up.
  let people: readonly PersonAt[] | null = null
  let sand: SandLeft | null = null
  return {
    facts,
    nowMin,
    get people() {
      people ??= peopleAt(facts, nowMin)
      return people
    },
    get sand() {
      sand ??= sandLeft(facts, nowMin)
      return sand
    },
    doers,
  }
}

/** First minute at which a step can begin on a machine whose sand is not there yet: delivered, filled and brought. */
const sandThere = ({ facts }: LostGround, machine: number, green: number, deliveredMin: number): number => {
  const bay = bayOf(facts, green)
  const goal = facts.problem.greens[green]?.place ?? SHED
  const way = bay === undefined ? 0 : wayOf(facts, machine)(bay, goal)
  return deliveredMin + (facts.problem.machines[machine]?.loadMin ?? 0) + way
}

/** Earliest end of each step still to be done if every machine and everybody trained were there for this green alone; NEVER from the first that can't be done at all. */
const forward = (ground: LostGround, green: number): readonly { start: number; end: number }[] => {
  const { facts, nowMin, people } = ground
  const { problem } = facts
  const steps = problem.greens[green]?.steps ?? []
  const tasks = facts.stepTasks[green] ?? []
  const isBegun = (task: TaskFact | undefined): task is TaskFact =>
    task !== undefined && task.startMin < nowMin
  let end = 0
  let dressed = -1
  let needT = 0
  const worn = new Map<number, number>()
  return steps.map((step, index) => {
    const task = tasks[index]
    if (isBegun(task)) {
      end = task.finishMin
      if (step.operation === 'dress') dressed = end
      return { start: task.startMin, end }
    }
    if (end >= NEVER) return { start: NEVER, end: NEVER }
    const held = ground.held?.(green, index) ?? null
    if (held !== null && held.end !== null) {
      end = held.end
      if (step.operation === 'dress') dressed = end
      return { start: held.start, end }
    }
    const refill = refillMin(facts, green, step, steps[index - 1])
    let from = Math.max(nowMin, end + Math.max(step.lagMin, refill), held?.start ?? 0)
    if (step.nextDay)
      from = Math.max(from, problem.days.find(({ startMin }) => startMin >= end)?.startMin ?? NEVER)
    if (step.dryNeedMm > 0 && dressed >= 0)
      from = Math.max(from, dryFrom(problem.driedMm, dressed, step.dryNeedMm))
    if (step.tines !== undefined) {
      const { kind, sets } = step.tines
      worn.set(kind, (worn.get(kind) ?? 0) + sets)
      from = Math.max(from, tinesFrom(facts, nowMin, kind, worn.get(kind) ?? 0))
    }
    needT += step.sandT
    const deliveredMin = takesSand(step)
      ? ground.sand.from(problem.greens[green]?.sand.kind ?? 'damp', needT)
      : nowMin
    let best = { start: NEVER, end: NEVER }
    for (const { machine, crew, minutes, spans } of ground.doers(step)) {
      const lead = bringing(facts, machine, green, step, nowMin)
      const start = soonestCrew(
        facts,
        people,
        {
          operation: step.operation,
          crew,
          minutes,
          place: problem.greens[green]?.place ?? SHED,
          brought: lead.minutes === 0 ? null : { machine, from: lead.from, minutes: lead.minutes },
        },
        spans,
        Math.max(
          from,
          deliveredMin > nowMin ? sandThere(ground, machine, green, deliveredMin) : 0,
          machine < 0
            ? nowMin
            : thereFor(facts.compiled.available[machine] ?? [], lead.fromMin, lead.minutes),
        ),
      )
      if (start < NEVER && start + minutes < best.end) best = { start, end: start + minutes }
    }
    end = best.end
    if (step.operation === 'dress') dressed = end
    return best
  })
}

/** Latest minute by which the sand must lie so that it is dry by `at`; -1 where it never can be. */
const latestDressed = (driedMm: Float64Array, at: number, needMm: number): number => {
  let low = -1
  let high = at
  // dryFrom never falls, so halving finds the last minute that will do.
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (middle >= 0 && dryFrom(driedMm, middle, needMm) <= at) low = middle
    else high = middle - 1
  }
  return low
}

const latestFit = (spans: readonly Span[], by: number, minutes: number): number =>
  spans.reduce((latest, span) => {
    const end = Math.min(span.end, by)
    return end - minutes >= span.start ? Math.max(latest, end) : latest
  }, -1)

/** Places that a machine may come from to a green: where machines stand now, and the other greens in work. */
const leadTo = (
  { facts, nowMin, doers }: LostGround,
  green: number,
  step: ProblemStep,
  others: readonly number[],
): number => {
  const { problem } = facts
  const goal = problem.greens[green]?.place ?? SHED
  const bay = bayOf(facts, green)
  const places = others.map((other) => problem.greens[other]?.place ?? SHED)
  const leads = doers(step).map(({ machine }) => {
    const way = wayOf(facts, machine)
    const stands = readyAfter(facts, machine, nowMin).place
    if (!takesSand(step) || bay === undefined)
      return Math.min(way(stands, goal), ...places.map((place) => way(place, goal)))
    const back = Math.min(...[stands, goal, ...places].map((place) => way(place, bay)))
    return back + (problem.machines[machine]?.loadMin ?? 0) + way(bay, goal)
  })
  return leads.length === 0 ? 0 : Math.min(...leads)
}

/**
 * The steps that a green still needs up to a mark, each with the window that it has at the very best: from the earliest start with everything at hand, to the latest end
 * that lets the rest of the chain be over by `deadline`.
 */
export const leftSteps = (
  ground: LostGround,
  green: number,
  mark: number,
  deadline: number,
  others: readonly number[],
): readonly LeftStep[] => {
  const { facts, nowMin } = ground
  const steps = (facts.problem.greens[green]?.steps ?? []).slice(0, mark + 1)
  const soonest = forward(ground, green)
  const left: LeftStep[] = []
  let latest = deadline
  let dressBy = NEVER
  for (let index = steps.length - 1; index >= 0; index--) {
    const step = steps[index]
    const task = facts.stepTasks[green]?.[index]
    if (step === undefined || (task !== undefined && task.startMin < nowMin)) break
    if (step.operation === 'dress') latest = Math.min(latest, dressBy)
    const doers = ground.doers(step)
    const minutes = doers.reduce((least, doer) => Math.min(least, doer.minutes), NEVER)
    latest = doers.reduce((most, doer) => Math.max(most, latestFit(doer.spans, latest, doer.minutes)), -1)
    const before = steps[index - 1]
    const goesOn = before?.operation === step.operation && step.load === null
    const crew = doers.reduce((least, doer) => Math.min(least, doer.crew), NEVER)
    const waitMin = Math.max(step.lagMin, refillMin(facts, green, step, steps[index - 1]))
    left.push({
      green,
      step,
      waitMin,
      operation: step.operation,
      minutes,
      crew,
      earliestStart: soonest[index]?.start ?? NEVER,
      latestEnd: latest,
      leadMin: goesOn ? 0 : leadTo(ground, green, step, others),
    })
    const start = latest - minutes
    if (step.dryNeedMm > 0) dressBy = latestDressed(facts.problem.driedMm, start, step.dryNeedMm)
    latest = start - waitMin
  }
  return left.reverse()
}

/** The earliest moment at which a green can reach a mark with everything at hand; NEVER where it can't. */
export const earliestAt = (ground: LostGround, green: number, mark: number): number =>
  forward(ground, green)[mark]?.end ?? NEVER

/** Minutes that a list of spans has inside one span. */
export const minutesIn = (spans: readonly Span[], inside: Span): number =>
  spans.reduce((sum, span) => sum + sharedMin(span, inside), 0)
