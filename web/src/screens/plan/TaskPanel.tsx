import {
  addDays,
  instantOf,
  isoWithOffset,
  localOf,
  MINUTE_MS,
  type Plan,
  type PlanTask,
} from '@swardwright/engine'
import {
  clock,
  clockOfMinute,
  clockRange,
  dateAt,
  dayWords,
  listed,
  pinRiskSentences,
  planNames,
  taskTodo,
  whySentences,
} from '@swardwright/present'
import { useEffect, useState } from 'preact/hooks'
import { Note } from '../../parts/Note.tsx'
import { Select, TextField } from '../../parts/fields.tsx'
import { greenName, useCourse } from '../../state/course.ts'
import { askWhy, pinFault, pinGreen, pinning, pinOf, unpinGreen, why } from '../../state/pins.ts'
import { planChoices } from '../../state/plan.ts'
import { WORDS } from './words.ts'
import { decides } from '../../state/access.ts'

/** Minutes by which the buttons move an opening. */
const STEPS_MIN = [-30, -15, 15, 30] as const

const stepWords = (minutes: number): string =>
  minutes < 0 ? `${-minutes} min earlier` : `${minutes} min later`

/** Opens the green at another minute of another day; what was planned when nothing is said. */
const Elsewhere = (props: { readonly plan: Plan; readonly green: string; readonly opened: string }) => {
  const { timeZone } = useCourse()
  const local = localOf(Date.parse(props.opened), timeZone)
  const [date, setDate] = useState(local.date)
  const [time, setTime] = useState(clockOfMinute(local.minuteOfDay))
  useEffect(() => {
    setDate(local.date)
    setTime(clockOfMinute(local.minuteOfDay))
  }, [props.opened])
  const days = Array.from({ length: planChoices.value.days }, (_, index) => addDays(props.plan.start, index))
  const at = (): string => {
    const [hours = 0, minutes = 0] = time.split(':').map(Number)
    return isoWithOffset(instantOf(date, hours * 60 + minutes, timeZone), timeZone)
  }
  return (
    <div class="stack fold-body">
      <div class="fields">
        <Select
          label={WORDS.pinDay}
          value={date}
          options={[...new Set([local.date, ...days])]
            .sort()
            .map((value) => ({ value, label: dayWords(value) }))}
          onValue={setDate}
        />
        <TextField label={WORDS.pinTime} type="time" value={time} onValue={setTime} />
      </div>
      <div class="row">
        <button type="button" disabled={pinning.value} onClick={() => void pinGreen(props.green, date, at())}>
          {WORDS.pinThere}
        </button>
        <button type="button" disabled={pinning.value} onClick={() => void pinGreen(props.green, date, null)}>
          {WORDS.pinAnyTime}
        </button>
      </div>
    </div>
  )
}

/** What a pin on a green risks, in the words of the checker. */
const PinRisk = (props: { readonly plan: Plan; readonly green: string }) => {
  const sentences = pinRiskSentences(props.plan, planNames(useCourse(), props.plan), props.green)
  return sentences.length === 0 ? null : (
    <Note kind="ochre" word={WORDS.pinRisk} live>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </Note>
  )
}

const Moving = (props: { readonly plan: Plan; readonly green: string }) => {
  const { timeZone } = useCourse()
  const { plan, green } = props
  const opened = plan.openings.find((opening) => opening.green === green)?.opened
  if (opened === undefined) return null
  const pin = pinOf(plan, green)
  const shifted = (minutes: number): string =>
    isoWithOffset(Date.parse(opened) + minutes * MINUTE_MS, timeZone)
  return (
    <div class="tight">
      <div class="row">
        {STEPS_MIN.map((minutes) => (
          <button
            key={minutes}
            type="button"
            class="thin"
            disabled={pinning.value}
            onClick={() => void pinGreen(green, dateAt(shifted(minutes), timeZone), shifted(minutes))}
          >
            {stepWords(minutes)}
          </button>
        ))}
      </div>
      {pin === null ? (
        <button
          type="button"
          class="thin"
          disabled={pinning.value}
          onClick={() => void pinGreen(green, dateAt(opened, timeZone), opened)}
        >
          {WORDS.pinHere}
        </button>
      ) : (
        <div class="row">
          <b>
            {pin.opens === null
              ? `${WORDS.pinnedTo} ${dayWords(pin.date)}`
              : `${WORDS.pinnedTo} ${dayWords(pin.date)}, ${clock(pin.opens, timeZone)}`}
          </b>
          <button type="button" class="thin" onClick={() => unpinGreen(green)}>
            {WORDS.unpin}
          </button>
        </div>
      )}
      <details>
        <summary>{WORDS.elsewhere}</summary>
        <Elsewhere plan={plan} green={green} opened={opened} />
      </details>
    </div>
  )
}

/** What stands behind one task of the board: why it is there, and its green's opening to be moved or pinned. By touch, by keyboard, with one thumb. */
export const TaskPanel = (props: {
  readonly plan: Plan
  readonly task: PlanTask
  readonly onClose: () => void
}) => {
  const course = useCourse()
  const { plan, task } = props
  useEffect(() => askWhy(plan, task.id), [plan, task.id])
  const told = why.value.value
  const names = planNames(course, plan)
  const sentences = told === null || told.task !== task.id ? [] : whySentences(told, names)
  const green = task.green === null ? '' : ` ${greenName(task.green)}`
  const todo = taskTodo(task)
  const { machine } = task
  const by = [
    ...task.people.map((id) => names.people.get(id) ?? id),
    ...(machine === null ? [] : [names.machines.get(machine) ?? machine]),
  ]
  return (
    <section class="note stack no-print" aria-label={WORDS.whyHere}>
      <div class="row apart">
        <h3>
          {todo.charAt(0).toLocaleUpperCase('en-GB') + todo.slice(1)}
          {green}
        </h3>
        <button type="button" class="thin" onClick={props.onClose}>
          {WORDS.close}
        </button>
      </div>
      <p>
        {clockRange(task.start, task.finish, course.timeZone)}, {listed(by)}
      </p>
      <ul role="status" class="tight">
        {sentences.length === 0 ? <li class="quiet">{WORDS.reckoning}</li> : null}
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {pinning.value ? <p role="status">{WORDS.moving}</p> : null}
      {pinFault.value === null ? null : (
        <Note kind="rust" word={WORDS.notMoved} live>
          {pinFault.value}
        </Note>
      )}
      {task.green === null ? null : <PinRisk plan={plan} green={task.green} />}
      {task.green === null || !decides.value ? null : <Moving plan={plan} green={task.green} />}
    </section>
  )
}
