import type { Operation } from '../../operations.ts'
import type { ProblemBreak, Span } from '../../problem.ts'
import { NEVER } from '../../spans.ts'
import { SHED } from '../compile.ts'
import type { Facts } from '../facts.ts'

/** One person at now: what was begun, from when and where they can go on. */
export type PersonAt = {
  readonly person: number
  readonly begun: readonly Span[]
  readonly freeMin: number
  readonly place: number
  /** Breaks that can still be had. */
  readonly breaks: readonly ProblemBreak[]
}

const longestFree = (window: Span, busy: readonly Span[]): number => {
  let cursor = window.start
  let longest = 0
  for (const { start, end } of busy) {
    longest = Math.max(longest, Math.min(start, window.end) - cursor)
    cursor = Math.max(cursor, end)
  }
  return Math.max(longest, window.end - cursor)
}

/** Everybody at now, by what they had begun before. */
export const peopleAt = (facts: Facts, nowMin: number): readonly PersonAt[] =>
  facts.problem.people.map((own, person): PersonAt => {
    const tasks = (facts.byPerson[person] ?? []).filter(({ startMin }) => startMin < nowMin)
    const begun = tasks.map(({ startMin, finishMin }) => ({ start: startMin, end: finishMin }))
    const last = tasks.reduce<(typeof tasks)[number] | undefined>(
      (latest, task) => (latest === undefined || task.finishMin >= latest.finishMin ? task : latest),
      undefined,
    )
    return {
      person,
      begun,
      freeMin: last?.finishMin ?? 0,
      place: last?.way.ends ?? SHED,
      breaks: own.breaks.filter(({ window, minutes }) => longestFree(window, begun) >= minutes),
    }
  })

const withSpan = (begun: readonly Span[], span: Span): readonly Span[] =>
  [...begun, span].sort((a, b) => a.start - b.start)

/** Whether somebody can work a stretch that begins at a place, with nothing else to do from now on: on shift, there in time, every break still possible. */
export const canWork = (facts: Facts, who: PersonAt, span: Span, place: number): boolean => {
  const { problem, compiled } = facts
  const shift = (compiled.shifts[who.person] ?? []).find(
    ({ start, end }) => start <= span.start && span.end <= end,
  )
  if (shift === undefined) return false
  const sameShift = who.freeMin > shift.start
  const from = sameShift ? who.place : SHED
  const ready = sameShift ? who.freeMin : shift.start
  if (ready + (problem.personTravelMin[from * problem.places.length + place] ?? 0) > span.start) return false
  return who.breaks.every(
    ({ window, minutes }) =>
      span.end <= window.start ||
      span.start >= window.end ||
      longestFree(window, withSpan(who.begun, span)) >= minutes,
  )
}

/** A piece of work that looks for its people at the soonest. */
export type CrewNeed = {
  readonly operation: Operation
  readonly crew: number
  readonly minutes: number
  readonly place: number
  /** Machine that has to be brought, where from and how long that takes; null where it stands there or there is none. */
  readonly brought: { readonly machine: number; readonly from: number; readonly minutes: number } | null
}

/** First start inside the spans, from `from` on, for which enough people could each be there with nothing else to do; NEVER where there is none. */
export const soonestCrew = (
  facts: Facts,
  people: readonly PersonAt[],
  need: CrewNeed,
  spans: readonly Span[],
  from: number,
): number => {
  const { problem } = facts
  const skilled = people.filter(({ person }) => problem.people[person]?.skills.has(need.operation))
  const bringers =
    need.brought === null
      ? []
      : people.filter(({ person }) =>
          problem.machines[need.brought?.machine ?? -1]?.operations.some((operation) =>
            problem.people[person]?.skills.has(operation),
          ),
        )
  const isThere = (start: number): boolean => {
    const work = { start, end: start + need.minutes }
    if (skilled.filter((who) => canWork(facts, who, work, need.place)).length < need.crew) return false
    const { brought } = need
    if (brought === null) return true
    const bringing = { start: start - brought.minutes, end: start }
    return bringers.some((who) => canWork(facts, who, bringing, brought.from))
  }
  for (const span of spans)
    for (let start = Math.max(span.start, from); start + need.minutes <= span.end; start++)
      if (isThere(start)) return start
  return NEVER
}
