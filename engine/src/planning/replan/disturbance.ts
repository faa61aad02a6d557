import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { MINUTE_MS, isoWithOffset } from '../../time/zone.ts'
import { OPERATIONS } from '../operations.ts'
import type { Plan } from '../plan.ts'
import type { Problem } from '../problem.ts'
import type { DayFact } from './facts.ts'

/** A seeded disturbance of a planned week: the minute at which it is known, and the facts. */
export type Disturbance = { readonly now: string; readonly facts: readonly DayFact[]; readonly kind: string }

/** Kinds of disturbance, in turn. */
const KINDS = [
  'late',
  'machineOut',
  'machineOutLong',
  'personOut',
  'rain',
  'slower',
  'sandShort',
  'pinned',
  'recorded',
  'several',
] as const

/** Makes the disturbance of a seed: any minute of a day with work between its first and its last task, kinds in turn. */
export const disturbanceOf = (problem: Problem, plan: Plan, seed: number): Disturbance => {
  const random = xoroshiro128plus(seed)
  for (let i = 0; i < 8; i++) uniformInt(random, 0, 1)
  const draw = (least: number, most: number): number => uniformInt(random, least, Math.max(least, most))
  const iso = (minute: number): string =>
    isoWithOffset(problem.originMs + minute * MINUTE_MS, problem.timeZone)
  const minute = (text: string): number => Math.round((Date.parse(text) - problem.originMs) / MINUTE_MS)
  const dates = plan.days.map(({ date }) => date)
  const date = dates[draw(0, dates.length - 1)] ?? plan.start
  const day = problem.days.find((one) => one.date === date) ?? problem.days[0]
  const ofDay = plan.tasks.filter((task) => task.start.startsWith(date))
  const first = Math.min(...ofDay.map((task) => minute(task.start)))
  const last = Math.max(...ofDay.map((task) => minute(task.finish)))
  const nowMin = draw(first, last - 1)
  const one = <T>(list: readonly T[]): T => list[draw(0, list.length - 1)] as T
  // A late start is known before anybody begins.
  const lateAt = first + draw(10, 120)
  const make = (kind: (typeof KINDS)[number]): readonly DayFact[] => {
    switch (kind) {
      case 'late':
        return [{ kind: 'late', at: iso(lateAt) }]
      case 'machineOut':
      case 'machineOutLong': {
        const from = nowMin - draw(0, 20)
        const machine = one(plan.tasks.flatMap((task) => task.machine ?? []))
        const until =
          kind === 'machineOut' ? from + draw(30, 240) : draw(0, 1) === 0 ? null : (day?.endMin ?? 0) + 420
        return [{ kind: 'machineOut', machine, from: iso(from), until: until === null ? null : iso(until) }]
      }
      case 'personOut': {
        const person = one(problem.people).id
        const until = draw(0, 2) === 0 ? null : iso(nowMin + draw(30, 300))
        return [{ kind: 'personOut', person, from: iso(nowMin - draw(0, 10)), until }]
      }
      case 'rain': {
        const from = nowMin + draw(10, 420)
        return [{ kind: 'rain', from: iso(from), until: iso(from + draw(30, 240)), mmPerH: 1 }]
      }
      case 'slower': {
        const factor = draw(7, 18) / 10
        return draw(0, 1) === 0
          ? [{ kind: 'slower', operation: one(OPERATIONS), factor }]
          : [{ kind: 'slower', green: one(plan.openings).green, factor }]
      }
      case 'sandShort':
        return [
          {
            kind: 'sandShort',
            sand: one(['damp', 'kilnDried'] as const),
            massT: draw(0, 120) / 10,
            at: iso(nowMin),
          },
        ]
      case 'pinned': {
        const later = plan.openings.filter((row) => minute(row.opened) > nowMin)
        if (later.length === 0) return []
        const { green, opened } = one(later)
        return draw(0, 1) === 0
          ? [{ kind: 'pinned', green, date: one(dates.filter((other) => other >= date)) }]
          : [{ kind: 'pinned', green, at: iso(Math.max(nowMin + 1, minute(opened) + draw(-60, 60))) }]
      }
      case 'recorded': {
        const done = ofDay.filter(
          (task) =>
            task.green !== null &&
            !['move', 'load', 'setUp'].includes(task.operation) &&
            minute(task.start) < nowMin,
        )
        const task = done.at(-1 - draw(0, Math.min(5, done.length - 1)))
        if (task === undefined) return []
        const at = Math.min(nowMin, minute(task.start) + draw(0, 40))
        return [
          { kind: 'started', task: task.id, at: iso(Math.max(0, at - draw(5, 40))) },
          { kind: draw(0, 2) === 0 ? 'stopped' : 'finished', task: task.id, at: iso(at) },
        ]
      }
      case 'several':
        return [...make('rain'), ...make('personOut'), ...make('slower'), ...make('recorded')]
    }
  }
  const kind = KINDS[seed % KINDS.length] ?? 'late'
  const known = kind === 'late' ? draw(first, lateAt) : nowMin
  return { now: iso(known), facts: make(kind), kind }
}
