import { dayHeading, dayWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { workDays } from '../../compute/moment.ts'
import { Page } from '../../parts/Page.tsx'
import { Select } from '../../parts/fields.tsx'
import { mayRecord } from '../../state/access.ts'
import { nowMs } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { shownPlan } from '../../state/plan.ts'
import { Sheet } from './Sheet.tsx'
import './paper.css'
import { WORDS } from './words.ts'

/** A paper sheet typed in later: the greens of one day, when each was finished, a note where there is one, and steps that were broken off. */
export const PaperPage = () => {
  const { timeZone } = useCourse()
  const plan = shownPlan.value
  const days = plan === null ? [] : workDays(plan, timeZone).filter(({ startMs }) => startMs <= nowMs.value)
  const [chosen, setDate] = useState<string | null>(null)
  const date = chosen ?? days.at(-1)?.date
  return (
    <Page title={WORDS.title} over={date === undefined ? undefined : dayHeading(date)} lead={WORDS.lead}>
      {!mayRecord.value ? null : plan === null || date === undefined ? (
        <p>{WORDS.nothing}</p>
      ) : (
        <div class="stack">
          {days.length < 2 ? null : (
            <Select
              label={WORDS.day}
              value={date}
              options={days.map((one) => ({ value: one.date, label: dayWords(one.date) }))}
              onValue={setDate}
            />
          )}
          {/* The day stays while it is typed in, also when another one begins meanwhile. */}
          <Sheet key={date} plan={plan} date={date} onTyping={() => setDate(date)} />
        </div>
      )}
    </Page>
  )
}
