import { dayWords, dateAt } from '@swardwright/present'
import { later } from '../../parts/later.tsx'
import { greenName, useCourse } from '../../state/course.ts'
import { nowMs } from '../../state/clock.ts'
import { shownPlan } from '../../state/plan.ts'
import { WORDS } from './words.ts'

const DAY_MS = 86_400_000

const ComingBack = later(async () => (await import('../photos/ComingBack.tsx')).ComingBack)

/** After the last day: each green with the day on which it was finished, its latest photos, and the way to take one. */
export const AfterWork = () => {
  const { timeZone } = useCourse()
  const openings = shownPlan.value?.openings ?? []
  return (
    <div class="stack">
      <p>{WORDS.afterLead}</p>
      <ul class="rows">
        {openings.map(({ green, finished }) => (
          <li key={green}>
            <div class="line">
              <a class="name" href={`/green/${encodeURIComponent(green)}`}>
                {greenName(green)}
              </a>
              <span class="rest">
                {finished === null
                  ? ''
                  : `finished ${dayWords(dateAt(finished, timeZone))}, day ${Math.floor((nowMs.value - Date.parse(finished)) / DAY_MS)}`}
              </span>
              <div class="needs">
                <ComingBack green={green} />
              </div>
            </div>
          </li>
        ))}
      </ul>
    </div>
  )
}
