import type { Weeks } from '@swardwright/engine'
import { dayWords, planNames, unplannedSentence, weekSentence, weeksErrorWords } from '@swardwright/present'
import { useEffect } from 'preact/hooks'
import { Fold } from '../../parts/Fold.tsx'
import { Note } from '../../parts/Note.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { Progress } from '../../parts/Progress.tsx'
import { useCourse } from '../../state/course.ts'
import { prescription } from '../../state/prescription.ts'
import {
  chosenWeeks,
  isOldReckoning,
  openWeeks,
  reckoned,
  reckonWeeksNow,
  stopWeeks,
  type Reckoned,
} from '../../state/weeks.ts'
import { AllWeeks } from './AllWeeks.tsx'
import { WeekCards } from './WeekCards.tsx'
import { WeekPanel } from './WeekPanel.tsx'
import { WhatIsAsked } from './WhatIsAsked.tsx'
import { WORDS } from './words.ts'
import './weeks.css'

const Running = ({ done, of }: NonNullable<Reckoned['running']>) => {
  const course = useCourse()
  const best = chosenWeeks.value.picks[0]?.week
  return (
    <div class="stack">
      <Progress word={WORDS.reckoning} done={done} of={of} told={WORDS.done(done, of)} />
      {best === undefined ? null : (
        <p>
          <b>{WORDS.soFar}</b> {dayWords(best.firstDay)}. {weekSentence(best, course)}
        </p>
      )}
      <div>
        <button type="button" onClick={stopWeeks}>
          {WORDS.stop}
        </button>
      </div>
    </div>
  )
}

/** What the years are, and which greens no week can do. */
const StandsOn = ({ weeks }: { readonly weeks: Weeks }) => {
  const course = useCourse()
  return (
    <>
      {weeks.source === 'record' ? (
        <p class="small quiet">{WORDS.yearsAt(weeks.years.length, weeks.source)}.</p>
      ) : (
        <Note kind="ochre" word={WORDS.drawn}>
          {WORDS.drawnLead} <a href="/weather/history">{WORDS.toHistory}</a>
        </Note>
      )}
      {weeks.excluded.length === 0 ? null : (
        <Note kind="ochre" word={WORDS.left}>
          {weeks.excluded
            .map((entry) => unplannedSentence(entry, planNames(course, { tasks: [] })))
            .join(' ')}
        </Note>
      )}
    </>
  )
}

/** What went wrong or is no longer so; nothing while all is well. */
const Faults = ({ told }: { readonly told: Reckoned }) => (
  <>
    {told.fault === null ? null : (
      <Note kind="rust" word={WORDS.fault} live>
        {told.fault}
      </Note>
    )}
    {told.outcome?.ok === false ? (
      <Note kind="rust" word={WORDS.none} live>
        {weeksErrorWords(told.outcome.error)}.
      </Note>
    ) : null}
    {told.running === null && told.outcome === null && told.fault === null ? (
      <Note kind="ochre" word={WORDS.stopped}>
        {WORDS.stoppedLead}
      </Note>
    ) : null}
    {isOldReckoning.value ? (
      <Note kind="ochre" word={WORDS.old} live>
        {WORDS.oldLead}
      </Note>
    ) : null}
    {told.running === null && (told.outcome?.ok !== true || isOldReckoning.value) ? (
      <div>
        <button type="button" onClick={() => void reckonWeeksNow()}>
          {WORDS.again}
        </button>
      </div>
    ) : null}
  </>
)

const Told = ({ told }: { readonly told: Reckoned }) => (
  <>
    <Faults told={told} />
    {told.running === null ? null : <Running {...told.running} />}
    {told.running !== null || told.weeks.length === 0 ? null : (
      <Part title={WORDS.put}>
        <div class="stack">
          <WeekCards picks={chosenWeeks.value.picks} />
          {told.outcome?.ok === true ? <StandsOn weeks={told.outcome.value} /> : null}
        </div>
      </Part>
    )}
    {told.weeks.length === 0 ? null : (
      <Part title={WORDS.all}>
        <AllWeeks told={told} />
      </Part>
    )}
  </>
)

/** For the fixture meeting: which week to take. */
export const WeeksPage = () => {
  const told = reckoned.value
  const isPrescribed = prescription.value !== null
  useEffect(() => {
    if (isPrescribed) void openWeeks()
  }, [isPrescribed])
  return (
    <Page title={WORDS.title} lead={WORDS.lead}>
      <div class="wide">
        {isPrescribed ? null : (
          <p>
            {WORDS.noPrescription} <a href="/prescription">{WORDS.toPrescription}</a>
          </p>
        )}
        {told === null ? null : <Told told={told} />}
        {isPrescribed ? <Fold summary={WORDS.how}>{() => <WhatIsAsked />}</Fold> : null}
      </div>
      <WeekPanel />
    </Page>
  )
}
