import type { Problem, ProblemBreak, Span } from '../problem.ts'
import { NEVER } from '../spans.ts'

/** What one person has to do so far: stretches in time order, not overlapping unless history has it so, with the places where each begins and ends. Changed in place. */
export type Diary = {
  readonly person: number
  /** Breaks that can still be had; those that history has taken are gone. */
  breaks: readonly ProblemBreak[]
  starts: number[]
  ends: number[]
  froms: number[]
  tos: number[]
  /** Whether stretches overlap, as only history has them: then the last to begin may not be the last to end. */
  tangled: boolean
}

/** An empty diary. */
export const newDiary = (problem: Problem, person: number): Diary => ({
  person,
  breaks: problem.people[person]?.breaks ?? [],
  starts: [],
  ends: [],
  froms: [],
  tos: [],
  tangled: false,
})

/** The same diary, to be written on apart. */
export const copyDiary = (diary: Diary): Diary => ({
  ...diary,
  starts: diary.starts.slice(),
  ends: diary.ends.slice(),
  froms: diary.froms.slice(),
  tos: diary.tos.slice(),
})

/** First index whose stretch starts at or after a minute. Days are long lists and the end is asked for most. */
const indexFrom = ({ starts }: Diary, minute: number): number => {
  let low = 0
  let high = starts.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((starts[middle] ?? 0) < minute) low = middle + 1
    else high = middle
  }
  return low
}

/** Writes a stretch down. */
export const write = (diary: Diary, span: Span, from: number, to: number): void => {
  let at = indexFrom(diary, span.start)
  // At one instant the shorter comes first: a stretch of no length must not end a longer one.
  while (at < diary.starts.length && diary.starts[at] === span.start && (diary.ends[at] ?? 0) <= span.end)
    at++
  if ((diary.ends[at - 1] ?? 0) > span.start || (diary.starts[at] ?? NEVER) < span.end) diary.tangled = true
  diary.starts.splice(at, 0, span.start)
  diary.ends.splice(at, 0, span.end)
  diary.froms.splice(at, 0, from)
  diary.tos.splice(at, 0, to)
}

/** Longest stretch free inside a window once [start, end) is worked too; start = end asks for the diary as it is. */
export const longestFree = (diary: Diary, window: Span, start: number, end: number): number => {
  let free = window.start
  let longest = 0
  let mine = start >= end
  const count = diary.starts.length
  const first = diary.tangled ? 0 : Math.max(0, indexFrom(diary, window.start) - 1)
  for (let i = first; i <= count; i++) {
    const busyStart = i < count ? (diary.starts[i] ?? NEVER) : NEVER
    if (!mine && start <= busyStart) {
      longest = Math.max(longest, Math.min(start, window.end) - free)
      free = Math.max(free, end)
      mine = true
    }
    if (busyStart >= window.end) break
    const busyEnd = diary.ends[i] ?? 0
    if (busyEnd <= window.start) continue
    longest = Math.max(longest, busyStart - free)
    free = Math.max(free, busyEnd)
  }
  return Math.max(longest, window.end - free)
}

/** Of the stretches that begin before a minute the one that ends last; -1 where there is none. */
const lastBefore = (diary: Diary, minute: number): number => {
  let last = indexFrom(diary, minute) - 1
  if (!diary.tangled) return last
  for (let i = last - 1; i >= 0; i--) if ((diary.ends[i] ?? 0) > (diary.ends[last] ?? 0)) last = i
  return last
}

/** Later start that leaves room for every break; the same start when none is lost. */
const afterBreak = (diary: Diary, start: number, end: number): number => {
  for (const { window, minutes } of diary.breaks) {
    if (start >= window.end || end <= window.start) continue
    if (longestFree(diary, window, start, end) >= minutes) continue
    const before = lastBefore(diary, start)
    const free = Math.max(window.start, before >= 0 ? (diary.ends[before] ?? 0) : 0)
    return Math.max(start + 1, Math.min(free + minutes, window.end))
  }
  return start
}

/** A stretch of work that looks for its time. */
export type Stretch = {
  readonly atLeast: number
  readonly minutes: number
  readonly from: number
  readonly to: number
}

/**
 * Earliest minute at which the person can begin a stretch: inside a shift, with the ways before and after it, every break still possible.
 * NEVER when it would begin at or after `limit`.
 */
export const earliest = (problem: Problem, diary: Diary, stretch: Stretch, limit: number): number => {
  const places = problem.places.length
  const way = problem.personTravelMin
  const { atLeast, minutes, from, to } = stretch
  for (const shift of problem.people[diary.person]?.shifts ?? []) {
    if (shift.end <= atLeast) continue
    if (shift.start >= limit) return NEVER
    let begin = Math.max(atLeast, shift.start + (way[from] ?? 0))
    while (begin + minutes <= shift.end && begin < limit) {
      const next = indexFrom(diary, begin)
      const previous = diary.tangled ? lastBefore(diary, begin) : next - 1
      if (previous >= 0 && (diary.ends[previous] ?? 0) > shift.start) {
        const free = (diary.ends[previous] ?? 0) + (way[(diary.tos[previous] ?? 0) * places + from] ?? 0)
        if (free > begin) {
          begin = free
          continue
        }
      }
      const nextStart = diary.starts[next] ?? NEVER
      if (nextStart < shift.end) {
        const there = begin + minutes + (way[to * places + (diary.froms[next] ?? 0)] ?? 0)
        if (there > nextStart) {
          const past = (diary.ends[next] ?? 0) + (way[(diary.tos[next] ?? 0) * places + from] ?? 0)
          begin = Math.max(begin + 1, past)
          continue
        }
      }
      const rested = afterBreak(diary, begin, begin + minutes)
      if (rested === begin) return begin
      begin = rested
    }
  }
  return NEVER
}
