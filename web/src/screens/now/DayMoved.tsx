import type { Replanned } from '@swardwright/engine'
import { caughtSentence, planErrorWords, replanSummary, situationErrorWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { Note } from '../../parts/Note.tsx'
import { useCourse } from '../../state/course.ts'
import { again, day, settleAgain } from '../../state/day.ts'
import { WORDS } from './words.ts'
import { decides } from '../../state/access.ts'

const MOST_SHOWN = 6

/** Why the day could not be worked out. */
const DayFault = () => {
  const answer = day.value.value
  if (day.fault.value !== null)
    return (
      <Note kind="rust" word="Fault:">
        {day.fault.value}
      </Note>
    )
  if (answer === null || answer.ok) return null
  const { error } = answer
  const isFact = error.type === 'badFact' || error.type === 'badNow' || error.type === 'threshold'
  return (
    <Note kind="rust" word={WORDS.notAgain}>
      {isFact ? situationErrorWords(error) : planErrorWords(error)}
    </Note>
  )
}

/** Greens that are caught whatever is done, once the plan goes by it. */
const Caught = ({ made }: { readonly made: Replanned }) => {
  const course = useCourse()
  return (
    <section class="moved stack" aria-label={WORDS.caughtAnyway}>
      <h2>{WORDS.caughtAnyway}</h2>
      <ul class="tight">
        {made.caught.map((one) => (
          <li key={one.green} class="rust name">
            {caughtSentence(one, course)}
          </li>
        ))}
      </ul>
    </section>
  )
}

/** What the facts of the day have moved, why and at what price, and the press that makes it the plan. Nothing is shown while the plan holds. */
export const DayMoved = () => {
  const course = useCourse()
  const [isAll, setAll] = useState(false)
  const made = again.value
  if (made === null) return <DayFault />
  if (made.changes.length === 0) return made.caught.length === 0 ? null : <Caught made={made} />
  const [cost = '', ...lines] = replanSummary(made, course).split('\n')
  const shown = isAll ? lines : lines.slice(0, MOST_SHOWN)
  return (
    <section class="moved stack" aria-label={WORDS.moved}>
      <h2>{WORDS.moved}</h2>
      <p>{cost}</p>
      {decides.value ? (
        <button type="button" class="primary whole" onClick={() => void settleAgain()}>
          {WORDS.settleAgain}
        </button>
      ) : null}
      <ul class="tight">
        {shown.map((line, index) => (
          <li key={line} class={index < made.caught.length ? 'rust name' : ''}>
            {line}
          </li>
        ))}
      </ul>
      {lines.length > shown.length ? (
        <button type="button" onClick={() => setAll(true)}>
          {lines.length - shown.length} {WORDS.moreLines}
        </button>
      ) : null}
    </section>
  )
}
