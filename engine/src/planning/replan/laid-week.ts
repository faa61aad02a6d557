import { copyField, type Field } from './field.ts'
import { layJob, type Job } from './lay.ts'

/** The field as it was before the first job of a green, and the place of that job. */
type Mark = { readonly at: number; readonly field: Field }

/** A week that is laid again and again, each time with one green more put off or held back: all that comes before that green stays as it is. */
export type LaidWeek = {
  readonly field: () => Field
  /** Lays the week again without a green. */
  readonly putOff: (green: number) => void
  /** Lays the week again with a green opened no earlier than a minute. */
  readonly hold: (green: number, untilMin: number) => void
  readonly heldUntil: (green: number) => number
  readonly isPutOff: (green: number) => boolean
}

/** Lays jobs (in their order) one after the other onto what stands; `opens` tells by green the step that opens it. */
export const layWeek = (
  stood: Field,
  jobs: readonly Job[],
  opens: readonly number[],
  holds: ReadonlyMap<number, number>,
): LaidWeek => {
  const held = new Map(holds)
  const putOff = new Set<number>()
  const marks = new Map<number, Mark>()
  const firstOf = new Map<number, number>()
  for (const [index, { green }] of jobs.entries()) if (!firstOf.has(green)) firstOf.set(green, index)
  let field = stood
  const layFrom = (from: number): void => {
    for (let index = from; index < jobs.length; index++) {
      const job = jobs[index]
      if (job === undefined || putOff.has(job.green)) continue
      if (firstOf.get(job.green) === index) marks.set(job.green, { at: index, field: copyField(field) })
      const isOpening = job.step === opens[job.green]
      layJob(field, job, isOpening ? (held.get(job.green) ?? 0) : 0, field.problem.horizonMin)
    }
  }
  const again = (green: number): void => {
    const mark = marks.get(green)
    field = copyField(mark?.field ?? stood)
    layFrom(mark?.at ?? 0)
  }
  again(-1)
  return {
    field: () => field,
    putOff: (green) => {
      putOff.add(green)
      again(green)
    },
    hold: (green, untilMin) => {
      held.set(green, untilMin)
      again(green)
    },
    heldUntil: (green) => held.get(green) ?? 0,
    isPutOff: (green) => putOff.has(green),
  }
}
