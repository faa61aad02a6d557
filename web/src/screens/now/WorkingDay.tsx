import { clock, dateAt, listed, STATE_WORDS, TASK_WORDS } from '@swardwright/present'
import type { Plan } from '@swardwright/engine'
import {
  greensOnDay,
  nextGreen,
  unfinishedGreens,
  firstToFinish,
  type GreenOnDay,
} from '../../compute/day-view.ts'
import { Part } from '../../parts/Page.tsx'
import { nowMs } from '../../state/clock.ts'
import { greenNames, useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { shownPlan, verdict } from '../../state/plan.ts'
import { rainOfPlan } from '../../state/rain-of-plan.ts'
import { record } from '../../state/record.ts'
import { Trouble } from './Trouble.tsx'
import { WORDS } from './words.ts'

const SHOWN_STEPS = 4

const nameOf = (green: string): string => greenNames.value.get(green) ?? green

/** When it rains next, as one line. */
const DryTill = () => {
  const { timeZone } = useCourse()
  const raining = facts.value.rain.at(-1)
  if (raining !== undefined && raining.ended === null) return <b class="rain">it rains</b>
  const next = rainOfPlan.value.find((spell) => Date.parse(spell.finish) > nowMs.value)
  if (next === undefined) return <>dry, no rain ahead</>
  return Date.parse(next.start) <= nowMs.value ? (
    <b class="rain">rain till {clock(next.finish, timeZone)}</b>
  ) : (
    <>
      dry till <b>{clock(next.start, timeZone)}</b>
    </>
  )
}

/**
 * The minute until which a green may be opened: for the last of the day its last safe start, for others the hour that the plan gives it,
 * since what comes after is laid on that.
 */
const safeUntil = (plan: Plan, next: GreenOnDay, isLast: boolean, date: string): string =>
  (isLast ? plan.days.find((day) => day.date === date)?.lastSafeStart : null) ?? next.opened

/** Whether anything speaks against opening a green now: it rains, or the plan as it stands breaks a rule on it. */
const isBarred = (green: string): boolean => {
  const answer = verdict.value.value
  const raining = facts.value.rain.at(-1)?.ended === null
  return raining || (answer !== null && answer.ok && answer.value.some((one) => one.green === green))
}

/** The next green by name, and whether it may still be opened. */
const Next = (props: { readonly next: GreenOnDay; readonly until: string }) => {
  const { timeZone } = useCourse()
  const yes = !isBarred(props.next.green) && nowMs.value <= Date.parse(props.until)
  return (
    <div class="next">
      <p class="quiet">
        {WORDS.next}, planned {clock(props.next.opened, timeZone)}
      </p>
      <p class="strike">{nameOf(props.next.green)}</p>
      <p class={`strike ${yes ? 'leaf' : 'rust'}`}>
        {yes ? WORDS.yes : WORDS.no}{' '}
        {yes ? (
          <span class="until">
            {WORDS.until} {clock(props.until, timeZone)}
          </span>
        ) : null}
      </p>
    </div>
  )
}

const stepsLeft = (green: GreenOnDay, timeZone: string): string => {
  const steps = green.todo
  const first = steps[0]
  if (first === undefined) return STATE_WORDS[green.state].needs
  const words = [...new Set(steps.map((task) => TASK_WORDS[task.operation].todo))]
  const begun = Date.parse(first.start) <= nowMs.value
  return `${begun ? '' : `${clock(first.start, timeZone)} `}${listed(words.slice(0, SHOWN_STEPS))}`
}

const Unfinished = ({ greens }: { readonly greens: readonly GreenOnDay[] }) => {
  const { timeZone } = useCourse()
  return (
    <ul class="rows">
      {greens.map((green) => (
        <li key={green.green}>
          <div class="line">
            <span class="state">{STATE_WORDS[green.state].word}</span>
            <span class="name">{nameOf(green.green)}</span>
            <span class="needs">{stepsLeft(green, timeZone)}</span>
          </div>
        </li>
      ))}
    </ul>
  )
}

/** Dresser loads of the plan that are not yet fetched. */
const LoadsLeft = ({ plan, date }: { readonly plan: Plan; readonly date: string }) => {
  const { timeZone } = useCourse()
  const left = plan.tasks.filter(
    (task) =>
      task.operation === 'load' &&
      dateAt(task.start, timeZone) === date &&
      Date.parse(task.start) > nowMs.value,
  ).length
  return (
    <p>
      <b>{left}</b> dresser loads still to fetch today
    </p>
  )
}

/** The working day until the rain: next green, yes or no until when, what lies open, and the two buttons. */
export const WorkingDay = ({ date }: { readonly date: string }) => {
  const { timeZone } = useCourse()
  const plan = shownPlan.value
  if (plan === null) return null
  const finished = new Set(facts.value.greensFinished.map((one) => one.value.green))
  const greens = greensOnDay(plan, date, nowMs.value, { timeZone, recorded: { finished } })
  const next = nextGreen(greens)
  const open = unfinishedGreens(greens)
  const first = firstToFinish(open)
  return (
    <div class="stack field-page">
      <p class="dry-till">
        <DryTill />
      </p>
      {next === null ? (
        <p class="upshot">{WORDS.none}</p>
      ) : (
        <Next next={next} until={safeUntil(plan, next, greens.at(-1) === next, date)} />
      )}
      <Part title={WORDS.unfinished}>
        {open.length === 0 ? <p>{WORDS.allFinished}</p> : <Unfinished greens={open} />}
      </Part>
      <LoadsLeft plan={plan} date={date} />
      <div class="thumb">
        {first === null ? null : (
          <button
            type="button"
            class="primary"
            onClick={() => void record('greenFinished', { green: first.green })}
          >
            {nameOf(first.green)} {WORDS.finished}
          </button>
        )}
        <Trouble />
      </div>
      <a href="/plan">{WORDS.toPlan}</a>
    </div>
  )
}
