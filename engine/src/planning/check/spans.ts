import type { Span } from '../problem.ts'

/** Differences under this are rounding, not time: a millionth of a minute. Instants may carry seconds, so minutes need not be whole. */
export const SLACK_MIN = 1e-6

/** Tonnes under this are rounding: a gram. */
export const SLACK_T = 1e-6

/** Minutes that two half-open spans share; 0 when they only touch or one of them is empty. */
export const sharedMin = (a: Span, b: Span): number =>
  Math.max(0, Math.min(a.end, b.end) - Math.max(a.start, b.start))

/** Minutes that a span shares with any of a list that does not overlap itself. */
export const totalSharedMin = (span: Span, list: readonly Span[]): number =>
  list.reduce((sum, other) => sum + sharedMin(span, other), 0)

/** The same minutes as spans in order, those that overlap or touch made one; empty ones dropped. */
export const merged = (list: readonly Span[]): readonly Span[] => {
  const out: Span[] = []
  for (const span of [...list].sort((a, b) => a.start - b.start)) {
    if (span.end <= span.start) continue
    const last = out.at(-1)
    if (last !== undefined && span.start <= last.end) {
      out[out.length - 1] = { start: last.start, end: Math.max(last.end, span.end) }
    } else out.push(span)
  }
  return out
}

/** What lies outside a list: how many minutes, and where the first of them is. */
export type Outside = { readonly atMin: number; readonly min: number }

const NOTHING_OUTSIDE: Outside = { atMin: Infinity, min: 0 }

const isInside = (span: Span, list: readonly Span[]): boolean => {
  for (const other of list) if (other.end >= span.end) return other.start <= span.start
  return false
}

/** What of a span lies outside a merged list. */
export const outside = (span: Span, list: readonly Span[]): Outside => {
  // Nearly all tasks lie inside one span, and this runs for each of them.
  if (isInside(span, list)) return NOTHING_OUTSIDE
  let cursor = span.start
  let first = Infinity
  let total = 0
  const leave = (until: number): void => {
    if (until <= cursor) return
    first = Math.min(first, cursor)
    total += until - cursor
  }
  for (const other of list) {
    if (other.end <= cursor) continue
    if (other.start >= span.end) break
    leave(other.start)
    cursor = other.end
  }
  leave(span.end)
  return total > SLACK_MIN ? { atMin: first, min: total } : NOTHING_OUTSIDE
}
