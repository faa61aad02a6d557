import { HOUR_MS, type Operation } from '@swardwright/engine'
import {
  clock,
  darkSpans,
  dayWords,
  decimal,
  hourStrip,
  listed,
  quantityWords,
  shareWords,
  skyHours,
  stoppedWords,
  TASK_WORDS,
} from '@swardwright/present'
import type { Chances } from '../../compute/climate.ts'
import type { SkyDay } from '../../compute/sky-day.ts'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { Fact } from '../../parts/Figure.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { isWide } from '../../shell/wide.ts'
import { nowMs } from '../../state/clock.ts'
import { units, useCourse } from '../../state/course.ts'
import { shownWeather } from '../../state/served-weather.ts'
import { barsOfDay } from './bars.ts'

type DayProps = {
  readonly sky: SkyDay
  readonly chances: Chances | null
  /** Short name of the row of chances. */
  readonly chanceWords: string
  readonly open: boolean
}

/** The operations that a summary line names. */
const NAMED: readonly Operation[] = ['core', 'dress', 'dragIn']

const rangeWords = ({ day }: SkyDay): string =>
  day.minC === null || day.maxC === null
    ? ''
    : `${decimal(day.minC, 0)} to ${quantityWords('temperature', Math.round(day.maxC), units.value)}`

const Summary = ({ sky }: { readonly sky: SkyDay }) => {
  const { day, growth, workable } = sky
  const told = [
    rangeWords(sky),
    day.windMostMPerS === null ? '' : `wind to ${decimal(day.windMostMPerS, 0)} m/s`,
    growth === null ? '' : `growth ${shareWords(growth.value, 0)}`,
  ].filter((words) => words !== '')
  const hours = workable
    .filter(({ operation }) => NAMED.includes(operation))
    .map(({ operation, hours: count }) => `${TASK_WORDS[operation].todo} ${count} h`)
  const rain =
    day.rainMm === null || day.hoursUnknown >= 12
      ? 'mostly not known'
      : day.rainMm < 0.05
        ? 'dry'
        : `rain ${quantityWords('rain', day.rainMm, units.value)}`
  return (
    <span class="day-summary">
      <span class="name">{dayWords(day.date)}</span>
      <span class={day.rainMm !== null && day.rainMm >= 0.05 ? 'rain' : 'quiet'}>{rain}</span>
      <span class="small quiet">{told.join(', ')}</span>
      <span class="small">{hours.join(' · ')}</span>
    </span>
  )
}

const Strip = ({ sky, chances, chanceWords }: Pick<DayProps, 'sky' | 'chances' | 'chanceWords'>) => {
  const course = useCourse()
  const weather = shownWeather.value
  const { day } = sky
  const span = { fromMs: day.fromMs, toMs: day.toMs }
  const isNow = nowMs.value >= day.fromMs && nowMs.value < day.toMs
  return (
    <DrawingView
      drawing={hourStrip({
        hours: skyHours(course, weather, { ...span, toMs: span.toMs - HOUR_MS / 2 }),
        dark: darkSpans(course, span),
        workable: sky.workable,
        bars: barsOfDay({ course, weather, day, chances, windowWords: chanceWords }),
        timeZone: course.timeZone,
        units: units.value,
        widthPx: isWide.value ? 860 : 358,
        scope: `sky-${day.date}`,
        ...(isNow ? { nowMs: nowMs.value } : {}),
      })}
    />
  )
}

const Stopped = ({ sky }: { readonly sky: SkyDay }) => {
  const { timeZone } = useCourse()
  // Most operations are held up by the same things, so they share a line.
  const works = new Map<string, string[]>()
  for (const one of sky.workable) {
    const words = stoppedWords(one, timeZone)
    if (words !== '') works.set(words, [...(works.get(words) ?? []), TASK_WORDS[one.operation].work])
  }
  if (works.size === 0) return null
  return (
    <ul class="tight small">
      {[...works].map(([words, names]) => (
        <li key={words}>
          <b>No {listed(names)}:</b> {words}
        </li>
      ))}
    </ul>
  )
}

const Facts = ({ sky }: { readonly sky: SkyDay }) => {
  const course = useCourse()
  const night = darkSpans(course, { fromMs: sky.day.fromMs, toMs: sky.day.toMs })
  const [rise, set] = [night[0]?.toMs, night.at(-1)?.fromMs]
  return (
    <dl class="facts">
      {sky.growth === null ? null : (
        <Fact word="Growth potential" from={sky.growth.from}>
          {shareWords(sky.growth.value, 0)}
        </Fact>
      )}
      {sky.et === null ? null : (
        <Fact word="Water that grass uses" from={sky.et.from}>
          {quantityWords('rain', sky.et.value, units.value)}
        </Fact>
      )}
      {rise === undefined || set === undefined || night.length < 2 ? null : (
        <Fact word="Light" from={sky.sun}>
          {clock(rise, course.timeZone)} to {clock(set, course.timeZone)}
        </Fact>
      )}
    </dl>
  )
}

/** One day ahead: its essentials in a line, and behind it the hours. */
export const DayFold = (props: DayProps) => (
  <Fold summary={<Summary sky={props.sky} />} open={props.open}>
    {() => (
      <>
        <Strip {...props} />
        <div class="columns">
          <Facts sky={props.sky} />
          <Stopped sky={props.sky} />
        </div>
      </>
    )}
  </Fold>
)
