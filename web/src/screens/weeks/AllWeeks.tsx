import type { WeekOutlook } from '@swardwright/engine'
import {
  backDates,
  clashNames,
  dayWords,
  daysLostWords,
  growthWords,
  weekSentence,
  weekStrip,
} from '@swardwright/present'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { isWide } from '../../shell/wide.ts'
import { useCourse } from '../../state/course.ts'
import { chosenWeeks, type Reckoned } from '../../state/weeks.ts'
import { askedWeek } from './asked.ts'
import { WeekFigure } from './WeekFigure.tsx'
import { ABOUT, ABOUT_WORDS, countWords, WORDS, type About } from './words.ts'

const DESK_PX = 860
const PHONE_PX = 358

const Row = ({ week }: { readonly week: WeekOutlook }) => {
  const course = useCourse()
  const years = week.years.length
  const cells: Readonly<Record<About, string>> = {
    finished: `${countWords(week.finishedYears, years)}, ${week.clearYears} clear`,
    lost: daysLostWords(week),
    back: backDates(week),
    clash: clashNames(week, course),
    growth: growthWords(week),
  }
  return (
    <tr>
      <th scope="row">{dayWords(week.firstDay)}</th>
      {ABOUT.map((about) => (
        <td key={about}>
          <WeekFigure firstDay={week.firstDay} about={about}>
            {cells[about]}
          </WeekFigure>
        </td>
      ))}
    </tr>
  )
}

const Table = ({ weeks }: { readonly weeks: readonly WeekOutlook[] }) => (
  <div class="scroll-x" role="region" aria-label={WORDS.table} tabIndex={0}>
    <table class="week-table">
      <caption>{WORDS.order}</caption>
      <thead>
        <tr>
          <th scope="col">First day</th>
          {ABOUT.map((about) => (
            <th key={about} scope="col">
              {ABOUT_WORDS[about]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {weeks.map((week) => (
          <Row key={week.firstDay} week={week} />
        ))}
      </tbody>
    </table>
  </div>
)

/** Every week reckoned: drawn as one strip, and in figures. While it goes on, none is put forward yet. */
export const AllWeeks = ({ told: { to, weeks, running } }: { readonly told: Reckoned }) => {
  const course = useCourse()
  const picks = running === null ? chosenWeeks.value.picks : []
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.stripLead}</p>
      <DrawingView
        drawing={weekStrip({
          firstDays: to.firstDays,
          weeks,
          picks: picks.map(({ week }) => week),
          words: (week) => `${dayWords(week.firstDay)}: ${weekSentence(week, course)}`,
          widthPx: isWide.value ? DESK_PX : PHONE_PX,
          scope: 'weeks',
        })}
        touchable={['week']}
        onTouch={({ id }) => {
          askedWeek.value = { firstDay: id, about: 'finished' }
        }}
      />
      <Fold summary={WORDS.table} open={isWide.value}>
        {() => <Table weeks={weeks} />}
      </Fold>
    </div>
  )
}
