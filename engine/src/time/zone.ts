import { assert } from '../assert.ts'
import { DAY_MS, dateOfDay, dayNumber } from './calendar.ts'

export { addDays } from './calendar.ts'

/** Milliseconds in a minute. */
export const MINUTE_MS = 60_000

/** A moment as the clock on the club's wall shows it. */
export type LocalTime = {
  /** Calendar day, `yyyy-mm-dd`. */
  readonly date: string
  /** Minutes after midnight on that clock, 0 to 1439. */
  readonly minuteOfDay: number
  /** Local time less UTC, minutes (60 in a British summer). */
  readonly offsetMin: number
}

type Zone = { readonly clock: Intl.DateTimeFormat; readonly offsetByDay: Map<number, number | 'changes'> }

/** Formatters are slow to make and offsets slow to read, so both are kept. The answers never change, so keeping them is unseen. */
const zones = new Map<string, Zone>()

const zoneOf = (timeZone: string): Zone => {
  const known = zones.get(timeZone)
  if (known !== undefined) return known
  const clock = new Intl.DateTimeFormat('en-US', {
    timeZone,
    hourCycle: 'h23',
    calendar: 'gregory',
    numberingSystem: 'latn',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  })
  const made = { clock, offsetByDay: new Map<number, number | 'changes'>() }
  zones.set(timeZone, made)
  return made
}

/** Whether this is a time zone that the machine knows, such as `Europe/London`. */
export const isTimeZone = (timeZone: string): boolean => {
  try {
    zoneOf(timeZone)
    return true
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}

/** Offset read from the formatter, minutes. Zone offsets before 1900 held seconds; those are rounded. */
const readOffset = (clock: Intl.DateTimeFormat, epochMs: number): number => {
  const part: Record<string, number> = {}
  for (const { type, value } of clock.formatToParts(epochMs)) part[type] = Number(value)
  const wall = Date.UTC(
    part['year'] ?? NaN,
    (part['month'] ?? NaN) - 1,
    part['day'],
    part['hour'],
    part['minute'],
    part['second'],
  )
  return Math.round((wall - Math.floor(epochMs / 1000) * 1000) / MINUTE_MS)
}

/** Local time less UTC at an instant, minutes. A UTC day that begins and ends on one offset is taken to keep it throughout. */
const offsetAt = (epochMs: number, timeZone: string): number => {
  const { clock, offsetByDay } = zoneOf(timeZone)
  const day = Math.floor(epochMs / DAY_MS)
  let offset = offsetByDay.get(day)
  if (offset === undefined) {
    const atStart = readOffset(clock, day * DAY_MS)
    offset = atStart === readOffset(clock, (day + 1) * DAY_MS - 1) ? atStart : 'changes'
    offsetByDay.set(day, offset)
  }
  return offset === 'changes' ? readOffset(clock, epochMs) : offset
}

/**
 * The moment at which the club's clock shows this day and minute, epoch ms.
 * Minutes may run past the day's end (1500 is 01:00 tomorrow) or before its start.
 * A time that the spring change skips is moved on by the length of the gap; of a time that comes twice in autumn, the first is meant.
 * The same choice as `disambiguation: 'compatible'` of ECMAScript Temporal.
 * Throws for a date that is none and RangeError for an unknown zone.
 */
export const instantOf = (localDate: string, minuteOfDay: number, timeZone: string): number => {
  const day = dayNumber(localDate)
  assert(Number.isFinite(day), `${localDate} is no calendar day`)
  const wall = day * DAY_MS + minuteOfDay * MINUTE_MS
  const before = offsetAt(wall - DAY_MS, timeZone)
  const early = wall - before * MINUTE_MS
  if (offsetAt(early, timeZone) === before) return early
  const after = offsetAt(wall + DAY_MS, timeZone)
  const late = wall - after * MINUTE_MS
  return offsetAt(late, timeZone) === after ? late : early
}

/** What the club's clock shows at an instant. Throws RangeError for an unknown zone. */
export const localOf = (epochMs: number, timeZone: string): LocalTime => {
  const offsetMin = offsetAt(epochMs, timeZone)
  const wallMin = Math.floor(epochMs / MINUTE_MS) + offsetMin
  const day = Math.floor(wallMin / 1440)
  return { date: dateOfDay(day), minuteOfDay: wallMin - day * 1440, offsetMin }
}

const twoDigits = (n: number): string => String(n).padStart(2, '0')

/** An instant in the club's time with its offset: `2026-08-10T06:00:00+01:00`. Parts of a second are dropped. */
export const isoWithOffset = (epochMs: number, timeZone: string): string => {
  const { date, minuteOfDay, offsetMin } = localOf(epochMs, timeZone)
  const second = Math.floor((epochMs - Math.floor(epochMs / MINUTE_MS) * MINUTE_MS) / 1000)
  const size = Math.abs(offsetMin)
  const clock = [Math.floor(minuteOfDay / 60), minuteOfDay % 60, second].map(twoDigits).join(':')
  const sign = offsetMin < 0 ? '-' : '+'
  return `${date}T${clock}${sign}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`
}
