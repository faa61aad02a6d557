import { dayWords, dateAt } from '@swardwright/present'
import { greenName, useCourse } from '../../state/course.ts'
import { nowMs } from '../../state/clock.ts'
import { shownPlan } from '../../state/plan.ts'
import { WORDS } from './words.ts'

const DAY_MS = 86_400_000

/** After the last day: each green with the day on which it was finished. */
export const AfterWork = () => {
  const { timeZone } = useCourse()
  const openings = shownPlan.value?.openings ?? []
  return (
    <div class="stack">
      <p>{WORDS.afterLead}</p>
      <ul class="rows">
        {openings.map(({ green, finished }) => (
          <li key={green}>
            <a href={`/green/${encodeURIComponent(green)}`}>
              <span class="name">{greenName(green)}</span>
              <span class="rest">
                {finished === null
                  ? ''
                  : `finished ${dayWords(dateAt(finished, timeZone))}, day ${Math.floor((nowMs.value - Date.parse(finished)) / DAY_MS)}`}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </div>
  )
}
