import { effect } from '@preact/signals'
import { OPERATIONS, type Operation } from '@swardwright/engine'
import { dayAndClock, forecastErrorWords, TASK_WORDS } from '@swardwright/present'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { Work } from '../../compute/work.ts'
import { skyDays, type SkyDay } from '../../compute/sky-day.ts'
import { Fold } from '../../parts/Fold.tsx'
import { Note } from '../../parts/Note.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { today } from '../../state/clock.ts'
import { compute } from '../../state/compute.ts'
import { course, useCourse } from '../../state/course.ts'
import { latest } from '../../state/latest.ts'
import { prescription } from '../../state/prescription.ts'
import { askWeather, ensemble, shownForecast, shownWeather } from '../../state/served-weather.ts'
import { Rain } from '../plan/Rain.tsx'
import { ChanceChoice, type ChanceWanted } from './ChanceChoice.tsx'
import { DayFold } from './DayFold.tsx'
import { Judged } from './Judged.tsx'
import { SourceDetails, SourceLine } from './SourceLine.tsx'
import { COLUMN_NAMES, WORDS } from './words.ts'
import './weather.css'
import { Deciding } from '../../parts/Deciding.tsx'

/** The server asks the service when that is due; the page only has to ask the server. */
const ASK_EVERY_MS = 10 * 60_000

/** Worth seeing whatever is prescribed. */
const ALWAYS: readonly Operation[] = ['core', 'solidTine', 'scarify', 'cut', 'dress', 'dragIn']

const chances = latest<Work['chances']['output']>()

/** The operations of the prescription, else the usual ones, in the order of the work. */
const operationsShown = (): readonly Operation[] => {
  const prescribed = prescription.value?.groups.flatMap(({ chain }) =>
    chain.map(({ operation }) => operation),
  )
  const wanted = new Set<Operation>(
    prescribed === undefined || prescribed.length === 0 ? ALWAYS : [...prescribed, 'dragIn'],
  )
  return OPERATIONS.filter((operation) => wanted.has(operation))
}

/** Keeps the chances level with the ensemble and the course while the page is open. */
const followChances = ({ operation, hours }: ChanceWanted): (() => void) =>
  effect(() => {
    const [many, known] = [ensemble.value, course.value]
    if (many === null || known === null) chances.clear()
    else chances.ask(() => compute('chances', { course: known, weather: many, operation, hours }))
  })

const Gaps = () => {
  const { timeZone } = useCourse()
  const read = shownForecast.value
  if (read === null) return null
  if (!read.ok)
    return (
      <Note kind="rust" word={WORDS.unreadable} live>
        {forecastErrorWords(read.error)}.
      </Note>
    )
  const { gaps } = read.value
  if (gaps.length === 0) return null
  return (
    <Fold summary={`${WORDS.gaps} (${gaps.length})`}>
      {() => (
        <>
          <p class="small quiet">{WORDS.gapsLead}</p>
          <ul class="tight small">
            {gaps.slice(0, 40).map((gap) => (
              <li key={`${gap.column} ${gap.fromMs} ${gap.why}`}>
                {COLUMN_NAMES[gap.column.replace(/_member.*$/u, '')] ?? gap.column}:{' '}
                {dayAndClock(gap.fromMs, timeZone)}
                {gap.toMs === gap.fromMs ? '' : ` to ${dayAndClock(gap.toMs, timeZone)}`}
              </li>
            ))}
          </ul>
        </>
      )}
    </Fold>
  )
}

const Days = (props: {
  readonly days: readonly SkyDay[]
  readonly wanted: ChanceWanted
  readonly chancesNow: Work['chances']['output']
}) => {
  const { days, wanted, chancesNow } = props
  if (days.length === 0) return <p>{WORDS.noDays}</p>
  return (
    <div>
      {days.map((sky, index) => (
        <DayFold
          key={sky.day.date}
          sky={sky}
          chances={chancesNow}
          chanceWords={`${TASK_WORDS[wanted.operation].todo} ${wanted.hours} h, %`}
          open={index === 0}
        />
      ))}
    </div>
  )
}

/** Where the weather comes from, and what is missing in it. */
const Source = () => (
  <div class="stack">
    <SourceLine />
    <Gaps />
  </div>
)

/** The weather ahead: where it comes from, the days by the hour, chances, the rain that is expected, and what hours are judged by. */
export const WeatherPage = () => {
  const known = useCourse()
  const [wanted, setWanted] = useState<ChanceWanted>({ operation: 'dragIn', hours: 3 })
  useEffect(() => {
    void askWeather()
    const again = setInterval(() => void askWeather(), ASK_EVERY_MS)
    return () => clearInterval(again)
  }, [])
  useEffect(() => followChances(wanted), [wanted])
  const [weather, date, operations] = [shownWeather.value, today.value, operationsShown()]
  const days = useMemo(
    () => (weather === null ? [] : skyDays(known, weather, date, operations)),
    [known, weather, date, operations.join(' ')],
  )
  return (
    <Page title={WORDS.title} lead={WORDS.lead} over={known.timeZone}>
      <div class="wide">
        {days.length === 0 ? <Source /> : null}
        <Part title={WORDS.days} aside={<a href="/weather/history">{WORDS.toHistory}</a>}>
          <Days days={days} wanted={wanted} chancesNow={chances.value.value} />
        </Part>
        {days.length === 0 ? null : <Source />}
        <div class="columns">
          <Part title={WORDS.chances}>
            <ChanceChoice wanted={wanted} chances={chances.value.value} days={days} onWanted={setWanted} />
          </Part>
          <Part title={WORDS.rain}>
            <Deciding>
              <Rain />
            </Deciding>
          </Part>
        </div>
        <div>
          <SourceDetails />
          <Fold summary={WORDS.judged}>
            {() => (
              <Deciding>
                <Judged />
              </Deciding>
            )}
          </Fold>
        </div>
      </div>
    </Page>
  )
}
