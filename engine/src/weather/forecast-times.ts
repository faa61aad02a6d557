import { fail, ok, type Result } from '../result.ts'
import { DAY_MS, dayNumber } from '../time/calendar.ts'
import { instantOf, isTimeZone, MINUTE_MS } from '../time/zone.ts'
import { HOUR_MS } from './hours.ts'

/** What is wrong with the time labels of a forecast. `row` counts from 0. */
export type TimeError =
  | { readonly type: 'badTime'; readonly row: number; readonly received: string }
  | { readonly type: 'unknownTimeZone'; readonly received: string }
  | { readonly type: 'notHourly'; readonly row: number; readonly received: string }
  | { readonly type: 'tooLong'; readonly hours: number; readonly max: number }

/** How the labels are tied to the clock. */
export type Clock = { readonly timeZone?: string | undefined; readonly utcOffsetSeconds?: number | undefined }

/** Longest accepted span: a 40-year archive. A stray label a century away would otherwise take all memory. */
const MAX_HOURS = 40 * 366 * 24

const LABEL = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})(?::(\d{2}))?(Z|[+-]\d{2}:?\d{2})?$/u

type Label = { readonly utcMs: number } | { readonly date: string; readonly minuteOfDay: number }

/** One label: unix seconds, an instant with offset, or the local wall time that the API writes without one. */
const readLabel = (label: unknown): Label | undefined => {
  if (typeof label === 'number') return Number.isFinite(label) ? { utcMs: label * 1000 } : undefined
  const match = typeof label === 'string' ? LABEL.exec(label) : null
  if (match === null) return undefined
  const [text, date = '', hour, minute, , zone] = match
  const day = dayNumber(date)
  if (Number.isNaN(day) || Number(hour) > 23 || Number(minute) > 59) return undefined
  if (zone === undefined) return { date, minuteOfDay: Number(hour) * 60 + Number(minute) }
  const utcMs = Date.parse(text.replace(' ', 'T'))
  return Number.isNaN(utcMs) ? undefined : { utcMs }
}

const wallMs = (label: { readonly date: string; readonly minuteOfDay: number }): number =>
  dayNumber(label.date) * DAY_MS + label.minuteOfDay * MINUTE_MS

/** Whether the instants run hour by hour without a hole or a repeat. */
const isUnbroken = (instants: readonly number[]): boolean =>
  instants.every((ms, i) => i === 0 || ms - (instants[i - 1] ?? 0) === HOUR_MS)

/** Reads labels as the clock on the wall. When an autumn hour comes twice in the list, its second coming is an hour later. */
const byWallClock = (labels: readonly Label[], timeZone: string): number[] => {
  let before = -Infinity
  return labels.map((label) => {
    if ('utcMs' in label) return label.utcMs
    const first = instantOf(label.date, label.minuteOfDay, timeZone)
    const again = first + HOUR_MS
    const repeats =
      first === before && instantOf(label.date, label.minuteOfDay + 60, timeZone) - first > HOUR_MS
    before = repeats ? again : first
    return before
  })
}

const byOffset = (labels: readonly Label[], offsetMs: number): number[] =>
  labels.map((label) => ('utcMs' in label ? label.utcMs : wallMs(label) - offsetMs))

/**
 * Time labels as instants, in the order given. The open hourly API names a zone but shifts every label by one offset, that of the day of the
 * request, also beyond a summer-time change (its maintainers' word, open-meteo issue 261); so the offset goes first. Only where that leaves a
 * hole or a repeat and the wall clock of the zone leaves none, the wall clock is meant.
 */
export const instantsOf = (
  labels: readonly unknown[],
  clock: Clock,
): Result<readonly number[], TimeError> => {
  const { timeZone, utcOffsetSeconds } = clock
  if (timeZone !== undefined && !isTimeZone(timeZone))
    return fail({ type: 'unknownTimeZone', received: timeZone })
  const read: Label[] = []
  for (const [row, raw] of labels.entries()) {
    const label = readLabel(raw)
    if (label === undefined) return fail({ type: 'badTime', row, received: JSON.stringify(raw) ?? 'nothing' })
    read.push(label)
  }
  const shifted = byOffset(read, (utcOffsetSeconds ?? 0) * 1000)
  if (timeZone === undefined || (utcOffsetSeconds !== undefined && isUnbroken(shifted))) return ok(shifted)
  const wall = byWallClock(read, timeZone)
  return ok(utcOffsetSeconds === undefined || isUnbroken(wall) ? wall : shifted)
}

/** Where the rows of a forecast go on an unbroken row of hours. */
export type Grid = {
  /** First label, epoch ms. */
  readonly firstMs: number
  /** Labels from the first to the last, holes included. */
  readonly labels: number
  /** For each label of the grid, the row that holds it, or -1. */
  readonly rowOf: Int32Array
  /** Instants that came more than once; the first row counts. */
  readonly repeatedMs: readonly number[]
  /** Whether the rows came out of order (they are put in order). */
  readonly wasUnsorted: boolean
}

/** Lays rows on an hourly grid: puts them in order, notes repeats, leaves holes open. At least one label is needed. */
export const gridOf = (instants: readonly number[], labels: readonly unknown[]): Result<Grid, TimeError> => {
  const firstMs = instants.reduce((a, b) => Math.min(a, b), Infinity)
  const lastMs = instants.reduce((a, b) => Math.max(a, b), -Infinity)
  const count = Math.round((lastMs - firstMs) / HOUR_MS) + 1
  if (count > MAX_HOURS) return fail({ type: 'tooLong', hours: count, max: MAX_HOURS })
  const rowOf = new Int32Array(count).fill(-1)
  const repeatedMs: number[] = []
  for (const [row, ms] of instants.entries()) {
    const k = (ms - firstMs) / HOUR_MS
    if (!Number.isInteger(k)) return fail({ type: 'notHourly', row, received: String(labels[row]) })
    if (rowOf[k] === -1) rowOf[k] = row
    else repeatedMs.push(ms)
  }
  const wasUnsorted = instants.some((ms, i) => i > 0 && ms < (instants[i - 1] ?? ms))
  return ok({ firstMs, labels: count, rowOf, repeatedMs, wasUnsorted })
}
