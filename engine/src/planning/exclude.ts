import type { Course } from '../course/course.ts'
import { machinesFor, type GreenWork } from './green-work.ts'
import type { Excluded } from './problem.ts'

/** Deepest tining of a green's chain, mm; 0 where nothing is tined. */
const deepestMm = (work: GreenWork): number =>
  Math.max(0, ...work.group.chain.map((step) => step.tines?.depthMm ?? 0))

/**
 * Why a green can't be worked at all, before any search: a machine or trained people missing, or deep work over services that nobody has located
 * (the cover of a pipe is never guessed).
 */
export const exclude = (course: Course, work: GreenWork): Excluded | null => {
  const { green } = work
  const depthMm = deepestMm(work)
  const notLocated = green.services.filter((service) => !service.located).map((service) => service.id)
  if (depthMm >= course.settings.deepFromMm && (!green.servicesChecked || notLocated.length > 0))
    return {
      green: green.id,
      reason: 'servicesNotLocated',
      facts: { depthMm, deepFromMm: course.settings.deepFromMm, notLocated },
    }
  for (const { operation } of work.steps) {
    const machines = machinesFor(course, operation)
    if (machines.length === 0) return { green: green.id, reason: 'noMachine', facts: { operation } }
    const trained = course.people.filter((person) => person.skills.includes(operation)).length
    const needed = Math.min(...machines.map((machine) => machine.crew))
    if (trained < needed) return { green: green.id, reason: 'noSkill', facts: { operation, trained, needed } }
  }
  return null
}
