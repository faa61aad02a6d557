import type { Course, Machine, Person } from '../../course/course.ts'
import { fail, ok, type Result } from '../../result.ts'
import type { PlanError } from '../plan-error.ts'
import type { Plan } from '../plan.ts'

/** One thing more than the club has: a machine like one of its own, or a person trained and employed like one of the crew. */
export type OneMore =
  { readonly kind: 'machine'; readonly like: string } | { readonly kind: 'person'; readonly like: string }

/** A plan of the week as it is, or with one thing more. */
export type WhatIf = { readonly change: OneMore | null; readonly plan: Plan }

/** An id that nothing of the list has yet. */
const freeId = (ids: readonly string[], like: string): string => {
  let number = 2
  while (ids.includes(`${like}-${number}`)) number++
  return `${like}-${number}`
}

const another = <T extends Machine | Person>(list: readonly T[], like: string): readonly T[] | null => {
  const model = list.find(({ id }) => id === like)
  if (model === undefined) return null
  const ids = list.map(({ id }) => id)
  return [...list, { ...model, id: freeId(ids, like) }]
}

/** The course with one thing more; null where it has nothing of that id to be like. */
export const withOneMore = (course: Course, change: OneMore): Course | null => {
  if (change.kind === 'machine') {
    const machines = another(course.machines, change.like)
    return machines === null ? null : { ...course, machines: [...machines] }
  }
  const people = another(course.people, change.like)
  return people === null ? null : { ...course, people: [...people] }
}

/** Nothing of that id is on the course. */
export type UnknownLike = { readonly type: 'unknownLike'; readonly change: OneMore }

/**
 * The week as it is and with each of the changes, side by side: same start, weather, seed and count of schedules. `plan` makes one plan of a course.
 * Errors: `PlanError` from the planning; `UnknownLike` when a change is like nothing on the course.
 */
export const whatIf = (
  course: Course,
  changes: readonly OneMore[],
  plan: (course: Course) => Result<Plan, PlanError>,
): Result<readonly WhatIf[], PlanError | UnknownLike> => {
  const made: WhatIf[] = []
  for (const change of [null, ...changes]) {
    const changed = change === null ? course : withOneMore(course, change)
    if (change !== null && changed === null) return fail({ type: 'unknownLike', change })
    const one = plan(changed ?? course)
    if (!one.ok) return one
    made.push({ change, plan: one.value })
  }
  return ok(made)
}
