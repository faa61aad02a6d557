import type { ComponentChildren } from 'preact'
import { clock, dayHeading } from '@swardwright/present'
import { later } from '../../parts/later.tsx'
import { Page } from '../../parts/Page.tsx'
import { nowMs, today } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { moment } from '../../state/moment.ts'
import { planning, shownPlan } from '../../state/plan.ts'
import { PlanningNow } from '../plan/PlanningNow.tsx'
import { Ahead } from './Ahead.tsx'
import { EveBefore } from './EveBefore.tsx'
import { HeldClock } from './HeldClock.tsx'
import { WorkingDay } from './WorkingDay.tsx'
import { WORDS } from './words.ts'

const AfterWork = later(async () => (await import('./AfterWork.tsx')).AfterWork)

type Shown = { readonly title: string; readonly over: string; readonly content: ComponentChildren }

const shownNow = (timeZone: string): Shown => {
  const now = moment.value
  const over = `${dayHeading(today.value)}, ${clock(nowMs.value, timeZone)}`
  switch (now.kind) {
    case 'eve':
      return { title: dayHeading(now.date), over: `Now ${over}`, content: <EveBefore date={now.date} /> }
    case 'day':
      return {
        title: clock(nowMs.value, timeZone),
        over: dayHeading(now.date),
        content: <WorkingDay date={now.date} />,
      }
    case 'after':
      return { title: WORDS.after, over, content: <AfterWork /> }
    case 'ahead':
      // Until the first plan is made nobody knows which moment it is.
      return shownPlan.value === null && planning.value !== null
        ? { title: WORDS.now, over, content: <PlanningNow /> }
        : {
            title: WORDS.ahead,
            over,
            content: (
              <>
                <PlanningNow />
                <Ahead />
              </>
            ),
          }
  }
}

/** The page that opens first: the moment that applies now, readable in ten seconds. */
export const NowPage = () => {
  const { title, over, content } = shownNow(useCourse().timeZone)
  return (
    <Page title={title} over={over}>
      <div class="stack">
        <HeldClock />
        {content}
      </div>
    </Page>
  )
}
