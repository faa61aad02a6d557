import type { ProblemMachine, ProblemStep, ScheduledTask, Span } from '../problem.ts'
import { firstFit, intersectSpans, NEVER } from '../spans.ts'
import { bookPerson, setMachine, type Growing } from './growing.ts'
import { earliestFor } from './people.ts'
import { sandFrom } from './sand-left.ts'

/** How much later a start may be so that a machine stays with the person who has it, minutes. Keeps people at one post. */
const KEEP_POST_MIN = 4

/** A step that looks for its time on one day. */
export type StepWanted = {
  readonly green: number
  readonly step: ProblemStep
  readonly sandKind: 'damp' | 'kilnDried'
  /** Index of the day. */
  readonly day: number
  /** The step lies inside this stretch. */
  readonly span: Span
  /** The step starts no earlier. */
  readonly from: number
}

/** What a machine does before it can begin: set-up, ways, filling. Ends where the step is. */
type Lead = {
  readonly kind: 'setUp' | 'move' | 'load'
  readonly minutes: number
  readonly from: number
  readonly to: number
}

type Crew = { readonly start: number; readonly people: readonly number[] }

/** A way for one machine (or hands alone) to do the step. */
type Offer = {
  readonly machine: number | null
  readonly minutes: number
  readonly leads: readonly Lead[]
  readonly crew: Crew
}

const SHED = 0

const leadsOf = (
  growing: Growing,
  index: number,
  machine: ProblemMachine,
  wanted: StepWanted,
): readonly Lead[] => {
  const { problem } = growing.ground
  const state = growing.machines[index]
  const fresh = state === undefined || state.day !== wanted.day
  const goal = problem.greens[wanted.green]?.place ?? SHED
  const places = problem.places.length
  const leads: Lead[] = []
  let at = fresh ? SHED : state.place
  const moveTo = (to: number): void => {
    if (to !== at)
      leads.push({ kind: 'move', minutes: machine.travelMin[at * places + to] ?? 0, from: at, to })
    at = to
  }
  if (fresh && machine.setUpMin > 0)
    leads.push({ kind: 'setUp', minutes: machine.setUpMin, from: SHED, to: SHED })
  if (wanted.step.load !== null) {
    moveTo(problem.stores.find((store) => store.kind === wanted.sandKind)?.place ?? SHED)
    leads.push({ kind: 'load', minutes: machine.loadMin, from: at, to: at })
  }
  moveTo(goal)
  return leads
}

/** People for a machine at or after `start`: one who brings it, and as many more as its crew asks. */
const findCrew = (
  growing: Growing,
  wanted: StepWanted,
  skill: { readonly machine: ProblemMachine | null; readonly holder: number },
  work: {
    readonly start: number
    readonly leadMin: number
    readonly minutes: number
    readonly from: number
    readonly to: number
  },
): Crew | null => {
  const { problem } = growing.ground
  const crewSize = skill.machine?.crew ?? 1
  const free = (person: number, from: number, lead: number): number => {
    const who = problem.people[person]
    const diary = growing.diaries[person]
    if (who === undefined || diary === undefined || !who.skills.has(wanted.step.operation)) return NEVER
    const stretch = {
      atLeast: from - lead,
      minutes: lead + work.minutes,
      from: lead > 0 ? work.from : work.to,
      to: work.to,
    }
    const begin = earliestFor(problem, who, diary, stretch, wanted.span.end)
    return begin === NEVER ? NEVER : begin + lead
  }
  let start = work.start
  while (start + work.minutes <= wanted.span.end) {
    const bringers = problem.people.map((_, person) => free(person, start, work.leadMin))
    const soonest = Math.min(...bringers)
    if (soonest === NEVER) return null
    const keeps = skill.holder >= 0 && (bringers[skill.holder] ?? NEVER) <= soonest + KEEP_POST_MIN
    const bringer = keeps ? skill.holder : bringers.indexOf(soonest)
    const at = bringers[bringer] ?? NEVER
    if (at > start && crewSize > 1) {
      start = at
      continue
    }
    const others = problem.people
      .map((_, person) => ({ person, at: person === bringer ? NEVER : free(person, at, 0) }))
      .sort((a, b) => a.at - b.at || a.person - b.person)
      .slice(0, crewSize - 1)
    const together = Math.max(at, ...others.map((other) => other.at))
    if (together === NEVER) return null
    if (together === at) return { start: at, people: [bringer, ...others.map((other) => other.person)] }
    start = together
  }
  return null
}

