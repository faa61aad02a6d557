import { HOUR_MS, OPERATIONS, type Operation } from '@swardwright/engine'
import { clock, counted, dayWords, shareWords, TASK_WORDS } from '@swardwright/present'
import type { Chances } from '../../compute/climate.ts'
import type { SkyDay } from '../../compute/sky-day.ts'
import { Select } from '../../parts/fields.tsx'
import { useCourse } from '../../state/course.ts'
import { WORDS } from './words.ts'

/** What chances are asked for: time for an operation, so many hours at a stretch. */
export type ChanceWanted = { readonly operation: Operation; readonly hours: number }

const HOURS = [1, 2, 3, 4, 5, 6, 8] as const

/** The best hour of a day to begin, and its chance; null where none is known or all are nought. */
const bestOf = (chances: Chances, sky: SkyDay): { readonly atMs: number; readonly share: number } | null => {
  let best: { atMs: number; share: number } | null = null
  for (let atMs = sky.day.fromMs; atMs < sky.day.toMs; atMs += HOUR_MS) {
    const share = chances.window[Math.round((atMs - chances.startMs) / HOUR_MS)] ?? NaN
    if (share > (best?.share ?? 0)) best = { atMs, share }
  }
  return best
}

/** Which chances the strips show, and the best hour of each day for it. */
export const ChanceChoice = (props: {
  readonly wanted: ChanceWanted
  readonly chances: Chances | null
  readonly days: readonly SkyDay[]
  readonly onWanted: (wanted: ChanceWanted) => void
}) => {
  const { wanted, chances, days } = props
  const { timeZone } = useCourse()
  if (chances === null) return <p>{WORDS.chancesNone}</p>
  return (
    <div class="stack">
      <div class="fields">
        <Select
          label={WORDS.chancesOf}
          value={wanted.operation}
          options={OPERATIONS.map((value) => ({ value, label: TASK_WORDS[value].work }))}
          onValue={(operation) => props.onWanted({ ...wanted, operation })}
        />
        <Select
          label={WORDS.chancesHours}
          value={String(wanted.hours)}
          options={HOURS.map((hours) => ({ value: String(hours), label: counted(hours, 'hour', 'hours') }))}
          onValue={(hours) => props.onWanted({ ...wanted, hours: Number(hours) })}
        />
      </div>
      <h3>{WORDS.chancesBest}</h3>
      <dl class="facts">
        {days.map((sky) => {
          const best = bestOf(chances, sky)
          return (
            <div key={sky.day.date}>
              <dt>{dayWords(sky.day.date)}</dt>
              <dd>
                {best === null
                  ? 'no time'
                  : `${shareWords(best.share, 0)}, from ${clock(best.atMs, timeZone)}`}
              </dd>
            </div>
          )
        })}
      </dl>
      <p class="small quiet">
        The share of {counted(chances.members, 'forecast', 'forecasts')} in which every hour of it can be
        worked.
      </p>
    </div>
  )
}
