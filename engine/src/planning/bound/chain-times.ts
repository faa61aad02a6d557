import { dryFrom } from '../dried.ts'
import type { Problem, Span } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { BoundGreen, BoundStep, Choice } from './bound-ground.ts'

/** By step: the soonest start and the soonest finish (of different machines, maybe); or the latest of both. Minutes. */
export type ChainTimes = { readonly starts: Int32Array; readonly ends: Int32Array }

/** Millimetres that the checker forgives. */
const SLACK_MM = 1e-6

const EVER: Span = { start: 0, end: NEVER }

/** Soonest start inside one of the spans and inside a window. */
const soonest = ({ spans, minutes }: Choice, from: number, window: Span): number => {
  for (const span of spans) {
    const start = Math.max(span.start, from, window.start)
    if (start + minutes <= Math.min(span.end, window.end)) return start
  }
  return NEVER
}

/** Latest finish inside one of the spans and inside a window; -1 where there is none. */
const latestFinish = ({ spans, minutes }: Choice, until: number, window: Span): number => {
  for (let i = spans.length - 1; i >= 0; i--) {
    const span = spans[i] ?? EVER
    const end = Math.min(span.end, until, window.end)
    if (end - minutes >= Math.max(span.start, window.start)) return end
  }
  return -1
}

const nextDayFrom = (problem: Problem, min: number): number =>
  problem.days.find((day) => day.startMin >= min)?.startMin ?? NEVER

/** The minute by which a day has begun that the minute lies in. */
const dayBegan = (problem: Problem, min: number): number =>
  problem.days.findLast((day) => day.startMin <= min)?.startMin ?? 0

const windowOf = (green: BoundGreen, index: number, window: Span | null): Span =>
  window !== null && index >= green.marks.open && index <= green.windowed ? window : EVER

/** Soonest times of one step after `from`; null where it fits nowhere. */
const stepSoonest = (step: BoundStep, from: number, window: Span): Span | null => {
  if (step.done !== null) return step.done
  // Work by hand has no minutes of its own.
  if (step.choices.length === 0)
    return { start: Math.max(from, window.start), end: Math.max(from, window.start) }
  let start = NEVER
  let end = NEVER
  for (const choice of step.choices) {
    const at = soonest(choice, from, window)
    start = Math.min(start, at)
    if (at < NEVER) end = Math.min(end, at + choice.minutes)
  }
  return end < NEVER ? { start, end } : null
}

/**
 * The soonest times of a green's steps if every machine and person stood waiting for it; from opening to finish inside the window, where one is given,
 * and opened no earlier than `openFrom`. Null where the chain does not fit.
 */
export const soonestTimes = (
  problem: Problem,
  green: BoundGreen,
  window: Span | null,
  openFrom: number,
): ChainTimes | null => {
  const starts = new Int32Array(green.steps.length)
  const ends = new Int32Array(green.steps.length)
  let end = 0
  let dressedEnd = -1
  for (const [index, one] of green.steps.entries()) {
    let from = end + one.step.lagMin
    if (one.step.nextDay) from = Math.max(from, nextDayFrom(problem, end))
    if (one.step.dryNeedMm > 0 && dressedEnd >= 0)
      from = Math.max(from, dryFrom(problem.driedMm, dressedEnd, one.step.dryNeedMm - SLACK_MM))
    if (one.refill !== null) from = Math.max(from, (ends[one.refill.since] ?? 0) + one.refill.minutes)
    if (index === green.marks.open) from = Math.max(from, openFrom)
    const span = stepSoonest(one, from, windowOf(green, index, window))
    if (span === null || span.start >= NEVER) return null
    starts[index] = span.start
    ends[index] = span.end
    end = span.end
    if (one.step.operation === 'dress') dressedEnd = end
  }
  return { starts, ends }
}

/** The latest finish of the dressing that leaves the sand dry by `byMin`; -1 where there is none. */
const dressedBy = (driedMm: Float64Array, byMin: number, needMm: number): number => {
  let low = -1
  let high = byMin
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (dryFrom(driedMm, middle, needMm - SLACK_MM) <= byMin) low = middle
    else high = middle - 1
  }
  return low
}

/** Latest finish and the latest start of one step that is over by `until`; null where it fits nowhere. */
const stepLatest = (step: BoundStep, until: number, window: Span): Span | null => {
  if (step.done !== null) return step.done
  if (step.choices.length === 0)
    return { start: Math.min(until, window.end), end: Math.min(until, window.end) }
  let start = -1
  let end = -1
  for (const choice of step.choices) {
    const at = latestFinish(choice, until, window)
    end = Math.max(end, at)
    if (at >= 0) start = Math.max(start, at - choice.minutes)
  }
  return end < 0 ? null : { start, end }
}

/** The latest times of a green's steps if all of them are to be over by `untilMin`. Null where the chain does not fit. */
export const latestTimes = (
  problem: Problem,
  green: BoundGreen,
  window: Span | null,
  untilMin: number,
): ChainTimes | null => {
  const starts = new Int32Array(green.steps.length)
  const ends = new Int32Array(green.steps.length)
  let until = untilMin
  let drying: { readonly byMin: number; readonly needMm: number }[] = []
  for (let index = green.steps.length - 1; index >= 0; index--) {
    const one = green.steps[index]
    if (one === undefined) return null
    const { step } = one
    if (step.operation === 'dress') {
      for (const { byMin, needMm } of drying)
        until = Math.min(until, dressedBy(problem.driedMm, byMin, needMm))
      drying = []
    }
    for (const [later, { refill }] of green.steps.entries())
      if (refill?.since === index) until = Math.min(until, (starts[later] ?? 0) - refill.minutes)
    const span = stepLatest(one, until, windowOf(green, index, window))
    if (span === null || span.start < 0) return null
    starts[index] = span.start
    ends[index] = span.end
    if (step.dryNeedMm > 0) drying.push({ byMin: span.start, needMm: step.dryNeedMm })
    until = span.start - step.lagMin
    if (step.nextDay) until = Math.min(until, dayBegan(problem, span.start))
  }
  return { starts, ends }
}
