import { NEVER } from '../spans.ts'
import { findCrew } from './crew.ts'
import { dayOf } from './ground.ts'
import { leadFrom, leadOf } from './lead.ts'
import { canShift } from './person.ts'
import { MACHINE, RECORD_HEAD, type Run } from './run.ts'
import { WISH_MIN } from './recipe.ts'
import { stockFrom, takenBefore } from './stock.ts'
import { fitByDay } from './spans-by-day.ts'
import { entryAt, firstFrom } from './timeline.ts'
import type { CrewWanted, Lead, StepWanted } from './wanted.ts'

/** What a machine that did this step in the plan to stay near to is preferred by, minutes. */
const KEEP_PLAN_MIN = 60

/** Earliest start at or after `from` that the hours, the machine's calendar and what is in stock allow. */
const allowedFrom = (run: Run, machine: number, wanted: CrewWanted, lead: Lead, from: number): number => {
  const { ground } = run
  const operation = ground.operation[wanted.step] ?? 0
  const before = takenBefore(run, wanted.step, lead.afterLoad)
  let start = from
  for (;;) {
    const last = start
    if (!wanted.anyHour) start = fitByDay(ground.workable, operation, wanted.day, start, wanted.minutes)
    if (start >= NEVER) return NEVER
    start = fitByDay(ground.usable, machine, wanted.day, start - lead.minutes, lead.minutes + wanted.minutes)
    if (start >= NEVER) return NEVER
    start += lead.minutes
    if (before >= 0) {
      const taken = stockFrom(run, wanted.step, start - before)
      if (taken >= NEVER) return NEVER
      start = taken + before
    }
    if (start === last) return start
  }
}

/** Earliest start at or after `from` that is over by `wanted.end`, people found; NEVER where there is none. */
const startInGap = (run: Run, machine: number, wanted: CrewWanted, lead: Lead, from: number): number => {
  let start = from
  for (;;) {
    const allowed = allowedFrom(run, machine, wanted, lead, start)
    if (allowed >= NEVER || allowed + wanted.minutes > wanted.end) return NEVER
    wanted.start = allowed
    const crewed = findCrew(run, wanted)
    if (crewed === allowed || crewed >= NEVER) return crewed
    start = crewed
  }
}

/** When the leads of the machine's task behind a gap would begin if the machine came from `place`; NEVER when there is no such task, -1 when nothing may come before it. */
const nextBegin = (run: Run, machine: number, row: number, gap: number, place: number): number => {
  const { machines } = run
  if (gap >= (machines.count[row] ?? 0)) return NEVER
  const at = entryAt(machines, row, gap)
  const record = machines.data[at + MACHINE.record] ?? -1
  if (record < 0 || machines.data[at + MACHINE.closed] === 1) return -1
  const step = run.log[record * run.record] ?? 0
  return (machines.data[at + MACHINE.work] ?? 0) - leadFrom(run, machine, step, place)
}

/** Whether the machine's task behind a gap can be brought from `place` from `begin` on, by the one who brings it anyway. */
const nextCanFollow = (
  run: Run,
  machine: number,
  row: number,
  gap: number,
  day: number,
  begin: number,
  place: number,
): boolean => {
  const { ground, machines } = run
  const at = entryAt(machines, row, gap)
  const record = machines.data[at + MACHINE.record] ?? 0
  const start = machines.data[at] ?? 0
  const work = machines.data[at + MACHINE.work] ?? 0
  const bringer = run.log[record * run.record + RECORD_HEAD] ?? 0
  if (begin < start && fitByDay(ground.usable, machine, day, begin, work - begin) !== begin) return false
  return canShift(run, bringer, { day, start, toStart: begin, from: place })
}

/**
 * Earliest start of a step on one machine on a day, in any gap between its tasks that leaves room for the way to the next; NEVER when it would not be over by
 * `wanted.end`. Leaves the gap in `run.scratch.found`, the lead in `lead`.
 */
