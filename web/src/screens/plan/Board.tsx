import { isoWithOffset, MINUTE_MS, type Plan, type PlanTask } from '@swardwright/engine'
import {
  boardDrawing,
  boardFromPlan,
  boardKey,
  boardSheet,
  dateAt,
  partsOf,
  type Board as Drawn,
} from '@swardwright/present'
import { useState } from 'preact/hooks'
import { workDays } from '../../compute/moment.ts'
import { DrawingView, type Touched } from '../../parts/DrawingView.tsx'
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

const toldBy = (drawn: Drawn, touched: Touched): string | null => {
  const found = [...partsOf(drawn.hours, touched.part), ...partsOf(drawn.names, touched.part)].find(
    (part) => part.attributes['data-id'] === touched.id,
  )
  const label = found?.attributes['aria-label']
  return typeof label === 'string' ? label : null
}

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

/** On paper nothing scrolls: one board a day, each as wide as the page. */
const PaperBoards = ({ plan }: { readonly plan: Plan }) => {
  const course = useCourse()
  return (
    <div class="print-only" aria-hidden="true">
      {workDays(plan, course.timeZone).map(({ date }) => (
        <DrawingView
          key={date}
          drawing={boardSheet(
            boardFromPlan({
              course,
              plan,
              weather: weather.value,
              dates: [date],
              view: DESK,
              scope: `paper-${date}`,
            }),
          )}
        />
      ))}
    </div>
  )
}

/** The board: greens down, hours across. Names stay in sight while the hours scroll. */
export const Board = ({ plan }: { readonly plan: Plan }) => {
  const course = useCourse()
  const [told, setTold] = useState<string | null>(null)
  const [pressed, setPressed] = useState<PlanTask | null>(null)
  const view = isWide.value ? DESK : PHONE
  const same = pressed === null ? [] : plan.tasks.filter((one) => isSameWork(one, pressed))
  const task = same.find(({ id }) => id === pressed?.id) ?? same[0] ?? null
  const taskOf = (id: string): PlanTask | null => plan.tasks.find((one) => one.id === id) ?? null
  const drawn = boardDrawing(
    boardFromPlan({
      course,
      plan,
      weather: weather.value,
      nowMs: nowMs.value,
      view,
      scope: 'board',
    }),
  )
  return (
    <div class="stack">
      <DrawingView drawing={boardKey()} class="natural" />
      <div class="board no-print">
        <DrawingView drawing={drawn.names} class="natural" />
        <div class="scroll-x" tabIndex={0} role="region" aria-label="Greens by the hour">
          <DrawingView
            drawing={drawn.hours}
            class="natural"
            touchable={['task', 'band', 'flag', 'spare', 'caught']}
            onTouch={(touched) => {
              setTold(toldBy(drawn, touched))
              setPressed(touched.part === 'task' ? taskOf(touched.id) : null)
            }}
            drag={{
              parts: ['task'],
              onDrop: (touched, dxPx) => {
                setPressed(taskOf(touched.id))
                dropped(plan, touched.id, (dxPx / view.pxPerHour) * 60, course.timeZone)
              },
            }}
          />
        </div>
      </div>
      {isWide.value ? <PaperBoards plan={plan} /> : null}
      <p role="status" class={`no-print ${told === null ? 'quiet small' : 'told'}`}>
        {told ?? WORDS.boardLead}
      </p>
      {task === null ? null : <TaskPanel plan={plan} task={task} onClose={() => setPressed(null)} />}
    </div>
  )
}
