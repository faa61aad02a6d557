import { clock, dayHeading } from '@swardwright/present'
import { Page } from '../../parts/Page.tsx'
import { nowMs, today } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { moment } from '../../state/moment.ts'
import { PlanningNow } from '../plan/PlanningNow.tsx'
import { AfterWork } from './AfterWork.tsx'
import { Ahead } from './Ahead.tsx'
import { EveBefore } from './EveBefore.tsx'
import { WorkingDay } from './WorkingDay.tsx'
import { WORDS } from './words.ts'

/** The page that opens first: the moment that applies now, readable in ten seconds. */
export const NowPage = () => {
  const { timeZone } = useCourse()
  const now = moment.value
  const over = `${dayHeading(today.value)}, ${clock(nowMs.value, timeZone)}`
  switch (now.kind) {
    case 'eve':
      return (
        <Page title={dayHeading(now.date)} over={`Now ${over}`}>
          <EveBefore date={now.date} />
        </Page>
      )
    case 'day':
      return (
        <Page title={clock(nowMs.value, timeZone)} over={dayHeading(now.date)}>
          <WorkingDay date={now.date} />
        </Page>
      )
    case 'after':
      return (
        <Page title={WORDS.after} over={over}>
          <AfterWork />
        </Page>
      )
    case 'ahead':
      break
  }
  return (
    <Page title={WORDS.ahead} over={over}>
      <PlanningNow />
      <Ahead />
    </Page>
  )
}
