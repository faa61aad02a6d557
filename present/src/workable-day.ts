import {
  HOUR_MS,
  reasonsOf,
  STOPS,
  weatherOfCourse,
  workableHours,
  type Course,
  type Operation,
  type WeatherHours,
  type WorkableReason,
} from '@swardwright/engine'
import type { BoardSpan } from './board/board-input.ts'
import type { WorkableBand } from './hour-strip.ts'
import { listed } from './numbers.ts'
import { darkSpans } from './sky-hours.ts'
import { clock } from './times.ts'

/** Why an hour can't be worked, or what to watch in it, as a person says it. */
export const WORKABLE_WORDS: Readonly<Record<WorkableReason, string>> = {
  dark: 'dark',
  rain: 'rain',
  wetGround: 'wet from rain',
  dew: 'dew',
  frost: 'frost',
  wind: 'wind',
  heat: 'heat',
  softGround: 'soft ground',
  partlyDark: 'partly dark',
  gusty: 'gusty',
  wilt: 'wilting',
  noForecast: 'no forecast',
}

/** When an operation can be worked in a stretch, and what holds it up while it is light. */
export type WorkableDay = WorkableBand & {
  /** Time that can be worked, whole hours. */
  readonly hours: number
  /** Stretches that can't be worked, with the reasons; the dark is left out, since it is drawn. */
  readonly stopped: readonly (BoardSpan & { readonly reasons: readonly WorkableReason[] })[]
}

const IS_STOP: ReadonlySet<string> = new Set(STOPS)

/** Runs of equal keys over the hours; null begins no run. */
const runsOf = (
  keys: readonly (string | null)[],
  startMs: number,
): readonly (BoardSpan & { key: string })[] => {
  const runs: { fromMs: number; toMs: number; key: string }[] = []
  for (const [hour, key] of keys.entries()) {
    if (key === null) continue
    const atMs = startMs + hour * HOUR_MS
    const last = runs.at(-1)
    if (last !== undefined && last.toMs === atMs && last.key === key) last.toMs += HOUR_MS
    else runs.push({ fromMs: atMs, toMs: atMs + HOUR_MS, key })
  }
  return runs
}

/** Work ends at sunset, or when the club says it is dark, to the minute: the hour in which that falls can only be worked in part. */
const endedByDark = (span: BoardSpan, nights: readonly BoardSpan[]): BoardSpan => {
  const night = nights.find(({ fromMs }) => fromMs > span.fromMs && fromMs < span.toMs)
  return night === undefined ? span : { fromMs: span.fromMs, toMs: night.fromMs }
}

/** When each operation can be worked over a stretch, and why not. Null when a threshold of the club's is out of range. */
export const workableDays = (
  course: Course,
  weather: WeatherHours,
  span: BoardSpan,
  operations: readonly Operation[],
): readonly WorkableDay[] | null => {
  const judged = weatherOfCourse(course)
  if (!judged.ok) return null
  const hours = Math.round((span.toMs - span.fromMs) / HOUR_MS)
  const nights = darkSpans(course, span)
  const answer = workableHours({
    weather,
    ...judged.value,
    operations,
    span: { startMs: span.fromMs, hours },
  })
  return operations.map((operation) => {
    const found = answer.byOperation.get(operation)
    const workable = Array.from({ length: hours }, (_, h) => (found?.workable[h] === 1 ? 'yes' : null))
    const why = Array.from({ length: hours }, (_, h) => {
      const stops = reasonsOf(found?.reasons[h] ?? 0).filter((reason) => IS_STOP.has(reason))
      return stops.length === 0 || stops.includes('dark') ? null : stops.join(' ')
    })
    const needsLight = judged.value.stopsOf[operation].includes('dark')
    const spans = runsOf(workable, span.fromMs).map(({ fromMs, toMs }) =>
      needsLight ? endedByDark({ fromMs, toMs }, nights) : { fromMs, toMs },
    )
    return {
      operation,
      hours: Math.floor(spans.reduce((ms, { fromMs, toMs }) => ms + toMs - fromMs, 0) / HOUR_MS),
      spans,
      stopped: runsOf(why, span.fromMs).map(({ fromMs, toMs, key }) => ({
        fromMs,
        toMs,
        // The key was joined from these very words a line above.
        reasons: key.split(' ') as WorkableReason[],
      })),
    }
  })
}

/** What holds an operation up, in one line: '05:00 to 09:00 dew, 13:00 to 18:00 rain and soft ground'; empty when nothing does. */
export const stoppedWords = ({ stopped }: Pick<WorkableDay, 'stopped'>, timeZone: string): string =>
  stopped
    .map(
      ({ fromMs, toMs, reasons }) =>
        `${clock(fromMs, timeZone)} to ${clock(toMs, timeZone)} ${listed(reasons.map((reason) => WORKABLE_WORDS[reason]))}`,
    )
    .join(', ')
