import { fail, ok, type Result } from '../../result.ts'
import type { ReadSky } from '../sky.ts'
import { weatherSky } from '../weather-sky.ts'
import type { ReplanInput } from './make-replan.ts'
import { brokenOf, shiftOf } from './replan.ts'
import { situationOf, type SituationError } from './situation.ts'

/** The old plan only shifted to the right under the same facts: what a replanned day is measured against. */
export const shiftOnly = (
  input: ReplanInput,
  readSky: ReadSky = weatherSky,
): Result<
  { readonly finishedInTime: readonly string[]; readonly caught: readonly string[] },
  SituationError
> => {
  const read = situationOf({ ...input, tasks: input.plan.tasks }, readSky)
  if (!read.ok) return fail(read.error)
  const broken = brokenOf(read.value)
  const shift = shiftOf(read.value, broken)
  const id = (green: number): string => broken.problem.greens[green]?.id ?? ''
  return ok({
    finishedInTime: [...broken.opened].filter((green) => !shift.caught.includes(green)).map(id),
    caught: shift.caught.map(id),
  })
}
