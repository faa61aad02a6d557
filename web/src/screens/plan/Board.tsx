import type { Plan } from '@swardwright/engine'
import {
  boardDrawing,
  boardFromPlan,
  boardKey,
  boardSheet,
  partsOf,
  type Board as Drawn,
} from '@swardwright/present'
import { useState } from 'preact/hooks'
import { workDays } from '../../compute/moment.ts'
import { DrawingView, type Touched } from '../../parts/DrawingView.tsx'
import { isWide } from '../../shell/wide.ts'
import { nowMs } from '../../state/clock.ts'
import { useCourse } from '../../state/course.ts'
import { weather } from '../../state/weather.ts'

const DESK = { pxPerHour: 60, rowPx: 34, namesPx: 132 }
const PHONE = { pxPerHour: 44, rowPx: 34, namesPx: 96 }

const toldBy = (drawn: Drawn, touched: Touched): string | null => {
  const found = [...partsOf(drawn.hours, touched.part), ...partsOf(drawn.names, touched.part)].find(
    (part) => part.attributes['data-id'] === touched.id,
  )
  const label = found?.attributes['aria-label']
  return typeof label === 'string' ? label : null
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
  const drawn = boardDrawing(
    boardFromPlan({
      course,
      plan,
      weather: weather.value,
      nowMs: nowMs.value,
      view: isWide.value ? DESK : PHONE,
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
            onTouch={(touched) => setTold(toldBy(drawn, touched))}
          />
        </div>
      </div>
      {isWide.value ? <PaperBoards plan={plan} /> : null}
      <p role="status" class={`no-print ${told === null ? 'quiet small' : 'told'}`}>
        {told ?? 'Press a task, a band or a flag to read it.'}
      </p>
    </div>
  )
}
