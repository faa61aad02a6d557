/** A stretch of a line, from the smaller to the larger value. */
export type Interval = readonly [number, number]

/** The stretches as a sorted list without overlaps; stretches that touch become one. */
export const mergedIntervals = (intervals: readonly Interval[]): Interval[] => {
  const merged: [number, number][] = []
  for (const [from, to] of intervals.toSorted((a, b) => a[0] - b[0])) {
    const last = merged[merged.length - 1]
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to)
    else merged.push([from, to])
  }
  return merged
}

/** What is left of sorted, separate stretches when other sorted, separate stretches are taken out. */
export const intervalsWithout = (intervals: readonly Interval[], taken: readonly Interval[]): Interval[] =>
  intervals.flatMap(([from, to]) => {
    const left: Interval[] = []
    let at = from
    for (const [start, end] of taken) {
      if (end <= at || start >= to) continue
      if (start > at) left.push([at, start])
      at = Math.max(at, end)
    }
    if (at < to) left.push([at, to])
    return left
  })
