import type { Span } from '../problem.ts'

/** Spans in which at least `least` of several calendars hold, each calendar in order and not overlapping itself. The result is in order and not touching. */
export const heldAtLeast = (calendars: readonly (readonly Span[])[], least: number): readonly Span[] => {
  const changes = calendars
    .flat()
    .flatMap(({ start, end }) =>
      end > start
        ? [
            { at: start, by: 1 },
            { at: end, by: -1 },
          ]
        : [],
    )
    .sort((a, b) => a.at - b.at || b.by - a.by)
  const held: Span[] = []
  let level = 0
  let since = 0
  for (const { at, by } of changes) {
    if (level < least && level + by >= least) since = at
    if (level >= least && level + by < least && at > since) held.push({ start: since, end: at })
    level += by
  }
  return held
}
