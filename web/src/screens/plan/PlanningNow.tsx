import { Note } from '../../parts/Note.tsx'
import { Progress } from '../../parts/Progress.tsx'
import { planErrorSentence } from '../../state/error-words.ts'
import { planFailure, planFault, planning } from '../../state/plan.ts'
import { WORDS } from './words.ts'

/** How far the planning is, while it goes on. */
export const PlanningNow = () => {
  const now = planning.value
  if (now === null)
    return (
      <>
        {planFault.value === null ? null : (
          <Note kind="rust" word={WORDS.fault} live>
            {planFault.value}
          </Note>
        )}
        {planFailure.value === null ? null : (
          <Note kind="rust" word={WORDS.noPlan} live>
            {planErrorSentence(planFailure.value)}.
          </Note>
        )}
      </>
    )
  return <Progress word={WORDS.making} done={now.schedules} of={now.of} />
}
