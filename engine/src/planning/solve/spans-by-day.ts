import type { ProblemDay, Span } from '../problem.ts'
import { NEVER } from '../spans.ts'

/** Spans of several owners (machines, operations) in flat arrays, with an index by day, so that a search never walks past the days before. */
export type SpansByDay = {
  readonly days: number
  /** First span of an owner that ends after a day begins: row `owner * days + day`. */
  readonly skip: Int32Array
  /** One past the last span of an owner. */
  readonly last: Int32Array
  readonly start: Int32Array
  readonly end: Int32Array
}

/** Flattens the spans of each owner, in order and not touching. */
export const spansByDay = (owners: readonly (readonly Span[])[], days: readonly ProblemDay[]): SpansByDay => {
  const all = owners.flat()
  const skip = new Int32Array(owners.length * days.length)
  const last = new Int32Array(owners.length)
  let first = 0
  owners.forEach((spans, owner) => {
    days.forEach((day, d) => {
      const past = spans.filter((span) => span.end <= day.startMin).length
      skip[owner * days.length + d] = first + past
    })
    first += spans.length
    last[owner] = first
  })
  return {
    days: days.length,
    skip,
    last,
    start: Int32Array.from(all, (span) => span.start),
    end: Int32Array.from(all, (span) => span.end),
  }
}

/** Earliest start at or after `from`, which lies on `day`, of a stretch of `minutes` inside one of the owner's spans; NEVER where there is none. */
export const fitByDay = (
  spans: SpansByDay,
  owner: number,
  day: number,
  from: number,
  minutes: number,
): number => {
  const last = spans.last[owner] ?? 0
  for (let i = spans.skip[owner * spans.days + day] ?? last; i < last; i++) {
    const opens = spans.start[i] ?? 0
    const start = opens > from ? opens : from
    if (start + minutes <= (spans.end[i] ?? 0)) return start
  }
  return NEVER
}
