import { dryFrom } from '../../dried.ts'
import type { ProblemStep, Span } from '../../problem.ts'
import { NEVER } from '../../spans.ts'
import { SHED } from '../compile.ts'
import type { Facts, TaskFact } from '../facts.ts'
import { sharedMin } from '../spans.ts'
import { doersOf, type Doer } from './doers.ts'
import {
  bayOf,
  bringing,
  readyAfter,
  readyLater,
  refillMin,
  takesSand,
  thereFor,
  wayOf,
  type Ready,
} from './machine-at.ts'
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
  /** The machines that can still do it in time, each with its own window. */
  readonly options: readonly Option[]
  /** Least minutes that its machine is busy just before it whenever it comes from other work: the way to the green, and for a load of sand the way to the bay and the filling. */
  readonly leadMin: number
}

/** A machine for a step: its minutes and crew, and the earliest start and latest end that it allows. */
export type Option = {
  readonly machine: number
  readonly minutes: number
  readonly crew: number
  readonly earliestStart: number
  readonly latestEnd: number
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

/** Prepares the proof; answers are kept. */
export const lostGround = (facts: Facts, nowMin: number): LostGround => {
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
    doers: doersOf(facts),
  }
}

/** First minute at which a step can begin on a machine whose sand is not there yet: delivered, filled and brought. */
const sandThere = ({ facts }: LostGround, machine: number, green: number, deliveredMin: number): number => {
  const bay = bayOf(facts, green)
  const goal = facts.problem.greens[green]?.place ?? SHED
  const way = bay === undefined ? 0 : wayOf(facts, machine)(bay, goal)
  return deliveredMin + (facts.problem.machines[machine]?.loadMin ?? 0) + way
}

/** First start of a step on a machine that is brought from where it is ready, no sooner than a minute. */
const soonestOn = (
  ground: LostGround,
  { machine, crew, minutes, spans }: Doer,
  to: { readonly green: number; readonly step: ProblemStep },
  ready: Ready,
  fromMin: number,
): number => {
  const { facts, nowMin, people } = ground
  const lead = bringing(ground, machine, to, ready)
  const leadMin = lead.setUpMin + lead.comingMin
  const there =
    machine < 0 ? nowMin : thereFor(facts.compiled.available[machine] ?? [], lead.fromMin, leadMin)
  const need = {
    operation: to.step.operation,
    crew,
    minutes,
    place: facts.problem.greens[to.green]?.place ?? SHED,
    brought: leadMin === 0 ? null : { machine, from: lead.from, minutes: leadMin },
  }
  return soonestCrew(facts, people, need, spans, Math.max(fromMin, there))
}

/** Earliest end of a step, and earliest start on each machine that can do it, in the order of the doers. */
type Soonest = { readonly end: number; readonly starts: readonly number[] }

/** Earliest end of each step still to be done if every machine and everybody trained were there for this green alone; NEVER from the first that can't be done at all. */
const forward = (ground: LostGround, green: number): readonly Soonest[] => {
  const { facts, nowMin } = ground
  const { problem } = facts
  const steps = problem.greens[green]?.steps ?? []
  const tasks = facts.stepTasks[green] ?? []
  const isBegun = (task: TaskFact | undefined): task is TaskFact =>
    task !== undefined && task.startMin < nowMin
  let end = 0
  let dressed = -1
  let needT = 0
  const worn = new Map<number, number>()
  const later = readyLater(facts, nowMin)
  return steps.map((step, index) => {
    const task = tasks[index]
    if (isBegun(task)) {
      end = task.finishMin
      if (step.operation === 'dress') dressed = end
      return { starts: [], end }
    }
    if (end >= NEVER) return { starts: [], end: NEVER }
    const held = ground.held?.(green, index) ?? null
    if (held !== null && held.end !== null) {
      end = held.end
      if (step.operation === 'dress') dressed = end
      return { starts: ground.doers(step).map(() => held.start), end }
    }
    // How the dresser comes from what it has begun is told by `bringing`: it may have been filled already.
    const refill = isBegun(tasks[index - 1]) ? 0 : refillMin(facts, green, step, steps[index - 1])
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
    const doers = ground.doers(step)
    const starts = doers.map((doer) => {
      const soonestFrom = (ready: Ready): number =>
        soonestOn(
          ground,
          doer,
          { green, step },
          ready,
          Math.max(from, deliveredMin > nowMin ? sandThere(ground, doer.machine, green, deliveredMin) : 0),
        )
      const start = soonestFrom(readyAfter(facts, doer.machine, nowMin))
      return start < later.fromMin ? start : Math.min(start, soonestFrom(later))
    })
    end = starts.reduce((best, start, at) => Math.min(best, start + (doers[at]?.minutes ?? 0)), NEVER)
    if (step.operation === 'dress') dressed = end
    return { starts, end }
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

/** Least minutes that a machine is busy before a step when it comes from other work: from where it stands now, or from one of several places. */
const leadTo = (
  { facts, nowMin, doers }: LostGround,
  green: number,
  step: ProblemStep,
  places: readonly number[],
): number => {
  const { problem } = facts
  const goal = problem.greens[green]?.place ?? SHED
  const bay = bayOf(facts, green)
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
  const places = others.map((other) => facts.problem.greens[other]?.place ?? SHED)
  // After a night it comes from the shed.
  if (deadline > readyLater(facts, nowMin).fromMin) places.push(SHED)
  const left: LeftStep[] = []
  let latest = deadline
  let dressBy = NEVER
  for (let index = steps.length - 1; index >= 0; index--) {
    const step = steps[index]
    const task = facts.stepTasks[green]?.[index]
    if (step === undefined || (task !== undefined && task.startMin < nowMin)) break
    if (step.operation === 'dress') latest = Math.min(latest, dressBy)
    const by = latest
    const options = ground.doers(step).flatMap(({ machine, minutes, crew, spans }, at): readonly Option[] => {
      const earliestStart = soonest[index]?.starts[at] ?? NEVER
      const latestEnd = latestFit(spans, by, minutes)
      return earliestStart + minutes <= latestEnd
        ? [{ machine, minutes, crew, earliestStart, latestEnd }]
        : []
    })
    const minutes = options.reduce((least, option) => Math.min(least, option.minutes), NEVER)
    latest = options.reduce((most, option) => Math.max(most, option.latestEnd), -1)
    const before = steps[index - 1]
    const goesOn = before?.operation === step.operation && step.load === null
    const crew = options.reduce((least, option) => Math.min(least, option.crew), NEVER)
    const waitMin = Math.max(step.lagMin, refillMin(facts, green, step, steps[index - 1]))
    left.push({
      green,
      step,
      waitMin,
      operation: step.operation,
      minutes,
      crew,
      // On a slower machine it may begin sooner, but never end sooner: what counts is the end.
      earliestStart:
        options.reduce((least, option) => Math.min(least, option.earliestStart + option.minutes), NEVER) -
        minutes,
      latestEnd: latest,
      options,
      leadMin: goesOn ? 0 : leadTo(ground, green, step, places),
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
