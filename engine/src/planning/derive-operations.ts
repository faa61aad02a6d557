import type { Course } from '../course/course.ts'
import { fail, ok, type Result } from '../result.ts'
import { checkChains } from './check-chains.ts'
import { exclude } from './exclude.ts'
import { greenWork, groupOf, type DryNeed, type GreenWork } from './green-work.ts'
import type { PlanError } from './plan-error.ts'
import type { Prescription } from './prescription.ts'
import type { Excluded } from './problem.ts'
import type { PassTimer } from './step-minutes.ts'
import { weatherDryNeed } from './weather-sky.ts'

/** Replaceable: how long sand must dry, and how a pass is timed (the ground's own by default). */
export type WorkPorts = { readonly dryNeed: DryNeed; readonly timer?: PassTimer }

/** What each green needs, and the greens that can't be worked, with the reason. */
export type CourseWork = { readonly works: readonly GreenWork[]; readonly excluded: readonly Excluded[] }

/**
 * What a prescription means for a course: green by green what is opened, the steps with their minutes on each machine, the sand as a band, the loads.
 * Errors: `PlanError`, when the prescription contradicts the course or itself.
 */
export const deriveOperations = (
  course: Course,
  prescription: Prescription,
  ports: WorkPorts = { dryNeed: weatherDryNeed },
): Result<CourseWork, PlanError> => {
  const chains = checkChains(course, prescription)
  if (chains !== null) return fail(chains)
  const works: GreenWork[] = []
  const excluded: Excluded[] = []
  for (const green of course.greens) {
    const group = groupOf(prescription, green.id)
    if (group === undefined) {
      excluded.push({ green: green.id, reason: 'notPrescribed', facts: {} })
      continue
    }
    const work = greenWork(course, green, group, ports.dryNeed, ports.timer)
    if (!work.ok) return fail({ type: 'calculation', green: green.id, error: work.error })
    const out = exclude(course, work.value)
    if (out === null) works.push(work.value)
    else excluded.push(out)
  }
  return ok({ works, excluded })
}
