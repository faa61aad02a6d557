import type { RankedWeek } from '@swardwright/engine'
import { backWords, clashInShort, dayHeading, dayWords, finishedWords } from '@swardwright/present'
import { useCourse } from '../../state/course.ts'
import { TakeWeek } from './TakeWeek.tsx'
import { WeekFigure } from './WeekFigure.tsx'
import { WORDS } from './words.ts'

const Card = ({ pick: { week, reserve } }: { readonly pick: RankedWeek }) => {
  const course = useCourse()
  const { firstDay } = week
  return (
    <li class="week-card">
      <h3>{dayHeading(firstDay)}</h3>
      <ul class="said">
        <li>
          <WeekFigure firstDay={firstDay} about="finished">
            {finishedWords(week)}
          </WeekFigure>
        </li>
        <li>
          <WeekFigure firstDay={firstDay} about="back">
            {backWords(week)}
          </WeekFigure>
        </li>
        <li>
          <WeekFigure firstDay={firstDay} about="clash">
            <span class={week.clashes.length === 0 ? 'leaf' : 'rust'}>{clashInShort(week, course)}</span>
          </WeekFigure>
        </li>
      </ul>
      <p class="small">
        {WORDS.reserve} {reserve === null ? WORDS.noReserve : dayWords(reserve)}.
      </p>
      <TakeWeek firstDay={firstDay} />
    </li>
  )
}

/** The weeks put forward, one sentence each, with the week to fall back on. */
export const WeekCards = ({ picks }: { readonly picks: readonly RankedWeek[] }) => (
  <ol class="week-cards">
    {picks.map((pick) => (
      <Card key={pick.week.firstDay} pick={pick} />
    ))}
  </ol>
)
