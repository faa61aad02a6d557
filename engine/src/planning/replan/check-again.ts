import { fail, ok, type Result } from '../../result.ts'
import { checkReplanned } from '../check/check.ts'
import { compileProblem } from '../check/compile.ts'
import type { LostGreen } from '../check/lost/lost.ts'
import type { ToldSpell } from '../check/rules/record.ts'
import type { Violation } from '../rules.ts'
import type { ReadSky } from '../sky.ts'
import { weatherSky } from '../weather-sky.ts'
import type { ReplanInput } from './make-replan.ts'
import { splitIndex } from './problem-at.ts'
import { situationIn, type Situation, type SituationError } from './situation.ts'

/** What was recorded, on the steps of the problem at now. */
const toldSpells = ({ moment, standing }: Situation): readonly ToldSpell[] =>
  moment.spells.flatMap((steps, green) =>
    steps.flatMap((spells, step) => {
      const rest = splitIndex(standing, green, step)
      const parts = standing.parts.filter((part) => part.task.green === green && part.step === step).length
      return spells.flatMap(({ startMin, endMin }, index): readonly ToldSpell[] => {
        // A spell broken off in the minute in which it began did nothing.
        if (startMin !== null && startMin === endMin) return []
        return [{ green, step: rest - parts + index, startMin, endMin }]
      })
    }),
  )

/**
 * Judges a plan that was made in the middle of the work against the facts that it was made from: paces, outages, what was recorded and what was lost by then are worked out
 * again from the facts, not taken from the plan.
 */
export const checkPlanAt = (
  input: ReplanInput,
  readSky: ReadSky = weatherSky,
): Result<
  { readonly violations: readonly Violation[]; readonly lost: readonly LostGreen[] },
  SituationError
> => {
  const read = situationIn({ ...input, tasks: input.plan.tasks }, readSky)
  if (!read.ok) return fail(read.error)
  return ok(checkReplanned(compileProblem(read.value.problem), input.plan, toldSpells(read.value)))
}
