import {
  addDays,
  dayNumber,
  HOUR_MS,
  instantOf,
  localOf,
  reasonsOf,
  sunDay,
  weatherOfCourse,
  workableHours,
  type Course,
  type Operation,
  type WeatherHours,
} from '@swardwright/engine'
import type { BoardBand, BoardSpan } from './board/board-input.ts'
import { METRIC, quantityWords } from './units.ts'
import { clock } from './times.ts'

/** One hour of the sky as drawings show it. */
export type SkyHour = {
  readonly startMs: number
  /** Rain of the hour, mm; null where the forecast says nothing (such an hour counts as dry). */
  readonly rainMm: number | null
  /** True when the rain reaches the amount at which the club stops. */
  readonly isRain: boolean
  readonly isDew: boolean
  readonly isFrost: boolean
}

const dragIn: readonly Operation[] = ['dragIn']

/** Hours of the sky over a course, by the engine's own rules for what stops dragging in. */
export const skyHours = (
  course: Course,
  weather: WeatherHours | null,
  span: BoardSpan,
): readonly SkyHour[] => {
  const startMs = Math.floor(span.fromMs / HOUR_MS) * HOUR_MS
  const hours = Math.ceil((span.toMs - startMs) / HOUR_MS)
  if (weather === null)
    return Array.from({ length: hours }, (_, n) => ({
      startMs: startMs + n * HOUR_MS,
      rainMm: null,
      isRain: false,
      isDew: false,
      isFrost: false,
    }))
  const { rainStopMmPerH } = course.settings
  const judged = weatherOfCourse(course)
  const answer = judged.ok
    ? workableHours({ weather, ...judged.value, operations: dragIn, span: { startMs, hours } })
    : null
  const masks = answer?.byOperation.get('dragIn')?.reasons
  return Array.from({ length: hours }, (_, n) => {
    const at = startMs + n * HOUR_MS
    const mm = weather.rainMm[Math.round((at - weather.startMs) / HOUR_MS)] ?? NaN
    const reasons = reasonsOf(masks?.[n] ?? 0)
    return {
      startMs: at,
      rainMm: Number.isNaN(mm) ? null : mm,
      isRain: mm >= rainStopMmPerH,
      isDew: reasons.includes('dew'),
      isFrost: reasons.includes('frost'),
    }
  })
}

/** Neighbouring hours that have something in common, as spans. */
const joined = (
  hours: readonly SkyHour[],
  has: (hour: SkyHour) => boolean,
): readonly { readonly fromMs: number; readonly toMs: number; readonly hours: readonly SkyHour[] }[] => {
  const spans: { fromMs: number; toMs: number; hours: SkyHour[] }[] = []
  for (const hour of hours.filter(has)) {
    const last = spans.at(-1)
    if (last !== undefined && last.toMs === hour.startMs) {
      last.toMs += HOUR_MS
      last.hours.push(hour)
    } else spans.push({ fromMs: hour.startMs, toMs: hour.startMs + HOUR_MS, hours: [hour] })
  }
  return spans
}

const rainBands = (course: Course, hours: readonly SkyHour[]): readonly BoardBand[] =>
  joined(hours, (hour) => hour.isRain).map(({ fromMs, toMs, hours: wet }) => {
    const sumMm = wet.reduce((sum, hour) => sum + (hour.rainMm ?? 0), 0)
    const amount = quantityWords('rain', sumMm, { ...METRIC, rain: course.units.rain })
    return { kind: 'rain', fromMs, toMs, words: `rain ${clock(fromMs, course.timeZone)}, ${amount}` }
  })

/** Dark of the nights that touch a span: from sunset, or the hour the club sets, to sunrise. */
export const darkSpans = (course: Course, span: BoardSpan): readonly BoardSpan[] => {
  const [longitudeDeg, latitudeDeg] = course.greens[0]?.at ?? [0, 0]
  const { timeZone } = course
  const lastDate = localOf(span.toMs, timeZone).date
  const sunOf = (date: string) =>
    sunDay(
      dayNumber(date),
      latitudeDeg,
      longitudeDeg,
      localOf(instantOf(date, 720, timeZone), timeZone).offsetMin * 60_000,
    )
  const spans: BoardSpan[] = []
  let date = addDays(localOf(span.fromMs, timeZone).date, -1)
  while (date <= lastDate) {
    const set = course.settings.darkFrom
    const [hour = 0, minute = 0] = set === null ? [] : set.split(':').map(Number)
    const fromMs = set === null ? sunOf(date).sunset.atMs : instantOf(date, hour * 60 + minute, timeZone)
    const toMs = sunOf(addDays(date, 1)).sunrise.atMs
    if (fromMs !== null && toMs !== null && fromMs < span.toMs && toMs > span.fromMs)
      spans.push({ fromMs: Math.max(fromMs, span.fromMs), toMs: Math.min(toMs, span.toMs) })
    date = addDays(date, 1)
  }
  return spans
}

/** Bands behind a board or a strip: rain, dew where it is not dark or raining, frost, and dark. */
export const skyBands = (
  course: Course,
  weather: WeatherHours | null,
  span: BoardSpan,
): readonly BoardBand[] => {
  const hours = skyHours(course, weather, span)
  const dark = darkSpans(course, span)
  const light = (ms: number): boolean => !dark.some((night) => ms >= night.fromMs && ms < night.toMs)
  const until = (words: string, toMs: number): string => `${words} until ${clock(toMs, course.timeZone)}`
  const held = ({ fromMs, toMs }: BoardSpan): BoardSpan => ({
    fromMs: Math.max(fromMs, span.fromMs),
    toMs: Math.min(toMs, span.toMs),
  })
  return [
    ...rainBands(course, hours).map((band) => ({ ...band, ...held(band) })),
    ...joined(hours, (hour) => hour.isDew && !hour.isRain && light(hour.startMs + HOUR_MS / 2)).map(
      (dew) => ({
        kind: 'dew' as const,
        words:
          localOf(dew.fromMs, course.timeZone).minuteOfDay < 720 ? until('dew', dew.toMs) : 'evening dew',
        ...held(dew),
      }),
    ),
    ...joined(hours, (hour) => hour.isFrost).map((frost) => ({
      kind: 'frost' as const,
      words: until('frost', frost.toMs),
      ...held(frost),
    })),
    ...dark.map((night) => ({
      kind: 'dusk' as const,
      words:
        night.fromMs > span.fromMs
          ? `dark ${clock(night.fromMs, course.timeZone)}`
          : until('dark', night.toMs),
      ...night,
    })),
  ]
}
