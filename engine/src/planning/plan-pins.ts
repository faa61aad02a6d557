import { fail, ok, type Result } from '../result.ts'
import { MINUTE_MS } from '../time/zone.ts'
import type { Pin } from './committed.ts'
import type { PlanError } from './plan-error.ts'
import type { PlanPin } from './plan.ts'
import type { Problem } from './problem.ts'

const pinOf = (problem: Problem, pin: PlanPin): Result<Pin, PlanError> => {
  const green = problem.greens.findIndex(({ id }) => id === pin.green)
  const day = problem.days.findIndex(({ date }) => date === pin.date)
  if (green < 0) return fail({ type: 'badPin', green: pin.green, because: 'notPlanned' })
  if (day < 0) return fail({ type: 'badPin', green: pin.green, because: 'outOfDays' })
  const openMin =
    pin.opens === null ? null : Math.round((Date.parse(pin.opens) - problem.originMs) / MINUTE_MS)
  const { startMin, endMin } = problem.days[day] ?? { startMin: 0, endMin: 0 }
  if (openMin !== null && (openMin < startMin || openMin >= endMin))
    return fail({ type: 'badPin', green: pin.green, because: 'otherDay' })
  return ok({ kind: 'green', green, day, openMin })
}

/** The problem with the manager's pins in it. Errors: `badPin`, for a green that is not planned, or a day or minute outside the days of the plan. */
export const withPins = (problem: Problem, pins: readonly PlanPin[]): Result<Problem, PlanError> => {
  if (pins.length === 0) return ok(problem)
  const read: Pin[] = []
  for (const pin of pins) {
    const one = pinOf(problem, pin)
    if (!one.ok) return one
    read.push(one.value)
  }
  const before = problem.committed ?? { nowMin: 0, tasks: [], pins: [] }
  return ok({ ...problem, committed: { ...before, pins: [...before.pins, ...read] } })
}
