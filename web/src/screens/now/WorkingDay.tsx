import { MINUTE_MS, type Plan } from '@swardwright/engine'
import {
  clock,
  clockFrom,
  counted,
  coveringTodo,
  dateAt,
  decimal,
  durationWords,
  listed,
  STATE_WORDS,
  TASK_WORDS,
  taskTodo,
} from '@swardwright/present'
import { firstToFinish, greensOnDay, unfinishedGreens, type GreenOnDay } from '../../compute/day-view.ts'
import { Part } from '../../parts/Page.tsx'
import { Undo } from '../../parts/Undo.tsx'
import { nowMs } from '../../state/clock.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { again, finishedToday, useDay } from '../../state/day.ts'
import { facts } from '../../state/journal.ts'
import { shownPlan } from '../../state/plan.ts'
import { rainOfPlan } from '../../state/rain-of-plan.ts'
import { stepTold } from '../../state/step-told.ts'
import { touch } from '../../state/undo.ts'
import { BailOutDialog } from './BailOutDialog.tsx'
import { DayMoved } from './DayMoved.tsx'
import { NextGreen } from './NextGreen.tsx'
import { MachineOut, MoreTrouble, PersonOut, RainNow } from './OneTouch.tsx'
import { Problems } from './Problems.tsx'
import { WORDS } from './words.ts'
import { mayRecord } from '../../state/access.ts'

/** When it rains next, as one line. */
const DryTill = () => {
  const { timeZone } = useCourse()
  const raining = facts.value.rain.at(-1)
  if (raining !== undefined && raining.ended === null) return <b class="rain">{WORDS.itRains}</b>
  const next = rainOfPlan.value.find((spell) => Date.parse(spell.finish) > nowMs.value)
  if (next === undefined) return <>dry, no rain ahead</>
  if (Date.parse(next.start) <= nowMs.value)
    return <b class="rain">rain till {clock(next.finish, timeZone)}</b>
  const isToday = dateAt(next.start, timeZone) === dateAt(nowMs.value, timeZone)
  return isToday ? (
    <>
      dry till <b>{clock(next.start, timeZone)}</b>, then {decimal(next.mmPerH, 1)} mm/h
    </>
  ) : (
    <>dry today</>
  )
}

/** What a green still needs after its next step, all of it, in the order of the work. */
const afterwards = ({ todo }: GreenOnDay): string =>
  listed([...new Set(todo.slice(1).map(({ operation, pass }) => coveringTodo(operation, pass)))])

const workLeft = ({ todo }: GreenOnDay): string => {
  const leftMs = todo.reduce(
    (sum, task) => sum + Date.parse(task.finish) - Math.max(Date.parse(task.start), nowMs.value),
    0,
  )
  return `${durationWords(Math.round(leftMs / MINUTE_MS))} of work`
}

const nextStep = (green: GreenOnDay, timeZone: string): string => {
  const first = green.todo[0]
  if (first === undefined) return WORDS.sayFinished
  return Date.parse(first.start) <= nowMs.value
    ? `now: ${taskTodo(first)}`
    : `${clock(first.start, timeZone)} ${taskTodo(first)}`
}

/** Steps of a green that somebody broke off and nobody has taken up again. */
const brokenOff = (green: GreenOnDay): string => {
  const steps = green.todo.filter((task) => stepTold.value(task).stopped).map((task) => taskTodo(task))
  return steps.length === 0 ? '' : `${WORDS.isBrokenOff}: ${listed([...new Set(steps)])}`
}

const Unfinished = (props: { readonly greens: readonly GreenOnDay[]; readonly date: string }) => {
  const { greens, date } = props
  const { timeZone } = useCourse()
  return (
    <ul class="rows">
      {greens.map((green) => (
        <li key={green.green}>
          <div class="line">
            <span class={`state ${green.state}`}>{STATE_WORDS[green.state].word}</span>
            <span class="name">{greenName(green.green)}</span>
            {green.finished === null ? null : (
              <span class="rest">
                {WORDS.finishedBy} {clockFrom(date, green.finished, timeZone)}
              </span>
            )}
            <span class="needs">
              {brokenOff(green) === '' ? null : (
                <>
                  <b class="rust">{brokenOff(green)}</b>;{' '}
                </>
              )}
              <b>{nextStep(green, timeZone)}</b>
              {afterwards(green) === '' ? null : `, then ${afterwards(green)}`}
              {green.todo.length === 0 ? '' : `; ${workLeft(green)}`}
            </span>
          </div>
        </li>
      ))}
    </ul>
  )
}

