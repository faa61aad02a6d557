import type { Plan, Violation } from '@swardwright/engine'
import { counted, planNames, violationSentence } from '@swardwright/present'
import { Note } from '../../parts/Note.tsx'
import { useCourse } from '../../state/course.ts'
import { planErrorSentence } from '../../state/error-words.ts'
import { shownPlan, verdict } from '../../state/plan.ts'
import { WORDS } from './words.ts'

const SHOWN = 6

const Broken = (props: { readonly plan: Plan; readonly violations: readonly Violation[] }) => {
  const names = planNames(useCourse(), props.plan)
  const sentences = [...new Set(props.violations.map((one) => violationSentence(one, names)))]
  return (
    <Note kind="rust" word={WORDS.broken} live>
      <ul>
        {sentences.slice(0, SHOWN).map((sentence) => (
          <li key={sentence}>{sentence}.</li>
        ))}
        {sentences.length > SHOWN ? (
          <li>And {counted(sentences.length - SHOWN, 'other', 'others')}.</li>
        ) : null}
      </ul>
    </Note>
  )
}

/** What the checker says of the plan shown, by the course and the weather of now. */
export const CheckResult = () => {
  const answer = verdict.value.value
  const plan = shownPlan.value
  if (answer === null || plan === null) return <p class="small quiet">{WORDS.checking}</p>
  if (!answer.ok)
    return (
      <Note kind="rust" word={WORDS.broken} live>
        {planErrorSentence(answer.error)}.
      </Note>
    )
  return answer.value.length === 0 ? (
    <p class="small quiet">{WORDS.clean}</p>
  ) : (
    <Broken plan={plan} violations={answer.value} />
  )
}
