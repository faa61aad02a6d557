import { OPERATIONS } from '../operations.ts'
import type { Problem } from '../problem.ts'

/** People's calendars and skills in flat arrays; shifts and breaks by row `person * days + day`. */
export type GroundPeople = {
  readonly people: number
  /** People trained for an operation: `skillFirst[operation]` up to `skillFirst[operation + 1]`. */
  readonly skillFirst: Int32Array
  readonly skilled: Uint8Array
  /** 1 where a person is trained for an operation: row `person * operations`. */
  readonly hasSkill: Uint8Array
  readonly operations: number
  readonly shiftFirst: Int32Array
  readonly shiftStart: Int32Array
  readonly shiftEnd: Int32Array
  readonly ordinaryEnd: Int32Array
  readonly breakFirst: Int32Array
  readonly breakStart: Int32Array
  readonly breakEnd: Int32Array
  readonly breakMin: Int32Array
}

const firstsOf = (groups: readonly (readonly unknown[])[]): Int32Array => {
  const first = new Int32Array(groups.length + 1)
  groups.forEach((group, index) => {
    first[index + 1] = (first[index] ?? 0) + group.length
  })
  return first
}

/** Lays people out flat. A shift or a break belongs to the day on which it begins. */
export const groundOfPeople = (problem: Problem): GroundPeople => {
  const { days, people } = problem
  const skilled = OPERATIONS.map((operation) =>
    people.flatMap((person, index) => (person.skills.has(operation) ? [index] : [])),
  )
  const shifts = people.flatMap((person) => {
    const all = person.shifts.map((shift, index) => ({
      ...shift,
      ordinary: person.ordinaryEndMin[index] ?? shift.end,
    }))
    return days.map((day) => all.filter(({ start }) => start >= day.startMin && start < day.endMin))
  })
  const breaks = people.flatMap((person) =>
    days.map((day) =>
      person.breaks.filter(({ window }) => window.start >= day.startMin && window.start < day.endMin),
    ),
  )
  return {
    people: people.length,
    skillFirst: firstsOf(skilled),
    skilled: Uint8Array.from(skilled.flat()),
    hasSkill: Uint8Array.from(
      people.flatMap((person) => OPERATIONS.map((operation) => (person.skills.has(operation) ? 1 : 0))),
    ),
    operations: OPERATIONS.length,
    shiftFirst: firstsOf(shifts),
    shiftStart: Int32Array.from(shifts.flat(), (shift) => shift.start),
    shiftEnd: Int32Array.from(shifts.flat(), (shift) => shift.end),
    ordinaryEnd: Int32Array.from(shifts.flat(), (shift) => shift.ordinary),
    breakFirst: firstsOf(breaks),
    breakStart: Int32Array.from(breaks.flat(), ({ window }) => window.start),
    breakEnd: Int32Array.from(breaks.flat(), ({ window }) => window.end),
    breakMin: Int32Array.from(breaks.flat(), ({ minutes }) => minutes),
  }
}
