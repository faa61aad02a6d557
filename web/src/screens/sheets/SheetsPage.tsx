import type { Plan } from '@swardwright/engine'
import { dateAt, daySheetFragment, daySheets, dayWords } from '@swardwright/present'
import { useState } from 'preact/hooks'
import { workDays } from '../../compute/moment.ts'
import { Select } from '../../parts/fields.tsx'
import { Note } from '../../parts/Note.tsx'
import { Page } from '../../parts/Page.tsx'
import { nowMs } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { draft, shownPlan } from '../../state/plan.ts'
import { weather } from '../../state/weather.ts'
import { PlanningNow } from '../plan/PlanningNow.tsx'
import { WORDS } from './words.ts'

const EVERYBODY = 'everybody'

/** The day that sheets are wanted for: the first whose work is not over. */
const firstDay = (plan: Plan, atMs: number, timeZone: string): string => {
  const days = workDays(plan, timeZone)
  return (days.find((day) => day.finishMs >= atMs) ?? days.at(-1))?.date ?? dateAt(atMs, timeZone)
}

const Sheets = ({ plan }: { readonly plan: Plan }) => {
  const course = useCourse()
  const [chosen, setDate] = useState<string | null>(null)
  const [who, setWho] = useState(EVERYBODY)
  const date = chosen ?? firstDay(plan, nowMs.value, course.timeZone)
  const sheets = daySheets({ course, plan, weather: weather.value, date })
  const shown = sheets.filter((sheet) => who === EVERYBODY || sheet.personId === who)
  return (
    <div class="stack">
      {draft.value === null ? null : (
        <div class="no-print">
          <Note kind="ochre" word="Care:">
            {WORDS.draft} <a href="/plan">{WORDS.toPlan}</a>
          </Note>
        </div>
      )}
      <div class="row no-print sheet-choices">
        <Select
          label={WORDS.day}
          value={date}
          options={workDays(plan, course.timeZone).map((day) => ({
            value: day.date,
            label: dayWords(day.date),
          }))}
          onValue={setDate}
        />
        <Select
          label={WORDS.who}
          value={who}
          options={[
            { value: EVERYBODY, label: WORDS.everybody },
            ...sheets.map((sheet) => ({ value: sheet.personId, label: sheet.person })),
          ]}
          onValue={setWho}
        />
        <button type="button" class="primary" onClick={() => print()}>
          {WORDS.print}
        </button>
      </div>
      <div class="sheets">
        {shown.map((sheet) => (
          <div
            key={sheet.personId}
            class="sheet"
            tabIndex={0}
            role="region"
            aria-label={sheet.person}
            // The fragment’s words are escaped where it is made.
            dangerouslySetInnerHTML={{ __html: daySheetFragment(sheet) }}
          />
        ))}
      </div>
    </div>
  )
}

/** Printable sheets of a day, one a post, with the cautions for that post. */
export const SheetsPage = () => {
  const plan = shownPlan.value
  return (
    <Page title={WORDS.title} lead={WORDS.lead}>
      {plan === null ? (
        <div class="stack">
          <p>
            {WORDS.none} <a href="/plan">{WORDS.toPlan}</a>
          </p>
          <PlanningNow />
        </div>
      ) : (
        <Sheets plan={plan} />
      )}
    </Page>
  )
}
