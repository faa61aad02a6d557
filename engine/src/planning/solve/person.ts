import { NEVER } from '../spans.ts'
import { PERSON, type Run } from './run.ts'
import { entryAt, firstFrom, insertAt } from './timeline.ts'
import type { Entry, Stretch } from './wanted.ts'
import { notePerson, setPersonNumber } from './undo.ts'

/** Longest stretch free inside a window of the day once [start, end) is worked too. */
const longestFree = (
  run: Run,
  row: number,
  opens: number,
  closes: number,
  start: number,
  end: number,
): number => {
  const { data, size } = run.people
  const base = entryAt(run.people, row, 0)
  const count = run.people.count[row] ?? 0
  let free = opens
  let longest = 0
  let isIn = false
  for (let i = Math.max(0, firstFrom(run.people, row, opens) - 1); i <= count; i++) {
    const at = base + i * size
    const busy = i < count ? (data[at] ?? 0) : NEVER
    if (!isIn && start <= busy) {
      if (Math.min(start, closes) - free > longest) longest = Math.min(start, closes) - free
      if (end > free) free = end
      isIn = true
    }
    if (busy >= closes) break
    if (busy - free > longest) longest = busy - free
    const over = data[at + PERSON.end] ?? 0
    if (over > free) free = over
  }
  return Math.max(longest, closes - free)
}

/** Later start that leaves room for the break before it; the same start when no break is lost. */
const afterBreaks = (run: Run, row: number, start: number, end: number): number => {
  const { ground } = run
  const last = ground.breakFirst[row + 1] ?? 0
  for (let i = ground.breakFirst[row] ?? last; i < last; i++) {
    const opens = ground.breakStart[i] ?? 0
    const closes = ground.breakEnd[i] ?? 0
    const minutes = ground.breakMin[i] ?? 0
    if (start >= closes || end <= opens || longestFree(run, row, opens, closes, start, end) >= minutes)
      continue
    const before = firstFrom(run.people, row, start) - 1
    const over = before < 0 ? 0 : (run.people.data[entryAt(run.people, row, before) + PERSON.end] ?? 0)
    return Math.max(start + 1, Math.min(Math.max(opens, over) + minutes, closes))
  }
  return start
}

/** Whether everybody has every break. A task put in before another of the same person, which then begins sooner, is judged without it, so that both together may cost a break. */
export const haveBreaks = (run: Run): boolean => {
  const { breakEnd, breakFirst, breakMin, breakStart } = run.ground
  for (let row = 0; row + 1 < breakFirst.length; row++) {
    if ((run.people.count[row] ?? 0) === 0) continue
    for (let i = breakFirst[row] ?? 0; i < (breakFirst[row + 1] ?? 0); i++) {
      const closes = breakEnd[i] ?? 0
      if (longestFree(run, row, breakStart[i] ?? 0, closes, closes, closes) < (breakMin[i] ?? 0)) return false
    }
  }
  return true
}

/** Later start between the tasks before and after it, ways counted; the same start where it fits. */
const betweenTasks = (
  run: Run,
  row: number,
  begin: number,
  wanted: Stretch,
  shiftStart: number,
  shiftEnd: number,
): number => {
  const { people } = run
  const { data } = people
  const { places, problem } = run.ground
  const way = problem.personTravelMin
  const index = firstFrom(people, row, begin)
  const at = entryAt(people, row, index)
  const before = at - people.size
  const over = data[before + PERSON.end] ?? 0
  if (index > 0 && over > shiftStart) {
    const free = over + (way[(data[before + PERSON.to] ?? 0) * places + wanted.from] ?? 0)
    if (free > begin) return free
  }
  if (index >= (people.count[row] ?? 0)) return begin
  const next = data[at] ?? 0
  if (next >= shiftEnd) return begin
  const leave = begin + wanted.minutes + (way[wanted.to * places + (data[at + PERSON.from] ?? 0)] ?? 0)
  if (leave <= next) return begin
  const free = (data[at + PERSON.end] ?? 0) + (way[(data[at + PERSON.to] ?? 0) * places + wanted.from] ?? 0)
  return Math.max(begin + 1, free)
}

/**
 * Earliest minute at or after `atLeast` at which the person can begin the stretch on a day: inside a shift, with the ways before and after it, and with every
 * break still possible. NEVER when there is none before `limit`.
 */
export const personBegin = (run: Run, person: number, day: number, wanted: Stretch): number => {
  const { ground } = run
  const row = person * ground.days + day
  const last = ground.shiftFirst[row + 1] ?? 0
  for (let i = ground.shiftFirst[row] ?? last; i < last; i++) {
    const shiftEnd = ground.shiftEnd[i] ?? 0
    if (shiftEnd <= wanted.atLeast) continue
    const shiftStart = ground.shiftStart[i] ?? 0
    let begin = Math.max(wanted.atLeast, shiftStart + (ground.problem.personTravelMin[wanted.from] ?? 0))
    while (begin + wanted.minutes <= shiftEnd && begin < wanted.limit) {
      let later = betweenTasks(run, row, begin, wanted, shiftStart, shiftEnd)
      if (later === begin) later = afterBreaks(run, row, begin, begin + wanted.minutes)
      if (later === begin) return begin
      begin = later
    }
  }
  return NEVER
}

/** Writes a stretch of work into a person's day. */
export const bookPerson = (run: Run, person: number, entry: Entry): void => {
  const { people } = run
  const row = person * run.ground.days + entry.day
  const index = firstFrom(people, row, entry.start)
  const at = insertAt(people, row, index)
  people.data[at] = entry.start
  people.data[at + PERSON.end] = entry.end
  people.data[at + PERSON.from] = entry.from
  people.data[at + PERSON.to] = entry.to
  people.data[at + PERSON.post] = entry.post
  notePerson(run, row, index)
}

/** The beginning of a task of the one who brings a machine, and another that it may get. */
export type Shifted = {
  readonly day: number
  readonly start: number
  readonly toStart: number
  readonly from: number
}

/**
 * Whether the one who brings a machine could begin the task at another minute and place instead: the way from the task before fits, and so do the breaks.
 */
export const canShift = (run: Run, person: number, { day, start, toStart, from }: Shifted): boolean => {
  const { ground, people } = run
  const { places, problem } = ground
  const row = person * ground.days + day
  const index = firstFrom(people, row, start)
  const before = entryAt(people, row, index) - people.size
  const place = index > 0 ? (people.data[before + PERSON.to] ?? 0) : 0
  const free =
    index > 0
      ? (people.data[before + PERSON.end] ?? 0)
      : (ground.shiftStart[ground.shiftFirst[row] ?? 0] ?? 0)
  if (free + (problem.personTravelMin[place * places + from] ?? 0) > toStart) return false
  return toStart >= start || afterBreaks(run, row, toStart, start) === toStart
}

/** Moves the beginning of a task in a person's day. */
export const shift = (run: Run, person: number, { day, start, toStart, from }: Shifted): void => {
  const row = person * run.ground.days + day
  const at = entryAt(run.people, row, firstFrom(run.people, row, start))
  setPersonNumber(run, at, toStart)
  setPersonNumber(run, at + PERSON.from, from)
}
