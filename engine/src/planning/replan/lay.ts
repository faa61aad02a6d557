import { dryFrom } from '../dried.ts'
import type { ScheduledTask } from '../problem.ts'
import { NEVER } from '../spans.ts'
import type { Loyalty } from './crew.ts'
import type { Field } from './field.ts'
import { bestOffer, place, take } from './place.ts'

/** A step that is to be laid. */
export type Job = {
  readonly green: number
  /** Index of the step. */
  readonly step: number
  /** Jobs are laid in the order of these minutes; those of one green never fall. */
  readonly key: number
  /** It starts no earlier. */
  readonly least: number
  /** Machine and people that the old plan has for it. */
  readonly machine: number | null
  readonly people: readonly number[]
  readonly loyalty: Loyalty
  /** Minute at which it starts though the hours forbid it; null where nothing is pinned. */
  readonly pinMin: number | null
}

/** Earliest start of a step by the chain of its green: the step before, the wait, the next day, the dry sand. */
export const chainFrom = (field: Field, green: number, index: number): number => {
  const { problem } = field
  const step = problem.greens[green]?.steps[index]
  if (step === undefined) return NEVER
  const end = field.endMin[green] ?? 0
  const begun = (field.done[green] ?? 0) > 0
  let from = begun ? end + step.lagMin : 0
  if (step.nextDay && begun)
    from = Math.max(from, problem.days.find((day) => day.startMin >= end)?.startMin ?? NEVER)
  const dressed = field.dressedMin[green] ?? -1
  return step.dryNeedMm > 0 && dressed >= 0
    ? Math.max(from, dryFrom(problem.driedMm, dressed, step.dryNeedMm))
    : from
}

/** Lays one job, before `end`; null where it finds no place: then its green is stuck. */
export const layJob = (field: Field, job: Job, notBefore: number, end: number): ScheduledTask | null => {
  const { green, step: index, least, machine, people, loyalty } = job
  const step = field.problem.greens[green]?.steps[index]
  if (step === undefined || field.stuck[green] === 1) return null
  const from = Math.max(field.nowMin, chainFrom(field, green, index), least, notBefore)
  if (from >= end) {
    field.stuck[green] = 1
    return null
  }
  const wanted = { green, step, machine, people, from, end, loyalty }
  const pinned = { ...wanted, anyHour: true }
  const offer = from === job.pinMin ? bestOffer(field, pinned) : null
  if (offer !== null && offer.crew.start === job.pinMin) return take(field, pinned, offer)
  const laid = place(field, wanted)
  if (laid === null) field.stuck[green] = 1
  return laid
}

/** Jobs in the order in which they are laid. */
export const inOrder = (jobs: readonly Job[]): readonly Job[] =>
  [...jobs].sort((a, b) => a.key - b.key || a.green - b.green || a.step - b.step)
