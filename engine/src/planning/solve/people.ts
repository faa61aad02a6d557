import type { Problem, ProblemPerson, Span } from '../problem.ts'
import { NEVER } from '../spans.ts'

/** A person's day so far: busy stretches in time order, with the place where each begins and ends. Changed in place while a schedule grows. */
export type Diary = {
  readonly starts: number[]
  readonly ends: number[]
  readonly froms: number[]
  readonly tos: number[]
}

/** A diary with nothing in it. */
export const emptyDiary = (): Diary => ({ starts: [], ends: [], froms: [], tos: [] })

/** First index whose stretch starts at or after `minute`. */
const indexFrom = (diary: Diary, minute: number): number => {
  let low = 0
  let high = diary.starts.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((diary.starts[middle] ?? 0) < minute) low = middle + 1
    else high = middle
  }
  return low
}

/** Writes a stretch down. The caller has made sure that it fits. */
export const book = (diary: Diary, start: number, end: number, from: number, to: number): void => {
  const at = indexFrom(diary, start)
  diary.starts.splice(at, 0, start)
  diary.ends.splice(at, 0, end)
  diary.froms.splice(at, 0, from)
  diary.tos.splice(at, 0, to)
}

/** Takes a stretch out again. */
export const unbook = (diary: Diary, start: number): void => {
  const at = indexFrom(diary, start)
  diary.starts.splice(at, 1)
  diary.ends.splice(at, 1)
  diary.froms.splice(at, 1)
  diary.tos.splice(at, 1)
}

/** Longest stretch free inside a window once [start, end) is worked too. */
const longestFree = (diary: Diary, window: Span, start: number, end: number): number => {
  let free = window.start
  let longest = 0
  const gap = (busyStart: number, busyEnd: number): void => {
    longest = Math.max(longest, Math.min(busyStart, window.end) - free)
    free = Math.max(free, busyEnd)
  }
  let mine = false
  for (let i = Math.max(0, indexFrom(diary, window.start) - 1); i < diary.starts.length; i++) {
    const busyStart = diary.starts[i] ?? NEVER
    if (!mine && start <= busyStart) {
      gap(start, end)
      mine = true
    }
    if (busyStart >= window.end) break
    if ((diary.ends[i] ?? 0) > window.start) gap(busyStart, diary.ends[i] ?? 0)
  }
  if (!mine) gap(start, end)
  return Math.max(longest, window.end - free)
}

/** Later start that leaves room for the break before it; the same start when no break is lost. */
const afterBreak = (person: ProblemPerson, diary: Diary, start: number, end: number): number => {
  for (const { window, minutes } of person.breaks) {
    if (start >= window.end || end <= window.start) continue
    if (longestFree(diary, window, start, end) >= minutes) continue
    const before = indexFrom(diary, start) - 1
    const free = Math.max(window.start, before >= 0 ? (diary.ends[before] ?? 0) : 0)
    return Math.max(start + 1, Math.min(free + minutes, window.end))
  }
  return start
}

/** A stretch of work that looks for its time: at least `atLeast`, so long, from one place to another. */
export type Wanted = {
  readonly atLeast: number
  readonly minutes: number
  readonly from: number
  readonly to: number
}

/**
 * Earliest minute at which the person can begin the wanted stretch: inside a shift, with the ways before and after it, and with every break still possible.
 * NEVER when there is none before `limit`.
 */
export const earliestFor = (
  problem: Problem,
  person: ProblemPerson,
  diary: Diary,
  wanted: Wanted,
  limit: number,
): number => {
  const places = problem.places.length
  const way = problem.personTravelMin
  for (const shift of person.shifts) {
    if (shift.end <= wanted.atLeast) continue
    if (shift.start >= limit) return NEVER
    let begin = Math.max(wanted.atLeast, shift.start + (way[wanted.from] ?? 0))
    while (begin + wanted.minutes <= shift.end && begin < limit) {
      const next = indexFrom(diary, begin)
      const previous = next - 1
      if (previous >= 0 && (diary.ends[previous] ?? 0) > shift.start) {
        const free =
          (diary.ends[previous] ?? 0) + (way[(diary.tos[previous] ?? 0) * places + wanted.from] ?? 0)
        if (free > begin) {
          begin = free
          continue
        }
      }
      const nextStart = diary.starts[next] ?? NEVER
      if (
        nextStart < shift.end &&
        begin + wanted.minutes + (way[wanted.to * places + (diary.froms[next] ?? 0)] ?? 0) > nextStart
      ) {
        begin = Math.max(
          begin + 1,
          (diary.ends[next] ?? 0) + (way[(diary.tos[next] ?? 0) * places + wanted.from] ?? 0),
        )
        continue
      }
      const rested = afterBreak(person, diary, begin, begin + wanted.minutes)
      if (rested === begin) return begin
      begin = rested
    }
  }
  return NEVER
}
