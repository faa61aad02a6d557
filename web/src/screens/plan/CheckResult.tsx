import type { Plan, Violation } from '@swardwright/engine'
import { counted, planNames, violationSentence } from '@swardwright/present'
import { Note } from '../../parts/Note.tsx'
import { useCourse } from '../../state/course.ts'
import { planErrorSentence } from '../../state/error-words.ts'
import { shownPlan, verdict } from '../../state/plan.ts'
import { WORDS } from './words.ts'

const SHOWN = 6

const Broken = (props: {
  readonly plan: Plan
  readonly violations: readonly Violation[]
  readonly kind: 'rust' | 'ochre'
  readonly word: string
}) => {
  const names = planNames(useCourse(), props.plan)
  const sentences = [...new Set(props.violations.map((one) => violationSentence(one, names)))]
  if (sentences.length === 0) return null
  return (
    <Note kind={props.kind} word={props.word} live>
      <ul>
        {sentences.slice(0, SHOWN).map((sentence) => (
          <li key={sentence}>{sentence}</li>
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
  if (answer.value.length === 0) return <p class="small quiet">{WORDS.clean}</p>
  const faults = answer.value.filter(({ asPinned }) => asPinned !== true)
  const pinned = answer.value.filter(({ asPinned }) => asPinned === true)
  return (
    <div class="stack">
      <Broken plan={plan} violations={faults} kind="rust" word={WORDS.broken} />
      <Broken plan={plan} violations={pinned} kind="ochre" word={WORDS.asPinned} />
      {faults.length === 0 ? <p class="small quiet">{WORDS.asPinnedOnly}</p> : null}
    </div>
  )
}
