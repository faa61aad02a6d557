import type { Violation } from '@swardwright/engine'
import { counted, dayAndClock } from '@swardwright/present'
import { Note } from '../../parts/Note.tsx'
import { greenNames, useCourse } from '../../state/course.ts'
import { planErrorSentence } from '../../state/error-words.ts'
import { verdict } from '../../state/plan.ts'
import { RULE_WORDS, WORDS } from './words.ts'

const SHOWN = 6

const Broken = ({ violations }: { readonly violations: readonly Violation[] }) => {
  const { timeZone } = useCourse()
  return (
    <Note kind="rust" word={WORDS.broken} live>
      <ul>
        {violations.slice(0, SHOWN).map((one, at) => (
          <li key={at}>
            {one.green === null ? '' : `${greenNames.value.get(one.green) ?? one.green}: `}
            {RULE_WORDS[one.rule]}
            {one.at === null ? '' : `, ${dayAndClock(one.at, timeZone)}`}
          </li>
        ))}
        {violations.length > SHOWN ? (
          <li>and {counted(violations.length - SHOWN, 'other', 'others')}</li>
        ) : null}
      </ul>
    </Note>
  )
}

/** What the checker says of the plan shown, by the course and the weather of now. */
export const CheckResult = () => {
  const answer = verdict.value.value
  if (answer === null) return <p class="small quiet">{WORDS.checking}</p>
  if (!answer.ok)
    return (
      <Note kind="rust" word={WORDS.broken} live>
        {planErrorSentence(answer.error)}.
      </Note>
    )
  return answer.value.length === 0 ? (
    <p class="small quiet">{WORDS.clean}</p>
  ) : (
    <Broken violations={answer.value} />
  )
}