const startOn = (run: Run, machine: number, wanted: CrewWanted, lead: Lead, from: number): number => {
  const { ground, machines, nowMin } = run
  const { found } = run.scratch
  const row = machine * ground.days + wanted.day
  const count = machines.count[row] ?? 0
  const { end } = wanted
  for (let gap = firstFrom(machines, row, from); gap <= count; gap++) {
    if (!leadOf(run, machine, wanted.step, row, gap, lead)) return NEVER
    const free =
      gap === 0
        ? (ground.dayStart[wanted.day] ?? 0)
        : (machines.data[entryAt(machines, row, gap - 1) + MACHINE.end] ?? 0)
    const start = Math.max(from, Math.max(free, nowMin) + lead.minutes)
    if (start + wanted.minutes > end) return NEVER
    const next = nextBegin(run, machine, row, gap, wanted.to)
    if (start + wanted.minutes > next) continue
    wanted.holder = gap === 0 ? -1 : holderBefore(run, row, gap)
    wanted.lead = lead.minutes
    wanted.from = lead.from
    wanted.end = Math.min(end, next)
    const at = startInGap(run, machine, wanted, lead, start)
    wanted.end = end
    if (at >= NEVER || (next < NEVER && !nextCanFollow(run, machine, row, gap, wanted.day, next, wanted.to)))
      continue
    found.gap = gap
    return at
  }
  return NEVER
}

/** Who worked the machine before a gap, -1 where that was before the plan. */
const holderBefore = (run: Run, row: number, gap: number): number => {
  const { machines } = run
  const record = machines.data[entryAt(machines, row, gap - 1) + MACHINE.record] ?? -1
  return record < 0 ? -1 : (run.log[record * run.record + RECORD_HEAD] ?? -1)
}

const keepFound = (run: Run, machine: number, wanted: CrewWanted, lead: Lead, start: number): void => {
  const { found } = run.scratch
  found.start = start
  found.machine = machine
  found.minutes = wanted.minutes
  found.day = wanted.day
  found.lead = lead.minutes
  found.afterLoad = lead.afterLoad
  found.from = lead.from
  found.uses = lead.uses
  for (let n = 0; n < found.people.length; n++) found.people[n] = run.crew[n] ?? -1
}

/** Extra cost of a machine, minutes: for being slow, and for not being the one of the plan to stay near to. */
const machineCharge = (run: Run, step: number, machine: number, minutes: number): number => {
  const { ground, hints, recipe } = run
  const wished = recipe.machine[step] ?? 0
  const slow =
    Math.floor(((minutes - (ground.leastMin[step] ?? 0)) * recipe.slowPercent) / 100) +
    (wished > 0 && wished !== machine + 1 ? WISH_MIN : 0)
  if (hints === null || recipe.follow === 0) return slow
  const hinted = hints.machine[step] ?? -1
  return hinted >= 0 && hinted !== machine ? slow + KEEP_PLAN_MIN : slow
}

const offerOnDay = (
  run: Run,
  { green, step, anyHour }: StepWanted,
  day: number,
  from: number,
  end: number,
): boolean => {
  const { ground, pins, scratch } = run
  const { lead, wanted } = scratch
  const last = ground.choiceFirst[step + 1] ?? 0
  const pinned = pins.machine[step] ?? -1
  let best = NEVER
  let gap = 0
  for (let i = ground.choiceFirst[step] ?? last; i < last; i++) {
    const machine = ground.choiceMachine[i] ?? 0
    if (pinned >= 0 && pinned !== machine) continue
    const minutes = ground.choiceMin[i] ?? 0
    const charge = machineCharge(run, step, machine, minutes)
    wanted.step = step
    wanted.anyHour = anyHour
    wanted.day = day
    wanted.crew = ground.crew[machine] ?? 1
    wanted.minutes = minutes
    wanted.to = ground.greenPlace[green] ?? 0
    wanted.end = Math.min(end, best - charge - 1)
    const start = startOn(run, machine, wanted, lead, from)
    if (start >= NEVER) continue
    best = start + minutes + charge
    gap = scratch.found.gap
    keepFound(run, machine, wanted, lead, start)
  }
  scratch.found.gap = gap
  return best < NEVER
}

/**
 * Seeks the earliest way to do a step, day by day from `from` on: machine, people, start, with set-up, ways and filling. Leaves it in `run.scratch.found` and tells
 * whether there is one.
 */
export const seekOffer = (run: Run, wanted: StepWanted): boolean => {
  const { ground } = run
  for (let day = dayOf(ground, wanted.from); day < ground.days; day++) {
    const dayStart = ground.dayStart[day] ?? 0
    if (dayStart >= wanted.end) return false
    const end = Math.min(wanted.end, ground.dayEnd[day] ?? 0)
    if (offerOnDay(run, wanted, day, Math.max(wanted.from, dayStart), end)) return true
  }
  return false
}
