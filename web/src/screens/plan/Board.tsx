import { isoWithOffset, MINUTE_MS, type Plan, type PlanTask } from '@swardwright/engine'
import {
  boardFromPlan,
  boardHours,
  boardKey,
  boardNames,
  boardSheet,
  dateAt,
  machineLetters,
} from '@swardwright/present'
import { useMemo, useState } from 'preact/hooks'
import { workDays } from '../../compute/moment.ts'
import { DrawingView, type Touched } from '../../parts/DrawingView.tsx'
import { InTurn, useInTurn } from '../../parts/InTurn.tsx'
import { isWide } from '../../shell/wide.ts'
import { nowMs } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { pinGreen } from '../../state/pins.ts'
import { weather } from '../../state/weather.ts'
import { TaskPanel } from './TaskPanel.tsx'
import { WORDS } from './words.ts'

const DESK = { pxPerHour: 60, rowPx: 34, namesPx: 132 }
/** A green let go on the board opens on a full five minutes. */
const DROP_STEP_MIN = 5

const PHONE = { pxPerHour: 44, rowPx: 34, namesPx: 96 }

const TOUCHABLE = ['task', 'band', 'flag', 'spare', 'caught']
const DRAGGED = ['task']
const KEY = boardKey()

/** The same work in another plan, where tasks are numbered anew: what the panel follows when a green has been moved. */
const isSameWork = (a: PlanTask, b: PlanTask): boolean =>
  a.operation === b.operation &&
  a.green === b.green &&
  a.pass === b.pass &&
  a.load === b.load &&
  (a.green !== null || a.id === b.id)

/** A task let go elsewhere on the board: its green is opened earlier or later by as much, to the next five minutes. */
const dropped = (plan: Plan, taskId: string, minutes: number, timeZone: string): void => {
  const green = plan.tasks.find(({ id }) => id === taskId)?.green
  const opened = plan.openings.find((opening) => opening.green === green)?.opened
  if (green === undefined || green === null || opened === undefined) return
  const ms = Date.parse(opened) + Math.round(minutes / DROP_STEP_MIN) * DROP_STEP_MIN * MINUTE_MS
  const opens = isoWithOffset(ms, timeZone)
  void pinGreen(green, dateAt(opens, timeZone), opens)
}

type Day = { readonly plan: Plan; readonly date: string }

const view = () => (isWide.value ? DESK : PHONE)

/** The minute of now on its own day, so that the clock draws no other day anew. */
const nowOn = (date: string, timeZone: string): number | undefined => {
  const minute = Math.floor(nowMs.value / MINUTE_MS) * MINUTE_MS
  return dateAt(minute, timeZone) === date ? minute : undefined
}

/** On paper nothing scrolls: one board a day, each as wide as the page. */
const PaperBoard = ({ plan, date }: Day) => {
  const course = useCourse()
  const hours = weather.value
  const drawing = useMemo(
    () =>
      boardSheet(
        boardFromPlan({ course, plan, weather: hours, dates: [date], view: DESK, scope: `paper-${date}` }),
      ),
    [course, plan, hours, date],
  )
  return <DrawingView drawing={drawing} />
}

/** The names alone go by no day. */
const Names = ({ plan }: { readonly plan: Plan }) => {
  const course = useCourse()
  const size = view()
  const drawing = useMemo(
    () =>
      boardNames(
        boardFromPlan({
          course,
          plan,
          weather: null,
          dates: [],
          allRows: true,
          view: size,
          scope: 'names',
        }),
      ),
    [course, plan, size],
  )
  return <DrawingView drawing={drawing} class="natural" />
}

type Handled = {
  readonly onTouch: (touched: Touched) => void
  readonly onDrop: (touched: Touched, minutes: number) => void
}

/** One day's hours. A whole week at once would keep the next press waiting, so each day is drawn when its turn comes, and anew with another plan. */
const Hours = (props: Day & Handled) => {
  const course = useCourse()
  const plan = useInTurn(props.plan)
  return plan === null ? null : <HoursOf {...props} plan={plan} now={nowOn(props.date, course.timeZone)} />
}

const HoursOf = (props: Day & Handled & { readonly now: number | undefined }) => {
  const course = useCourse()
  const { plan, date, now, onTouch, onDrop } = props
  const hours = weather.value
  const size = view()
  const drawing = useMemo(
    () =>
      boardHours(
        boardFromPlan({
          course,
          plan,
          weather: hours,
          dates: [date],
          allRows: true,
          view: size,
          scope: `board-${date}`,
          ...(now === undefined ? {} : { nowMs: now }),
        }),
      ),
    [course, plan, hours, date, size, now],
  )
  return (
    <DrawingView
      drawing={drawing}
      class="natural"
      touchable={TOUCHABLE}
      onTouch={onTouch}
      drag={{ parts: DRAGGED, onDrop: (touched, dxPx) => onDrop(touched, (dxPx / size.pxPerHour) * 60) }}
    />
  )
}

/** What the letters over the lines stand for: the machines that the plan uses. */
const Letters = ({ plan }: { readonly plan: Plan }) => {
  const { machines } = useCourse()
  const letters = machineLetters(machines)
  const used = new Set(plan.tasks.map(({ machine }) => machine))
  return (
    <ul class="row small">
      {machines
        .filter(({ id }) => used.has(id))
        .map(({ id, name }) => (
          <li key={id}>
            <b>{letters.get(id)}</b> {name}
          </li>
        ))}
    </ul>
  )
}

/** The board: greens down, hours across, day by day. Names stay in sight while the hours scroll. */
export const Board = ({ plan }: { readonly plan: Plan }) => {
  const { timeZone } = useCourse()
  const [told, setTold] = useState<string | null>(null)
  const [pressed, setPressed] = useState<PlanTask | null>(null)
  const same = pressed === null ? [] : plan.tasks.filter((one) => isSameWork(one, pressed))
  const task = same.find(({ id }) => id === pressed?.id) ?? same[0] ?? null
  const taskOf = (id: string): PlanTask | null => plan.tasks.find((one) => one.id === id) ?? null
  const dates = useMemo(() => workDays(plan, timeZone).map(({ date }) => date), [plan, timeZone])
  const handled: Handled = {
    onTouch: (touched) => {
      const one = touched.part === 'task' ? taskOf(touched.id) : null
      setPressed(one)
      setTold(one === null ? touched.words : null)
    },
    onDrop: (touched, minutes) => {
      setPressed(taskOf(touched.id))
      dropped(plan, touched.id, minutes, timeZone)
    },
  }
  return (
    <div class="stack">
      <div class="tight">
        <DrawingView drawing={KEY} class="natural" />
        <Letters plan={plan} />
      </div>
      <div class="board no-print">
        <Names plan={plan} />
        <div class="scroll-x" tabIndex={0} role="region" aria-label="Greens by the hour">
          <div class="drawings">
            {dates.map((date) => (
              <Hours key={date} plan={plan} date={date} {...handled} />
            ))}
          </div>
        </div>
      </div>
      {isWide.value ? (
        <div class="print-only" aria-hidden="true">
          {dates.map((date) => (
            <InTurn key={date}>{() => <PaperBoard plan={plan} date={date} />}</InTurn>
          ))}
        </div>
      ) : null}
      <p role="status" class={`no-print ${told === null ? 'quiet small' : 'told'}`}>
        {told ?? WORDS.boardLead}
      </p>
      {task === null ? null : <TaskPanel plan={plan} task={task} onClose={() => setPressed(null)} />}
    </div>
  )
}
