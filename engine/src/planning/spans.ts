import type { Span } from './problem.ts'

/** No such minute: later than any horizon. */
export const NEVER = 0x3fffffff

/** Parts of the first list that no span of the second covers. Both in order and not touching. */
export const subtractSpans = (from: readonly Span[], holes: readonly Span[]): readonly Span[] =>
  from.flatMap((span) => {
    const parts: Span[] = []
    let start = span.start
    for (const hole of holes) {
      if (hole.end <= start || hole.start >= span.end) continue
      if (hole.start > start) parts.push({ start, end: hole.start })
      start = hole.end
    }
    if (start < span.end) parts.push({ start, end: span.end })
    return parts
  })

/** What two lists of spans share. Both in order and not touching. */
export const intersectSpans = (a: readonly Span[], b: readonly Span[]): readonly Span[] =>
  a.flatMap((x) =>
    b
      .filter((y) => y.start < x.end && y.end > x.start)
      .map((y) => ({ start: Math.max(x.start, y.start), end: Math.min(x.end, y.end) })),
  )

/** Joins spans that touch or overlap; the result is in order. */
export const mergeSpans = (spans: readonly Span[]): readonly Span[] => {
  const merged: Span[] = []
  for (const span of [...spans].sort((a, b) => a.start - b.start)) {
    const last = merged.at(-1)
    if (last !== undefined && span.start <= last.end)
      merged[merged.length - 1] = { start: last.start, end: Math.max(last.end, span.end) }
    else if (span.end > span.start) merged.push(span)
  }
  return merged
}

/** Earliest start at or after `from` of a stretch of `minutes` inside one of the spans; NEVER where there is none. */
export const firstFit = (spans: readonly Span[], from: number, minutes: number): number => {
  for (const span of spans) {
    const start = span.start > from ? span.start : from
    if (start + minutes <= span.end) return start
  }
  return NEVER
}

/** Hours flagged 1 as spans of minutes, hour `h` covering [60 h, 60 h + 60). */
export const spansOfHours = (flags: ArrayLike<number>, offsetMin = 0): readonly Span[] => {
  const spans: Span[] = []
  for (let hour = 0; hour < flags.length; hour++) {
    if (flags[hour] !== 1) continue
    const start = offsetMin + hour * 60
    const last = spans.at(-1)
    if (last !== undefined && last.end === start)
      spans[spans.length - 1] = { start: last.start, end: start + 60 }
    else spans.push({ start, end: start + 60 })
  }
  return spans
}
