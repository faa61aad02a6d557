import type { Course } from '../course/course.ts'
import type { PlanError } from './plan-error.ts'
import type { Effect } from './operations.ts'
import type { Prescription, PrescriptionGroup } from './prescription.ts'

const firstOf = (group: PrescriptionGroup, effect: Effect): number =>
  group.chain.findIndex((step) => step.effects.includes(effect))

/** Every chain opens before it clears, dresses and finishes, and finishes last; tining has its tines, scarifying its blades. */
const chainError = (group: PrescriptionGroup): PlanError | null => {
  const open = firstOf(group, 'opens')
  if (open === -1) return { type: 'chainIncomplete', group: group.id, missing: 'opens' }
  if (firstOf(group, 'finishes') === -1)
    return { type: 'chainIncomplete', group: group.id, missing: 'finishes' }
  const finish = group.chain.findLastIndex((step) => step.effects.includes('finishes'))
  for (const early of ['clears', 'dresses', 'finishes'] as const) {
    const at = firstOf(group, early)
    if (
      at !== -1 &&
      (at < open || group.chain.findLastIndex((step) => step.effects.includes(early)) > finish)
    )
      return { type: 'chainDisordered', group: group.id, early }
  }
  for (const step of group.chain) {
    if ((step.operation === 'core' || step.operation === 'solidTine') && step.tines === undefined)
      return { type: 'toolMissing', group: group.id, operation: step.operation, tool: 'tines' }
    if (step.operation === 'scarify' && step.blades === undefined)
      return { type: 'toolMissing', group: group.id, operation: step.operation, tool: 'blades' }
  }
  return null
}

/** The first thing in a prescription that the course or the work itself contradicts, or null. */
export const checkChains = (course: Course, prescription: Prescription): PlanError | null => {
  const greens = new Set(course.greens.map((green) => green.id))
  for (const group of prescription.groups) {
    const unknown = group.greens === 'all' ? undefined : group.greens.find((green) => !greens.has(green))
    if (unknown !== undefined) return { type: 'unknownGreen', group: group.id, green: unknown }
    const error = chainError(group)
    if (error !== null) return error
  }
  return null
}
