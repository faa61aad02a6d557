import { daySheets, CAUTIONS_DEFER, type DaySheet } from '@swardwright/present'
import type { Plan } from '@swardwright/engine'
import { useMemo } from 'preact/hooks'
import { useCourse } from '../../state/course.ts'
import { setBriefed } from '../../state/post.ts'
import { weather } from '../../state/weather.ts'
import { WORDS } from './words.ts'

/** The sheet of one person on one day: where settings, cautions and stops come from. Made anew only when the plan, the course or the weather changed, not at each press. */
export const useSheet = (plan: Plan, date: string, person: string): DaySheet | null => {
  const course = useCourse()
  const hours = weather.value
  return useMemo(
    () =>
      daySheets({ course, plan, weather: hours, date }).find(({ personId }) => personId === person) ?? null,
    [course, plan, hours, date, person],
  )
}

/** The cautions of the post, once, before the work. */
export const Briefing = ({ sheet }: { readonly sheet: DaySheet }) => (
  <section class="stack" aria-label={WORDS.briefing}>
    <h2>{WORDS.briefing}</h2>
    <ul class="stack">
      {sheet.cautions.map((caution) => (
        <li key={caution.id}>
          <b>{caution.title}.</b> {caution.sentence}
        </li>
      ))}
    </ul>
    <p>{CAUTIONS_DEFER}</p>
    <button type="button" class="primary whole" onClick={setBriefed}>
      {WORDS.read}
    </button>
  </section>
)
