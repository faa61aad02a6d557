import { membersFragment, membersPage } from '@swardwright/present'
import { Page, Part } from '../../parts/Page.tsx'
import { Undo } from '../../parts/Undo.tsx'
import { decides } from '../../state/access.ts'
import { nowMs } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { draft, settledPlan } from '../../state/plan.ts'
import { weather } from '../../state/weather.ts'
import { Address } from './Address.tsx'
import { Notice } from './Notice.tsx'
import { Play } from './Play.tsx'
import { WORDS } from './words.ts'
import './members.css'

/** What members see, made here by the same function as on the server, so that it shows without a line too. */
const Shown = () => {
  const page = membersPage({
    course: useCourse(),
    facts: facts.value,
    weather: weather.value,
    nowMs: nowMs.value,
  })
  return (
    <Part title={WORDS.shows} class="tight">
      {draft.value === null || settledPlan.value !== null ? null : (
        <p class="small">
          {WORDS.draft} <a href="/plan">{WORDS.toPlan}</a>
        </p>
      )}
      <div
        class="members-shown"
        // The fragment’s words are escaped where it is made.
        dangerouslySetInnerHTML={{ __html: membersFragment(page) }}
      />
    </Part>
  )
}

/** The page for members: what it shows, its address, and what the manager adds to it. Whoever does not decide sees what it shows. */
export const MembersPage = () => (
  <Page title={WORDS.title} lead={WORDS.lead}>
    <div class="columns">
      {decides.value ? (
        <div class="wide">
          <Address />
          <Notice />
          <Play />
          <Undo />
        </div>
      ) : null}
      <Shown />
    </div>
  </Page>
)