const lastFinish = (plan: Plan, date: string, timeZone: string): number | null => {
  const finishes = plan.openings.flatMap(({ opened, finished }) =>
    finished !== null && dateAt(opened, timeZone) === date ? [Date.parse(finished)] : [],
  )
  return finishes.length === 0 ? null : Math.max(...finishes)
}

/** How the day goes against the plan: greens finished, the last finish, and what has been slower or quicker than planned. */
const Pace = (props: {
  readonly plan: Plan
  readonly date: string
  readonly greens: readonly GreenOnDay[]
}) => {
  const { timeZone, machines } = useCourse()
  const { plan, date, greens } = props
  const made = again.value
  const done = greens.filter(({ state }) => state === 'finished').length
  const due = plan.openings.filter(
    ({ opened, finished }) =>
      dateAt(opened, timeZone) === date && finished !== null && Date.parse(finished) <= nowMs.value,
  ).length
  const [was, is] = [
    lastFinish(plan, date, timeZone),
    made === null ? null : lastFinish(made.plan, date, timeZone),
  ]
  const byMin = was === null || is === null ? 0 : Math.round((is - was) / MINUTE_MS)
  return (
    <div class="tight">
      <p>
        <b>{done}</b> of {counted(greens.length, 'green', 'greens')} finished, {due} by the plan.{' '}
        {is === null
          ? ''
          : `Last finish ${clockFrom(date, is, timeZone)}${byMin === 0 ? ', as planned' : `, ${durationWords(Math.abs(byMin))} ${byMin > 0 ? 'later' : 'sooner'}`}.`}
      </p>
      {made === null || made.paces.length === 0 ? null : (
        <ul>
          {made.paces.map((pace) => (
            <li key={`${pace.machine} ${pace.operation}`}>
              {TASK_WORDS[pace.operation].work}, {machines.find(({ id }) => id === pace.machine)?.name}:{' '}
              {decimal(pace.ratio, 2)} times the planned minutes
            </li>
          ))}
        </ul>
      )}
    </div>
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

/** The working day until the rain: next green, yes or no until when, what lies open, what has moved, and the buttons under the thumb. */
export const WorkingDay = ({ date }: { readonly date: string }) => {
  useDay()
  const { timeZone } = useCourse()
  const plan = shownPlan.value
  if (plan === null) return null
  const finished = new Set(finishedToday.value.keys())
  const shown = again.value?.plan ?? plan
  const greens = greensOnDay(shown, date, nowMs.value, { timeZone, recorded: { finished } })
  const open = unfinishedGreens(greens)
  const first = firstToFinish(open)
  return (
    <div class="stack field-page">
      <p class="dry-till">
        <DryTill />
      </p>
      <div class="columns">
        <div class="stack">
          <NextGreen />
          {mayRecord.value ? (
            <div class="three">
              <RainNow />
              <MachineOut />
              <PersonOut />
            </div>
          ) : null}
          <DayMoved />
          <Part title={WORDS.unfinished}>
            {open.length === 0 ? <p>{WORDS.allFinished}</p> : <Unfinished greens={open} date={date} />}
          </Part>
        </div>
        <div class="stack">
          <Problems />
          <Part title={WORDS.pace} class="tight">
            <Pace plan={plan} date={date} greens={greens} />
            <LoadsLeft plan={shown} date={date} />
          </Part>
          <div class="row">
            {mayRecord.value ? (
              <>
                <MoreTrouble />
                <a href="/paper">{WORDS.paper}</a>
                <a href="/crew">{WORDS.crewPage}</a>
              </>
            ) : null}
            <a href="/plan">{WORDS.toPlan}</a>
          </div>
        </div>
      </div>
      <div class="thumb-stack">
        <Undo />
        <div class="thumb">
          {first === null || !mayRecord.value ? (
            <span />
          ) : (
            <button
              type="button"
              class="primary"
              onClick={() =>
                void touch(
                  'greenFinished',
                  { green: first.green },
                  `${greenName(first.green)} ${WORDS.finished}`,
                )
              }
            >
              {greenName(first.green)} {WORDS.finished}
            </button>
          )}
          <BailOutDialog />
        </div>
      </div>
    </div>
  )
}
