import type { Candidate } from './candidate.ts'
import type { Field } from './field.ts'
import { inWork, type Broken } from './repair.ts'
import { savedTogether } from './save-together.ts'

/** Whom to give up for the others: nobody; where several are missed, each of them that the old plan, only shifted, does not finish. */
const givenUps = (
  missed: readonly number[],
  savedByShift: ReadonlySet<number>,
): readonly (readonly number[])[] => [
  [],
  ...(missed.length < 2 ? [] : missed.filter((green) => !savedByShift.has(green)).map((green) => [green])),
]

/**
 * A way to finish more of the greens in work in time than a judged way does, where nothing proves that way to be as good as can be: all that are not lost by themselves, or
 * all but one of them. Null where the way is without fault or none is found.
 */
export const moreSaved = (
  { faults, caught, lost }: Pick<Candidate, 'faults' | 'caught' | 'lost'>,
  broken: Broken,
  savedByShift: ReadonlySet<number>,
): Field | null => {
  if (caught.length === 0 || faults === 0) return null
  const alone = new Set(lost.flatMap(({ green, reason }) => (reason === 'notAllTogether' ? [] : [green])))
  const savable = inWork(broken).filter((green) => !alone.has(green))
  const missed = caught.filter((green) => !alone.has(green))
  for (const givenUp of givenUps(missed, savedByShift)) {
    const field = savedTogether(broken, new Set(savable.filter((green) => !givenUp.includes(green))))
    if (field !== null) return field
  }
  return null
}
