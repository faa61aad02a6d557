import { Note } from '../../parts/Note.tsx'
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
  const percent = Math.round((100 * now.schedules) / Math.max(1, now.of))
  return (
    <div class="tight">
      <p role="status">{WORDS.making} …</p>
      <div
        class="progress"
        role="progressbar"
        aria-label={WORDS.making}
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={percent}
      >
        <span style={{ width: `${percent}%` }} />
      </div>
    </div>
  )
}
