import { chainMarks } from '../chain.ts'
import { dryFrom } from '../dried.ts'
import type { ProblemGreen, Span } from '../problem.ts'
import { NEVER } from '../spans.ts'
import { backTo, mark, type Growing, type WorkWindow } from './growing.ts'
import { placeStep } from './place-step.ts'

/** What else holds for one try at a green. */
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

/** Greens in work at once, at most, if this green is in work over the span; with the minute at which the first of them ends. */
const crowd = (growing: Growing, span: Span): { readonly most: number; readonly clearsAt: number } => {
  const others = growing.inWork.filter((other) => other.start < span.end && other.end > span.start)
  const most = Math.max(
    0,
    ...[span.start, ...others.map((other) => other.start)]
      .filter((minute) => minute >= span.start)
      .map((minute) => others.filter((other) => other.start <= minute && other.end > minute).length),
  )
  return { most: most + 1, clearsAt: Math.min(NEVER, ...others.map((other) => other.end)) }
}

/** Tries a step on each day from `from` on, inside the limit. */
const placeAnyDay = (
  growing: Growing,
  green: ProblemGreen,
  index: number,
  stepIndex: number,
  from: number,
  limit: number,
): Span | null => {
  const step = green.steps[stepIndex]
  if (step === undefined) return null
  const { days } = growing.ground.problem
  for (const [day, hours] of days.entries()) {
    if (hours.endMin <= from) continue
    if (hours.startMin >= limit) return null
    const span = { start: hours.startMin, end: Math.min(hours.endMin, limit) }
    const placed = placeStep(growing, {
      green: index,
      step,
      sandKind: green.sand.kind,
      day,
      span,
      from: Math.max(from, span.start),
    })
    if (placed !== null) return placed
  }
  return null
}

/** Earliest start of a step by the chain alone: the wait, the next day, the dry sand. */
const chainFrom = (
  growing: Growing,
  green: ProblemGreen,
  stepIndex: number,
  previousEnd: number,
  dressedEnd: number,
): number => {
  const { problem } = growing.ground
  const step = green.steps[stepIndex]
  if (step === undefined) return NEVER
  let from = previousEnd + step.lagMin
  if (step.nextDay) {
    const day = problem.days.find((hours) => hours.startMin >= previousEnd)
    from = day === undefined ? NEVER : Math.max(from, day.startMin)
  }
  return step.dryNeedMm > 0 && dressedEnd >= 0
    ? Math.max(from, dryFrom(problem.driedMm, dressedEnd, step.dryNeedMm))
    : from
}

/** Latest minute at which the green may still be in work after it was opened in this window. */
const workLimit = (growing: Growing, wanted: GreenWanted): number => {
  if (!wanted.overNight) return wanted.window.span.end
  const rain = growing.ground.problem.rain.find((span) => span.start >= wanted.window.span.start)
  return rain === undefined ? growing.ground.problem.horizonMin : rain.start
}

type Placed = { readonly ok: true; readonly work: Span } | { readonly ok: false; readonly retryFrom: number }

/** Places all steps of a green once, the opening no earlier than `from`. */
const placeOnce = (growing: Growing, green: ProblemGreen, wanted: GreenWanted, from: number): Placed => {
  const marks = chainMarks(green)
  const { window } = wanted
  const limit = workLimit(growing, wanted)
  let end = 0
  let dressedEnd = -1
  let opened = 0
  let finished = 0
  for (const [index, step] of green.steps.entries()) {
    const least = Math.max(chainFrom(growing, green, index, end, dressedEnd), index === marks.open ? from : 0)
    if (least >= NEVER) return { ok: false, retryFrom: NEVER }
    const inWindow = index >= marks.open && index <= (wanted.overNight ? marks.clear : marks.finish)
    const horizon = index <= marks.finish && index >= marks.open ? limit : growing.ground.problem.horizonMin
    const before = index < marks.open ? window.span.end : horizon
    const placed = inWindow
      ? placeStep(growing, {
          green: wanted.green,
          step,
          sandKind: green.sand.kind,
          day: window.day,
          span: window.span,
          from: Math.max(least, window.span.start),
        })
      : placeAnyDay(growing, green, wanted.green, index, least, before)
    if (placed === null) return { ok: false, retryFrom: NEVER }
    if (index === marks.open) opened = placed.start
    if (index === marks.finish) finished = placed.end
    if (step.operation === 'dress') dressedEnd = placed.end
    end = placed.end
  }
  return { ok: true, work: { start: opened, end: finished } }
}

/** First reason to open later, or 0: a fixture in the way, or too many greens in work. */
const postponed = (growing: Growing, green: ProblemGreen, wanted: GreenWanted, work: Span): number => {
  const clash = wanted.keepFixtures
    ? green.fixtures.find((fixture) => fixture.start < work.end && fixture.end > work.start)
    : undefined
  if (clash !== undefined) return Math.max(clash.end, work.start + 1)
  const { most, clearsAt } = crowd(growing, work)
  return most > growing.ground.problem.settings.openGreensCap ? Math.max(clearsAt, work.start + 1) : 0
}

/**
 * Puts a whole green into the schedule, opened as early as it goes in the window, or not at all: a green is opened only when its whole chain fits
 * (look-ahead on the finish rule instead of unscheduling). Returns the stretch in which it is in work, or null; then nothing is changed.
 */
export const placeGreen = (growing: Growing, wanted: GreenWanted): Span | null => {
  const green = growing.ground.problem.greens[wanted.green]
  if (green === undefined) return null
  const start = mark(growing)
  let from = Math.max(wanted.from, wanted.window.span.start)
  while (from < wanted.window.span.end) {
    const placed = placeOnce(growing, green, wanted, from)
    const later = placed.ok ? postponed(growing, green, wanted, placed.work) : placed.retryFrom
    if (placed.ok && later === 0) {
      growing.inWork.push({ green: wanted.green, ...placed.work })
      return placed.work
    }
    backTo(growing, start)
    from = later
  }
  return null
}