/** The earliest offer of one machine, or null. */
const offerOf = (growing: Growing, wanted: StepWanted, index: number, minutes: number): Offer | null => {
  const { problem } = growing.ground
  const machine = problem.machines[index]
  if (machine === undefined) return null
  const state = growing.machines[index]
  if (state !== undefined && state.day > wanted.day) return null
  const leads = leadsOf(growing, index, machine, wanted)
  const leadMin = leads.reduce((sum, lead) => sum + lead.minutes, 0)
  const day = problem.days[wanted.day]
  const freeMin = state !== undefined && state.day === wanted.day ? state.freeMin : (day?.startMin ?? 0)
  const spans = intersectSpans(problem.workable.get(wanted.step.operation) ?? [], [wanted.span])
  const goal = problem.greens[wanted.green]?.place ?? SHED
  const loadAt = leads.findIndex((lead) => lead.kind === 'load')
  const afterLoad = loadAt === -1 ? 0 : leads.slice(loadAt).reduce((sum, lead) => sum + lead.minutes, 0)
  let start = Math.max(wanted.from, freeMin + leadMin)
  while (start < wanted.span.end) {
    let next = firstFit(spans, start, minutes)
    if (next === NEVER) return null
    const usable = firstFit(machine.available, next - leadMin, leadMin + minutes)
    next = usable === NEVER ? NEVER : usable + leadMin
    if (next !== NEVER && loadAt !== -1) {
      const sand = sandFrom(growing, wanted.sandKind, next - afterLoad, wanted.step.sandT)
      next = sand === NEVER ? NEVER : sand + afterLoad
    }
    if (next === NEVER) return null
    const crew = findCrew(
      growing,
      wanted,
      { machine, holder: state?.holder ?? -1 },
      { start: next, leadMin, minutes, from: leads[0]?.from ?? goal, to: goal },
    )
    if (crew === null) return null
    if (crew.start === start || (crew.start === next && firstFit(spans, next, minutes) === next))
      return { machine: index, minutes, leads, crew }
    start = crew.start
  }
  return null
}

const book = (growing: Growing, wanted: StepWanted, offer: Offer): void => {
  const { problem } = growing.ground
  const goal = problem.greens[wanted.green]?.place ?? SHED
  const { step } = wanted
  const leadMin = offer.leads.reduce((sum, lead) => sum + lead.minutes, 0)
  const bringer = offer.crew.people[0] ?? -1
  let at = offer.crew.start - leadMin
  const push = (task: Omit<ScheduledTask, 'machine'>): void => {
    growing.tasks.push({ ...task, machine: offer.machine })
  }
  for (const lead of offer.leads) {
    const green = lead.kind === 'load' || (lead.kind === 'move' && lead.to === goal) ? wanted.green : null
    const load = lead.kind === 'load' ? step.load : null
    push({
      kind: lead.kind,
      green,
      pass: null,
      load,
      people: [bringer],
      startMin: at,
      finishMin: at + lead.minutes,
    })
    if (lead.kind === 'load') growing.draws.push({ kind: wanted.sandKind, atMin: at, massT: step.sandT })
    at += lead.minutes
  }
  const finish = at + offer.minutes
  push({
    kind: step.operation,
    green: wanted.green,
    pass: step.pass,
    load: step.load,
    people: offer.crew.people,
    startMin: at,
    finishMin: finish,
  })
  offer.crew.people.forEach((person, position) => {
    const start = position === 0 ? offer.crew.start - leadMin : offer.crew.start
    bookPerson(
      growing,
      person,
      { start, end: finish },
      position === 0 ? (offer.leads[0]?.from ?? goal) : goal,
      goal,
    )
  })
  if (offer.machine !== null)
    setMachine(growing, offer.machine, { freeMin: finish, place: goal, day: wanted.day, holder: bringer })
}

/**
 * Places one step as early as it goes on the wanted day: the machine that finishes first takes it, with its set-up, ways and filling.
 * Returns the step's start and finish, or null when it does not fit into the stretch; then nothing is changed.
 */
export const placeStep = (growing: Growing, wanted: StepWanted): Span | null => {
  const { problem } = growing.ground
  const offers = problem.machines.flatMap((machine, index) => {
    const minutes = wanted.step.minutesByMachine.get(machine.id)
    const offer = minutes === undefined ? null : offerOf(growing, wanted, index, minutes)
    return offer === null ? [] : [offer]
  })
  const best = offers.reduce<Offer | null>(
    (soonest, offer) =>
      soonest === null || offer.crew.start + offer.minutes < soonest.crew.start + soonest.minutes
        ? offer
        : soonest,
    null,
  )
  if (best === null) return null
  book(growing, wanted, best)
  return { start: best.crew.start, end: best.crew.start + best.minutes }
}
