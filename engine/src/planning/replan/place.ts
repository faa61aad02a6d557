import type { ProblemStep, ScheduledTask } from '../problem.ts'
import { firstFit, NEVER } from '../spans.ts'
import { crewFor, type Crew, type Loyalty } from './crew.ts'
import { write } from './diary.ts'
import { dayOf, markStep, type Field } from './field.ts'
import { leadsTo, type Leads } from './leads.ts'
import { stockFrom } from '../stock.ts'

/** A step that looks for its place. */
export type Wanted = {
  readonly green: number
  readonly step: ProblemStep
  /** Machine and people that it had; null and none where it is new. */
  readonly machine: number | null
  readonly people: readonly number[]
  /** It starts no earlier, and is over by `end`. */
  readonly from: number
  readonly end: number
  readonly loyalty: Loyalty
  /** True: the hours in which it may be worked are let go, for a pin that stands over them. */
  readonly anyHour?: boolean
}

/** A way for one machine and its people to do a step. */
export type Offer = {
  readonly machine: number
  readonly day: number
  readonly minutes: number
  readonly leads: Leads
  readonly crew: Crew
  readonly cost: number
}

/** Earliest start from `from` on that hours, the machine's calendar and what is in stock allow. */
const allowedFrom = (
  field: Field,
  { green, step, anyHour }: Wanted,
  machine: number,
  leads: Leads,
  minutes: number,
  from: number,
): number => {
  const { problem } = field
  const always = [{ start: 0, end: problem.horizonMin }]
  const workable = anyHour === true ? always : (problem.workable.get(step.operation) ?? [])
  let start = from
  for (;;) {
    const before = start
    start = firstFit(workable, start, minutes)
    if (start >= NEVER) return NEVER
    const usable = firstFit(
      problem.machines[machine]?.available ?? [],
      start - leads.minutes,
      leads.minutes + minutes,
    )
    if (usable >= NEVER) return NEVER
    start = usable + leads.minutes
    if (leads.afterLoadMin >= 0) {
      const kind = problem.greens[green]?.sand.kind ?? 'damp'
      const sand = stockFrom(field, kind, start - leads.afterLoadMin, step.sandT)
      if (sand >= NEVER) return NEVER
      start = sand + leads.afterLoadMin
    }
    if (step.tines !== undefined) {
      start = stockFrom(field, step.tines.kind, start, step.tines.sets)
      if (start >= NEVER) return NEVER
    }
    if (start === before) return start
  }
}

const offerOn = (
  field: Field,
  wanted: Wanted,
  machine: number,
  day: number,
  minutes: number,
): Offer | null => {
  const { problem, nowMin } = field
  const hours = problem.days[day]
  const own = problem.machines[machine]
  if (hours === undefined || own === undefined) return null
  const leads = leadsTo(field, machine, day, wanted.green, wanted.step)
  if (leads === null) return null
  const end = Math.min(hours.endMin, wanted.end)
  const row = machine * problem.days.length + day
  const begins = Math.max(nowMin, hours.startMin, field.free[row] ?? 0)
  const strange = wanted.machine === null || wanted.machine === machine ? 0 : wanted.loyalty.machineMin
  if (strange === Infinity) return null
  let start = Math.max(wanted.from, begins + leads.minutes)
  for (;;) {
    start = allowedFrom(field, wanted, machine, leads, minutes, start)
    if (start >= NEVER || start + minutes > end) return null
    const crew = crewFor(
      field,
      {
        skilled: field.skilled.get(wanted.step.operation) ?? [],
        crew: own.crew,
        wished: wanted.people,
        leads,
        minutes,
        goal: problem.greens[wanted.green]?.place ?? 0,
        end,
        personMin: wanted.loyalty.personMin,
      },
      start,
    )
    if (crew === null) return null
    if (crew.start === start)
      return { machine, day, minutes, leads, crew, cost: crew.cost + minutes + strange }
    start = crew.start
  }
}

/** The best offer of a machine: on the first day on which it has one. */
const offerOf = (field: Field, wanted: Wanted, machine: number, minutes: number): Offer | null => {
  const { days } = field.problem
  for (let day = dayOf(field.problem, wanted.from); day < days.length; day++) {
    if ((days[day]?.startMin ?? NEVER) >= wanted.end) return null
    const offer = offerOn(field, wanted, machine, day, minutes)
    if (offer !== null) return offer
  }
  return null
}

/** Writes an offer into the field: what brings the machine, then the step. */
export const take = (field: Field, wanted: Wanted, offer: Offer): ScheduledTask => {
  const { problem } = field
  const { green, step } = wanted
  const { crew, leads, machine, minutes, day } = offer
  const goal = problem.greens[green]?.place ?? 0
  const bringer = crew.people[0] ?? 0
  const kind = problem.greens[green]?.sand.kind ?? 'damp'
  const begin = crew.start - leads.minutes
  let at = begin
  for (const [index, lead] of leads.list.entries()) {
    const named =
      lead.kind === 'load' || (lead.kind === 'move' && index === leads.list.length - 1 && lead.to === goal)
    field.tasks.push({
      kind: lead.kind,
      green: named ? green : null,
      pass: null,
      load: lead.kind === 'load' ? step.load : null,
      machine,
      people: [bringer],
      startMin: at,
      finishMin: at + lead.minutes,
    })
    if (lead.kind === 'load') {
      field.draws.push({ stock: kind, amount: step.sandT, atMin: at })
    }
    at += lead.minutes
  }
  const task: ScheduledTask = {
    kind: step.operation,
    green,
    pass: step.pass,
    load: step.load,
    machine,
    people: crew.people,
    startMin: at,
    finishMin: at + minutes,
  }
  field.tasks.push(task)
  for (const person of crew.people) {
    const diary = field.diaries[person]
    if (diary === undefined) continue
    const brings = person === bringer && leads.minutes > 0
    write(diary, { start: brings ? begin : at, end: task.finishMin }, brings ? leads.from : goal, goal)
  }
  const row = machine * problem.days.length + day
  field.free[row] = task.finishMin
  field.place[row] = goal
  field.fresh[row] = 0
  if (task.kind === 'dress') field.hopper[machine] = null
  markStep(field, task)
  return task
}

/** The offer that costs least: as early as it goes, on the machine and with the people that it had unless waiting for them is worse than the change. Null when there is none before `end`. */
export const bestOffer = (field: Field, wanted: Wanted): Offer | null => {
  let best: Offer | null = null
  for (const [machine, own] of field.problem.machines.entries()) {
    const minutes = wanted.step.minutesByMachine.get(own.id)
    if (minutes === undefined) continue
    const offer = offerOf(field, wanted, machine, minutes)
    if (offer !== null && (best === null || offer.cost < best.cost)) best = offer
  }
  return best
}

/** Places a step on its best offer. Null when there is none; then nothing is changed. */
export const place = (field: Field, wanted: Wanted): ScheduledTask | null => {
  const best = bestOffer(field, wanted)
  return best === null ? null : take(field, wanted, best)
}
