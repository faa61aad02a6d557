import { dayNumber, localOf } from '@swardwright/engine'

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const
const WEEKDAYS_LONG = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const
/** As greenkeepers and newspapers write them; machines disagree on September, so the table is ours. */
const MONTHS = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'June',
  'July',
  'Aug',
  'Sept',
  'Oct',
  'Nov',
  'Dec',
] as const
const MINUTE_MS = 60_000

/** An instant: epoch milliseconds, or ISO 8601 text with its offset. */
export type Instant = number | string

/** Epoch milliseconds of an instant. Throws RangeError for text that is no instant. */
export const instantMs = (instant: Instant): number => {
  const ms = typeof instant === 'number' ? instant : Date.parse(instant)
  if (!Number.isFinite(ms)) throw new RangeError(`${instant} is no instant`)
  return ms
}

const twoDigits = (n: number): string => String(n).padStart(2, '0')

/** Minutes of the day as a clock: 390 is '06:30'; 1440 is '24:00', the end of a day. */
export const clockOfMinute = (minuteOfDay: number): string =>
  `${twoDigits(Math.floor(minuteOfDay / 60))}:${twoDigits(Math.floor(minuteOfDay) % 60)}`

/** The course's clock at an instant, 'HH:MM'. Seconds are dropped, as on a wall clock. */
export const clock = (instant: Instant, timeZone: string): string =>
  clockOfMinute(localOf(instantMs(instant), timeZone).minuteOfDay)

/** The course's calendar day at an instant, 'yyyy-mm-dd'. */
export const dateAt = (instant: Instant, timeZone: string): string =>
  localOf(instantMs(instant), timeZone).date

/** Monday is 0. 1 January 1970 was a Thursday. */
const weekdayOf = (date: string): number => (((dayNumber(date) + 3) % 7) + 7) % 7
const dayOfMonth = (date: string): number => Number(date.slice(8, 10))
const monthWord = (date: string): string => MONTHS[Number(date.slice(5, 7)) - 1] ?? ''

/** A month as short as it is written, 1 for January: 'Sept'. */
export const monthName = (month: number): string => MONTHS[month - 1] ?? ''

/** A calendar day, 'Tue 11 Aug'. */
export const dayWords = (date: string): string =>
  `${WEEKDAYS[weekdayOf(date)]} ${dayOfMonth(date)} ${monthWord(date)}`

/** A calendar day for a heading, 'Tuesday 11 Aug'. */
export const dayHeading = (date: string): string =>
  `${WEEKDAYS_LONG[weekdayOf(date)]} ${dayOfMonth(date)} ${monthWord(date)}`

/** A weekday alone, 'Tuesday'. */
export const weekday = (date: string): string => WEEKDAYS_LONG[weekdayOf(date)] ?? ''

/** Two calendar days, as short as can be said: '5 to 8 Sept', '28 Aug to 3 Sept', '5 Sept' when both are one. */
export const dateRange = (from: string, to: string): string => {
  const end = `${dayOfMonth(to)} ${monthWord(to)}`
  if (from === to) return end
  if (from.slice(0, 4) !== to.slice(0, 4))
    return `${dayOfMonth(from)} ${monthWord(from)} ${from.slice(0, 4)} to ${end} ${to.slice(0, 4)}`
  return from.slice(0, 7) === to.slice(0, 7)
    ? `${dayOfMonth(from)} to ${end}`
    : `${dayOfMonth(from)} ${monthWord(from)} to ${end}`
}

/** Day and clock of an instant, 'Tue 11 Aug 06:30'. */
export const dayAndClock = (instant: Instant, timeZone: string): string =>
  `${dayWords(dateAt(instant, timeZone))} ${clock(instant, timeZone)}`

/** The clock at an instant seen from a day, with its own day where that is another: '10:30', 'Tue 11 Aug 10:30'. */
export const clockFrom = (date: string, instant: Instant, timeZone: string): string =>
  dateAt(instant, timeZone) === date ? clock(instant, timeZone) : dayAndClock(instant, timeZone)

/** Two instants of one day, '06:30 to 07:15'; the later day is named when it is another. */
export const clockRange = (from: Instant, to: Instant, timeZone: string): string =>
  `${clock(from, timeZone)} to ${clockFrom(dateAt(from, timeZone), to, timeZone)}`

/** A length of time in whole minutes: '25 min', '2 h', '3 h 20 min'. */
export const durationWords = (minutes: number): string => {
  const whole = Math.round(minutes)
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}

/** Whole minutes from one instant to another, negative when the second comes first. */
export const minutesBetween = (from: Instant, to: Instant): number =>
  Math.round((instantMs(to) - instantMs(from)) / MINUTE_MS)
