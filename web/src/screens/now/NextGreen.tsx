import { clock } from '@swardwright/present'
import { nowMs } from '../../state/clock.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { day } from '../../state/day.ts'
import { facts } from '../../state/journal.ts'
import { WORDS } from './words.ts'

const Verdict = (props: { readonly until: string | null; readonly timeZone: string }) => {
  const { until, timeZone } = props
  const isRaining = facts.value.rain.at(-1)?.ended === null
  const yes = !isRaining && until !== null && nowMs.value <= Date.parse(until)
  return (
    <p class={`strike ${yes ? 'leaf' : 'rust'}`}>
      {yes ? WORDS.yes : WORDS.no}{' '}
      <span class="until">
        {yes
          ? `${WORDS.until} ${clock(until, timeZone)}`
          : isRaining
            ? WORDS.itRains
            : until === null
              ? WORDS.notInTime
              : `${WORDS.since} ${clock(until, timeZone)}`}
      </span>
    </p>
  )
}

/** The next green by name, and until when it may be opened: its own last safe start by the facts of this minute. */
export const NextGreen = () => {
  const { timeZone } = useCourse()
  const answer = day.value.value
  if (answer === null) return <p role="status">{WORDS.working}</p>
  if (!answer.ok) return null
  const { next } = answer.value
  if (next === null) return <p class="upshot">{WORDS.none}</p>
  return (
    <div class="next">
      <p class="quiet">
        {WORDS.next}, planned {clock(next.opened, timeZone)}
      </p>
      <p class="strike">{greenName(next.green)}</p>
      <Verdict until={next.until} timeZone={timeZone} />
    </div>
  )
}
