import { dryFrom } from '../dried.ts'
import type { Span } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { GroundGreen, GroundStep, WorkWindow } from './ground.ts'
import { backTo, mark, type Growing } from './growing.ts'
import { placeStep } from './place-step.ts'

/** What holds for one try at a green. */
export type GreenWanted = {
  readonly green: number
  readonly window: WorkWindow
  /** The green is opened no earlier. */
  readonly from: number
  /** True: a fixture that names the green forbids work on it then. False: the clash is taken. */
  readonly keepFixtures: boolean
  /** True: once cleared, the green may stand a dry night. */
  readonly overNight: boolean
}

/** Greens in work at once, at most, if one more is in work over the span; with the minute at which the first of the others is finished. */
const crowd = (growing: Growing, span: Span): { readonly most: number; readonly thins: number } => {
  let most = 0
  let thins = NEVER
  for (const one of growing.inWork) {
    if (one.start >= span.end || one.end <= span.start) continue
    thins = Math.min(thins, one.end)
    // The most are together where one of them, or the new one, begins.
    const moment = Math.max(one.start, span.start)
    let together = 0
    for (const other of growing.inWork) if (other.start <= moment && other.end > moment) together++
    most = Math.max(most, together)
  }
  return { most: most + 1, thins }
}

/** Tries a step on each day from `from` on, inside the limit. */
const placeAnyDay = (
  growing: Growing,
  wanted: GreenWanted,
  ground: GroundStep,
  from: number,
  limit: number,
): Span | null => {
  const { problem, days } = growing.ground
  for (const [day, hours] of problem.days.entries()) {
    if (hours.endMin <= from) continue
    if (hours.startMin >= limit) return null
    const placed = placeStep(growing, {
      green: wanted.green,
      ground,
      sandKind: problem.greens[wanted.green]?.sand.kind ?? 'damp',
      day,
      workable: days[day]?.get(ground.step.operation) ?? [],
      end: Math.min(hours.endMin, limit),
      from: Math.max(from, hours.startMin),
    })
    if (placed !== null) return placed
  }
  return null
}

/** Earliest start of a step by the chain alone: the wait, the next day, the dry sand. */
const chainFrom = (
  growing: Growing,
  { step }: GroundStep,
  previousEnd: number,
  dressedEnd: number,
): number => {
  const { problem } = growing.ground
  let from = previousEnd + step.lagMin
  if (step.nextDay)
    from = Math.max(from, problem.days.find((hours) => hours.startMin >= previousEnd)?.startMin ?? NEVER)
  return step.dryNeedMm > 0 && dressedEnd >= 0
    ? Math.max(from, dryFrom(problem.driedMm, dressedEnd, step.dryNeedMm))
    : from
}

/** Latest minute at which the green may still be in work after it was opened in this window. */
const workLimit = (growing: Growing, { overNight, window }: GreenWanted): number => {
  if (!overNight) return window.span.end
  const { rain, horizonMin } = growing.ground.problem
  return rain.find((span) => span.start >= window.span.start)?.start ?? horizonMin
}

/** Places all steps of a green once, the opening no earlier than `from`. Null when a step finds no place. */
const placeOnce = (growing: Growing, green: GroundGreen, wanted: GreenWanted, from: number): Span | null => {
  const { marks } = green
  const { window } = wanted
  const { horizonMin } = growing.ground.problem
  const limit = workLimit(growing, wanted)
  const bound = wanted.overNight ? marks.clear : marks.finish
  let end = 0
  let dressedEnd = -1
  let opened = 0
  let finished = 0
  for (const [index, ground] of green.steps.entries()) {
    const least = Math.max(chainFrom(growing, ground, end, dressedEnd), index === marks.open ? from : 0)
    if (least >= NEVER) return null
    const placed =
      index >= marks.open && index <= bound
        ? placeStep(growing, {
            green: wanted.green,
            ground,
            sandKind: growing.ground.problem.greens[wanted.green]?.sand.kind ?? 'damp',
            day: window.day,
            workable: window.workable.get(ground.step.operation) ?? [],
            end: window.span.end,
            from: Math.max(least, window.span.start),
          })
        : placeAnyDay(
            growing,
            wanted,
            ground,
            least,
            index < marks.open ? window.span.end : index <= marks.finish ? limit : horizonMin,
          )
    if (placed === null) return null
    if (index === marks.open) opened = placed.start
    if (index === marks.finish) finished = placed.end
    if (ground.step.operation === 'dress') dressedEnd = placed.end
    end = placed.end
  }
  return { start: opened, end: finished }
}

/** Minute to open at instead, or 0: a fixture in the way, or too many greens in work. */
const postponed = (growing: Growing, wanted: GreenWanted, work: Span): number => {
  const { problem } = growing.ground
  if (wanted.keepFixtures) {
    const clash = problem.greens[wanted.green]?.fixtures.find(
      (fixture) => fixture.start < work.end && fixture.end > work.start,
    )
    if (clash !== undefined) return Math.max(clash.end, work.start + 1)
  }
  const { most, thins } = crowd(growing, work)
  return most > problem.settings.openGreensCap ? Math.max(thins, work.start + 1) : 0
}

/** Whether the chain can't be finished in the window even if nothing kept it waiting once a machine is free to open the green. */
const isTooLate = (growing: Growing, green: GroundGreen, { window }: GreenWanted, from: number): boolean => {
  const free = (green.steps[green.marks.open]?.choices ?? []).reduce((soonest, { machine }) => {
    const state = growing.machines[machine]
    if (state === undefined || state.day > window.day) return soonest
    return Math.min(soonest, state.day === window.day ? state.freeMin : 0)
  }, NEVER)
  return Math.max(from, free) + green.leastMin > window.crewEnd
}

/**
 * Puts a whole green into the schedule, opened as early as it goes in the window, or not at all: a green is opened only when its whole chain fits
 * (look-ahead on the finish rule instead of unscheduling). Returns the stretch in which it is in work, or null; then nothing is changed.
 */
export const placeGreen = (growing: Growing, wanted: GreenWanted): Span | null => {
  const green = growing.ground.greens[wanted.green]
  if (green === undefined) return null
  const start = mark(growing)
  let from = Math.max(wanted.from, wanted.window.span.start)
  while (from < wanted.window.span.end) {
    if (!wanted.overNight && isTooLate(growing, green, wanted, from)) return null
    const work = placeOnce(growing, green, wanted, from)
    const later = work === null ? NEVER : postponed(growing, wanted, work)
    if (work !== null && later === 0) {
      growing.inWork.push({ green: wanted.green, ...work })
      return work
    }
    backTo(growing, start)
    from = later
  }
  return null
}
