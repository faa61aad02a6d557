import type { Course } from '../course/course.ts'
import { groupOf } from './green-work.ts'
import type { Prescription } from './prescription.ts'
import { kindOf, wornSets, type Tine } from './tine-sets.ts'

/** What a prescription wears of one kind of tine. */
export type TineNeed = Tine & {
  readonly sets: number
  /** Greens that are worked with it. */
  readonly greens: number
}

/** Sets of each kind of tine that a prescription wears out on all its greens, in the order of first use. */
export const tineNeeds = (course: Course, prescription: Prescription): readonly TineNeed[] => {
  const needs = new Map<string, TineNeed>()
  for (const green of course.greens)
    for (const { tines, passes } of groupOf(prescription, green.id)?.chain ?? []) {
      if (tines === undefined) continue
      const before = needs.get(kindOf(tines))
      needs.set(kindOf(tines), {
        holeDiameterMm: tines.holeDiameterMm,
        coreDiameterMm: tines.coreDiameterMm,
        sets: (before?.sets ?? 0) + passes * wornSets(course, green, tines),
        greens: (before?.greens ?? 0) + 1,
      })
    }
  return [...needs.values()]
}
