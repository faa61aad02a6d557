import type { Plan } from '@swardwright/engine'
import { clock, dateAt, dayHeading } from '@swardwright/present'
import { staysLeft, staysOf } from '../../compute/crew-view.ts'
import { workDays } from '../../compute/moment.ts'
import { later } from '../../parts/later.tsx'
import { Page } from '../../parts/Page.tsx'
import { PickOne } from '../../parts/PickOne.tsx'
import { Undo } from '../../parts/Undo.tsx'
import { SyncLine } from '../../shell/SyncLine.tsx'
import { nowMs, today } from '../../state/clock.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { day, finishedToday, useDay } from '../../state/day.ts'
import { facts } from '../../state/journal.ts'
import { choosePost, forgetBriefing, isBriefed, postOf } from '../../state/post.ts'
import { shownPlan } from '../../state/plan.ts'
import { stepTold } from '../../state/step-told.ts'
import { lastTouch } from '../../state/undo.ts'
import { Briefing, useSheet } from './Briefing.tsx'
import { News } from './News.tsx'
import { BigTap, Stay, stayWords } from './Stay.tsx'
import { TellProblem } from './TellProblem.tsx'
import { WORDS } from './words.ts'
import { mayRecord } from '../../state/access.ts'

/** Until when a green may still be opened today. */
const LastSafe = () => {
  const { timeZone } = useCourse()
  const answer = day.value.value
  if (answer === null || !answer.ok) return null
  const { next } = answer.value
  if (next === null) return <p>{WORDS.noLastSafe}</p>
  return (
    <p>
      {WORDS.nextOpen}: <b>{greenName(next.green)}</b>,{' '}
      {next.until === null ? (
        <b class="rust">{WORDS.noMore}</b>
      ) : (
        <>
          {WORDS.lastSafe} <b>{clock(next.until, timeZone)}</b>
        </>
      )}
    </p>
  )
}

const PhotoOfProblem = later(async () => (await import('../photos/PhotoOfProblem.tsx')).PhotoOfProblem)

const Work = (props: { readonly plan: Plan; readonly date: string; readonly person: string }) => {
  const { plan, date, person } = props
  const { timeZone } = useCourse()
  const stays = staysOf(plan, date, person, timeZone)
  const left = staysLeft(stays, {
    atMs: nowMs.value,
    finished: new Set(finishedToday.value.keys()),
    told: stepTold.value,
  })
  const [first, ...afterwards] = left
  const told = facts.value.problems.find(({ entry }) => lastTouch.value?.entries.includes(entry))
  const machines = [...new Set(stays.flatMap((stay) => stay.tasks.flatMap(({ machine }) => machine ?? [])))]
  return (
    <div class="stack">
      <News />
      {first === undefined ? (
        <p class="upshot">{stays.length === 0 ? WORDS.off : WORDS.all}</p>
      ) : (
        <Stay plan={plan} stay={first} />
      )}
      <LastSafe />
      {afterwards.length === 0 ? null : (
        <section class="tight" aria-label={WORDS.next}>
          <h2>{WORDS.next}</h2>
          <ol class="rows">
            {afterwards.map((stay) => (
              <li key={stay.tasks[0]?.id}>
                <div class="line">
                  <b>{clock(stay.tasks[0]?.start ?? 0, timeZone)}</b>
                  <span class="name">{greenName(stay.green)}</span>
                  <span class="needs">{stayWords(stay)}</span>
                </div>
              </li>
            ))}
          </ol>
        </section>
      )}
      <div class="row">
        <button type="button" onClick={forgetBriefing}>
          {WORDS.again}
        </button>
        <button type="button" onClick={() => choosePost(null)}>
          {WORDS.notMe}
        </button>
      </div>
      <SyncLine />
      <div class="thumb-stack">
        <Undo />
        {told === undefined ? null : (
          <PhotoOfProblem key={told.entry} problem={told} green={first?.green ?? null} />
        )}
        <div class="thumb">
          {first === undefined ? <span /> : <BigTap plan={plan} stay={first} />}
          <TellProblem person={person} green={first?.green ?? null} machines={machines} />
        </div>
      </div>
    </div>
  )
}

const AtPost = (props: { readonly plan: Plan; readonly date: string; readonly person: string }) => {
  const sheet = useSheet(props.plan, props.date, props.person)
  useDay()
  return sheet !== null && !isBriefed.value ? <Briefing sheet={sheet} /> : <Work {...props} />
}

/** The crew’s page: my post, the next green, how the machine is set, one big tap when it is done, and a button for trouble. */
export const CrewPage = () => {
  const { people, timeZone } = useCourse()
  const plan = shownPlan.value
  const person = people.find(({ id }) => id === postOf.value)
  if (!mayRecord.value) return <Page title={WORDS.crewOnly}>{null}</Page>
  if (person === undefined)
    return (
      <Page title={WORDS.who} lead={WORDS.whoLead}>
        <div class="field-page">
          <PickOne options={people} onPick={choosePost} />
        </div>
      </Page>
    )
  const next =
    plan === null ? undefined : workDays(plan, timeZone).find(({ finishMs }) => finishMs >= nowMs.value)
  const date = next?.date ?? dateAt(nowMs.value, timeZone)
  const over = `${dayHeading(date)}${date === today.value ? `, ${clock(nowMs.value, timeZone)}` : ''}`
  return (
    <Page title={person.name} over={over}>
      <div class="field-page crew">
        {plan === null ? (
          <p>{WORDS.noPlan}</p>
        ) : next === undefined ? (
          <p>{WORDS.noDay}</p>
        ) : (
          <AtPost plan={plan} date={date} person={person.id} />
        )}
      </div>
    </Page>
  )
}
