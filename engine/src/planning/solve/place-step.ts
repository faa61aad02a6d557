import type { Span } from '../problem.ts'
import { firstFit, NEVER } from '../spans.ts'
import { findCrew, type Crew } from './find-crew.ts'
import type { GroundStep } from './ground.ts'
import { bookPerson, setMachine, type Growing } from './growing.ts'
import { leadsOf, type Leads } from './leads.ts'
import { sandFrom } from './sand-left.ts'

/** A step that looks for its time on one day. */
export type StepWanted = {
  readonly green: number
  readonly ground: GroundStep
  readonly sandKind: 'damp' | 'kilnDried'
  /** Index of the day. */
  readonly day: number
  /** When the operation may be worked, inside the stretch that the green has. */
  readonly workable: readonly Span[]
  /** The step is over by then. */
  readonly end: number
  /** The step starts no earlier. */
  readonly from: number
}

/** A way for one machine to do the step. */
type Offer = {
  readonly machine: number
  readonly minutes: number
  readonly leads: Leads
  readonly crew: Crew
}

const SHED = 0

/** Earliest start at or after `from` that the hours, the machine's calendar and the sand allow. */
const allowedFrom = (
  growing: Growing,
  wanted: StepWanted,
  index: number,
  leads: Leads,
  minutes: number,
  from: number,
): number => {
  let start = from
  for (;;) {
    const before = start
    start = firstFit(wanted.workable, start, minutes)
    if (start === NEVER) return NEVER
    const machine = growing.ground.problem.machines[index]
    const usable = firstFit(machine?.available ?? [], start - leads.minutes, leads.minutes + minutes)
    if (usable === NEVER) return NEVER
    start = usable + leads.minutes
    if (leads.afterLoadMin >= 0) {
      const sand = sandFrom(growing, wanted.sandKind, start - leads.afterLoadMin, wanted.ground.step.sandT)
      if (sand === NEVER) return NEVER
      start = sand + leads.afterLoadMin
    }
    if (start === before) return start
  }
}

/** The earliest offer of one machine that finishes before `beat`, or null. */
const offerOf = (
  growing: Growing,
  wanted: StepWanted,
  index: number,
  minutes: number,
  beat: number,
): Offer | null => {
  const { problem } = growing.ground
  const machine = problem.machines[index]
  const state = growing.machines[index]
  if (machine === undefined || state === undefined || state.day > wanted.day) return null
  const leads = leadsOf(growing, index, wanted)
  const freeMin = state.day === wanted.day ? state.freeMin : (problem.days[wanted.day]?.startMin ?? 0)
  const to = problem.greens[wanted.green]?.place ?? SHED
  let start = Math.max(wanted.from, freeMin + leads.minutes)
  for (;;) {
    const allowed = allowedFrom(growing, wanted, index, leads, minutes, start)
    if (allowed === NEVER || allowed + minutes >= beat || allowed + minutes > wanted.end) return null
    const crew = findCrew(growing, {
      skilled: wanted.ground.skilled,
      crew: machine.crew,
      holder: state.holder,
      start: allowed,
      leadMin: leads.minutes,
      minutes,
      from: leads.from,
      to,
      end: Math.min(wanted.end, beat - 1),
    })
    if (crew === null) return null
    if (crew.start === allowed) return { machine: index, minutes, leads, crew }
    start = crew.start
  }
}

const bookOffer = (growing: Growing, wanted: StepWanted, offer: Offer): void => {
  const { step } = wanted.ground
  const { crew, leads, machine, minutes } = offer
  const goal = growing.ground.problem.greens[wanted.green]?.place ?? SHED
  const bringer = crew.people[0] ?? -1
  const begin = crew.start - leads.minutes
  let at = begin
  const { tasks } = growing
  for (const lead of leads.list) {
    const green = lead.kind === 'load' || (lead.kind === 'move' && lead.to === goal) ? wanted.green : null
    const load = lead.kind === 'load' ? step.load : null
    tasks.push({
      machine,
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
  const end = at + minutes
  tasks.push({
    machine,
    kind: step.operation,
    green: wanted.green,
    pass: step.pass,
    load: step.load,
    people: crew.people,
    startMin: at,
    finishMin: end,
  })
  crew.people.forEach((person, position) => {
    if (position === 0) bookPerson(growing, person, { start: begin, end }, leads.from, goal)
    else bookPerson(growing, person, { start: at, end }, goal, goal)
  })
  setMachine(growing, machine, { freeMin: end, place: goal, day: wanted.day, holder: bringer })
}

/**
 * Places one step as early as it goes on the wanted day: the machine that finishes first takes it, with its set-up, ways and filling.
 * Returns the step's start and finish, or null when it does not fit; then nothing is changed.
 */
export const placeStep = (growing: Growing, wanted: StepWanted): Span | null => {
  let best: Offer | null = null
  let beat = NEVER
  for (const { machine, minutes } of wanted.ground.choices) {
    const offer = offerOf(growing, wanted, machine, minutes, beat)
    if (offer === null) continue
    best = offer
    beat = offer.crew.start + minutes
  }
  if (best === null) return null
  bookOffer(growing, wanted, best)
  return { start: best.crew.start, end: beat }
}
