import { useEffect } from 'preact/hooks'
import { clockFrom, dateAt } from '@swardwright/present'
import type { GreenChange } from '../../compute/plan-changes.ts'
import { today } from '../../state/clock.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { markPlanSeen, planNews } from '../../state/plan-seen.ts'
import { facts } from '../../state/journal.ts'
import { WORDS } from './words.ts'

const MOST_SHOWN = 4

const changeWords = ({ green, was, now }: GreenChange, timeZone: string): string => {
  const name = greenName(green)
  if (now === null) return `${name}: ${WORDS.leftOut}`
  const at = clockFrom(today.value, now, timeZone)
  return `${name}: ${at}${was === null ? '' : ` instead of ${clockFrom(dateAt(now, timeZone), was, timeZone)}`}`
}

/** What the manager has changed since this phone was looked at; a press puts it away. */
export const News = () => {
  const { timeZone } = useCourse()
  const news = planNews.value
  useEffect(() => {
    // The first plan on this phone is no news.
    if (planNews.value === null) markPlanSeen()
  }, [facts.value.plan?.entry])
  if (news === null) return null
  return (
    <section class="moved tight" aria-label={WORDS.changed}>
      <h2>{WORDS.changed}</h2>
      <ul>
        {news.changes.slice(0, MOST_SHOWN).map((change) => (
          <li key={change.green}>{changeWords(change, timeZone)}</li>
        ))}
        {news.changes.length > MOST_SHOWN ? <li>and {news.changes.length - MOST_SHOWN} more</li> : null}
      </ul>
      <button type="button" class="whole" onClick={markPlanSeen}>
        {WORDS.seen}
      </button>
    </section>
  )
}
