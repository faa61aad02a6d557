import type { Plan } from '@swardwright/engine'
import { counted, dayAndClock } from '@swardwright/present'
import { Fold } from '../../parts/Fold.tsx'
import { InTurn } from '../../parts/InTurn.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { useCourse } from '../../state/course.ts'
import { draft, planNow, settlePlan, shownPlan } from '../../state/plan.ts'
import { prescription } from '../../state/prescription.ts'
import { Board } from './Board.tsx'
import { Changes } from './Changes.tsx'
import { CheckResult } from './CheckResult.tsx'
import { HowPlanned } from './HowPlanned.tsx'
import { LeftOut } from './LeftOut.tsx'
import { OrderOfGreens } from './OrderOfGreens.tsx'
import { PlanningNow } from './PlanningNow.tsx'
import { Posts } from './Posts.tsx'
import { Rain } from './Rain.tsx'
import { Risk } from './Risk.tsx'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'
import { decides } from '../../state/access.ts'

/** The plan in one line: how many greens, and when the last is finished. */
const Upshot = ({ plan }: { readonly plan: Plan }) => {
  const { timeZone } = useCourse()
  const { finish } = plan.objective
  const left = plan.unplanned.length
  return (
    <p class="upshot">
      <b class={left === 0 ? 'leaf' : 'ochre'}>
        {left === 0
          ? `All ${counted(plan.openings.length, 'green', 'greens')}`
          : `${plan.openings.length} of ${counted(plan.openings.length + left, 'green', 'greens')}`}
      </b>
      {finish === null ? '' : `, finished ${dayAndClock(finish, timeZone)}`}
    </p>
  )
}

/** Settles the draft, or makes another. */
const Making = () => (
  <>
    {draft.value === null ? null : (
      <button type="button" class="primary" onClick={() => void settlePlan()}>
        {WORDS.settle}
      </button>
    )}
    <button type="button" onClick={() => void planNow()}>
      {WORDS.again}
    </button>
  </>
)

const Actions = () => (
  <div class="row no-print">
    {decides.value ? <Making /> : null}
    <a href="/sheets">{WORDS.sheets}</a>
    <a href="/weeks">{WORDS.toWeeks}</a>
  </div>
)

const Beside = ({ plan }: { readonly plan: Plan }) => (
  <div class="wide">
    <Part title={WORDS.rain}>
      <Deciding>
        <Rain />
      </Deciding>
    </Part>
    <Part title={WORDS.posts}>
      <Posts plan={plan} />
    </Part>
  </div>
)

const Below = ({ plan }: { readonly plan: Plan }) => (
  <>
    <Part title={WORDS.board}>
      <Board plan={plan} />
    </Part>
    <div class="no-print">
      <Fold id="chances" summary={WORDS.risk}>
        {() => <Risk />}
      </Fold>
      <Fold summary={WORDS.how}>
        {() => (
          <Deciding>
            <HowPlanned plan={plan} />
          </Deciding>
        )}
      </Fold>
    </div>
  </>
)

const Shown = ({ plan }: { readonly plan: Plan }) => (
  <div class="wide">
    <div class="stack">
      <Upshot plan={plan} />
      <CheckResult />
      <PlanningNow />
      <Actions />
    </div>
    <Changes />
    <LeftOut plan={plan} />
    <div class="columns">
      <Part title={WORDS.order}>
        <OrderOfGreens plan={plan} />
      </Part>
      <InTurn>{() => <Beside plan={plan} />}</InTurn>
    </div>
    <InTurn>{() => <Below plan={plan} />}</InTurn>
  </div>
)

const Nothing = () => (
  <div class="stack">
    {prescription.value === null ? (
      <p>
        {WORDS.nothing} <a href="/prescription">{WORDS.toPrescription}</a>
      </p>
    ) : decides.value ? (
      <button type="button" class="primary" onClick={() => void planNow()}>
        {WORDS.make}
      </button>
    ) : (
      <p>{WORDS.noneSettled}</p>
    )}
    <PlanningNow />
  </div>
)

/** The plan: order of greens and posts first, the board behind. */
export const PlanPage = () => {
  const plan = shownPlan.value
  return (
    <Page
      title={WORDS.title}
      over={plan === null ? undefined : draft.value === null ? WORDS.settled : WORDS.draft}
    >
      {plan === null ? <Nothing /> : <Shown plan={plan} />}
    </Page>
  )
}
