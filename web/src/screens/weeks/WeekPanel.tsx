import type { WeekInYear, WeekOutlook } from '@swardwright/engine'
import { clashWords, dateRange, dayHeading, dayWords, decimal, weekSentence } from '@swardwright/present'
import { useEffect, useRef } from 'preact/hooks'
import { useCourse } from '../../state/course.ts'
import { reckoned } from '../../state/weeks.ts'
import { askedWeek } from './asked.ts'
import { TakeWeek } from './TakeWeek.tsx'
import { ABOUT_WORDS, clearWords, MEANING, WORDS, type About } from './words.ts'

type Column = { readonly head: string; readonly cell: (year: WeekInYear) => string }

const dayOr = (date: string | null, none: string): string => (date === null ? none : dayWords(date))

const FINISHED: Column = {
  head: 'Finished',
  cell: ({ finishedOn, greensLeft }) => dayOr(finishedOn, `${greensLeft} greens left`),
}
const BACK: Column = {
  head: 'Good again',
  cell: ({ backFrom, backBy }) =>
    backFrom === null
      ? 'not known'
      : backBy === null
        ? `from ${dateRange(backFrom, backFrom)}`
        : dateRange(backFrom, backBy),
}

/** What of each year is shown for a figure. */
const COLUMNS: Readonly<Record<About, (nameOf: (fixture: string) => string) => readonly Column[]>> = {
  finished: () => [FINISHED, { head: 'Days lost', cell: ({ daysLost }) => String(daysLost) }],
  lost: () => [{ head: 'Days lost', cell: ({ daysLost }) => String(daysLost) }, FINISHED],
  back: () => [FINISHED, BACK],
  clash: (nameOf) => [
    BACK,
    {
      head: 'Meets',
      cell: ({ clashes }) =>
        clashes.length === 0 ? 'none' : clashes.map(({ fixture }) => nameOf(fixture)).join(', '),
    },
  ],
  growth: () => [
    { head: 'Good again by', cell: ({ backBy }) => dayOr(backBy, 'not known') },
    { head: 'Growth ends', cell: ({ growthEnds }) => dayOr(growthEnds, 'not in the half-year') },
    { head: 'Growing days', cell: ({ growingDaysLeft }) => decimal(growingDaysLeft, 0) },
  ],
}

const Years = ({ week, about }: { readonly week: WeekOutlook; readonly about: About }) => {
  const { fixtures } = useCourse()
  const columns = COLUMNS[about]((id) => fixtures.find((one) => one.id === id)?.name ?? id)
  const outcome = reckoned.value?.outcome ?? null
  const isDrawn =
    reckoned.value?.to.history === null || (outcome?.ok === true && outcome.value.source === 'drawn')
  return (
    <table>
      <caption>{WORDS.yearByYear}</caption>
      <thead>
        <tr>
          <th scope="col">Year</th>
          {columns.map(({ head }) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {week.years.map((year, at) => (
          <tr key={year.year}>
            <th scope="row">{isDrawn ? `drawn ${at + 1}` : year.year}</th>
            {columns.map(({ head, cell }) => (
              <td key={head}>{cell(year)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

const Told = ({ week, about }: { readonly week: WeekOutlook; readonly about: About }) => {
  const course = useCourse()
  const clashes = clashWords(week, course)
  return (
    <div class="stack">
      <h2>{dayHeading(week.firstDay)}</h2>
      <p>{weekSentence(week, course)}</p>
      <h3>{ABOUT_WORDS[about]}</h3>
      {about === 'finished' ? <p>{clearWords(week.clearYears, week.years.length)}.</p> : null}
      {about === 'clash' && clashes.length > 0 ? (
        <ul class="tight">
          {clashes.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      ) : null}
      <ul class="tight small">
        {MEANING[about].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <Years week={week} about={about} />
      <TakeWeek firstDay={week.firstDay} />
    </div>
  )
}

/** Where a figure of a week comes from: what it means, how it is reckoned, and every year behind it. */
export const WeekPanel = () => {
  const dialog = useRef<HTMLDialogElement>(null)
  const asked = askedWeek.value
  const week = reckoned.value?.weeks.find(({ firstDay }) => firstDay === asked?.firstDay)
  useEffect(() => {
    if (asked !== null) dialog.current?.showModal()
  }, [asked])
  // A page that is left takes the question with it.
  useEffect(
    () => () => {
      askedWeek.value = null
    },
    [],
  )
  return (
    <dialog
      ref={dialog}
      class="number-panel"
      aria-label={WORDS.whereFrom}
      onClose={() => {
        askedWeek.value = null
      }}
      onClick={(event) => {
        // A press beside the panel closes it, as Escape does.
        if (event.target === dialog.current) dialog.current?.close()
      }}
    >
      <div class="row apart">
        <p class="quiet small">{WORDS.whereFrom}</p>
        <button type="button" class="thin" onClick={() => dialog.current?.close()}>
          {WORDS.close}
        </button>
      </div>
      {asked === null || week === undefined ? null : <Told week={week} about={asked.about} />}
    </dialog>
  )
}
