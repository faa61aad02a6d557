import type { ProblemPerson, Span } from '../problem.ts'
import { mergeSpans } from '../spans.ts'

/** Minutes that a resource has: how many of its machines or people are there, summed over time. */
export type Capacity = {
  /** Most minutes it can work between two moments. */
  readonly between: (from: number, to: number) => number
  /** Minutes from the origin up to a moment, never falling; breaks are not taken off. */
  readonly upTo: (minute: number) => number
}

/** Sums several calendars, each in order and not overlapping itself. */
export const summedUpTo = (calendars: readonly (readonly Span[])[]): ((minute: number) => number) => {
  const changes = calendars
    .flat()
    .flatMap(({ start, end }) => [
      { at: start, by: 1 },
      { at: end, by: -1 },
    ])
    .sort((a, b) => a.at - b.at)
  const at: number[] = []
  const level: number[] = []
  const sum: number[] = []
  let now = 0
  let total = 0
  for (const change of changes) {
    total += now * (change.at - (at.at(-1) ?? change.at))
    now += change.by
    at.push(change.at)
    level.push(now)
    sum.push(total)
  }
  return (minute) => {
    let low = 0
    let high = at.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((at[middle] ?? 0) <= minute) low = middle + 1
      else high = middle
    }
    const k = low - 1
    return k < 0 ? 0 : (sum[k] ?? 0) + (level[k] ?? 0) * (minute - (at[k] ?? 0))
  }
}

/** A resource without breaks. */
export const plainCapacity = (calendars: readonly (readonly Span[])[]): Capacity => {
  const upTo = summedUpTo(calendars)
  return { upTo, between: (from, to) => Math.max(0, upTo(to) - upTo(from)) }
}

const sharedMin = (a: Span, b: Span): number => Math.min(a.end, b.end) - Math.max(a.start, b.start)

/** Minutes of a break that must fall into [from, to) of a shift, however it is laid in its window. */
const breakLossMin = (
  shifts: readonly Span[],
  pause: ProblemPerson['breaks'][number],
  from: number,
  to: number,
): number =>
  shifts.reduce((most, shift) => {
    const start = Math.max(shift.start, from, pause.window.start)
    const end = Math.min(shift.end, to, pause.window.end)
    if (end <= start) return most
    const beside = Math.max(start - pause.window.start, pause.window.end - end)
    return Math.max(most, Math.min(end - start, pause.minutes - beside))
  }, 0)

/** People with shifts and breaks. */
export const peopleCapacity = (people: readonly ProblemPerson[]): Capacity => {
  const shifts = people.map((person) => mergeSpans(person.shifts))
  return {
    upTo: summedUpTo(shifts),
    between: (from, to) =>
      people.reduce((sum, person, index) => {
        const own = shifts[index] ?? []
        const window = { start: from, end: to }
        const there = own.reduce((more, shift) => more + Math.max(0, sharedMin(shift, window)), 0)
        const lost = person.breaks.reduce((more, pause) => more + breakLossMin(own, pause, from, to), 0)
        return sum + Math.max(0, there - lost)
      }, 0),
  }
}
