const INSTANT = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d)(?::(\d\d)(\.\d+)?)?(Z|[+-]\d\d:\d\d)$/u

const offsetMs = (text: string): number => {
  if (text === 'Z') return 0
  const size = (Number(text.slice(1, 3)) * 60 + Number(text.slice(4, 6))) * 60_000
  return text.startsWith('-') ? -size : size
}

/**
 * The moment that a text such as '2026-08-10T06:30:00+01:00' names, epoch ms; NaN when there is no such moment.
 * `Date.parse` is not used: engines differ on days that are none, such as 30 February.
 */
export const parseInstant = (text: string): number => {
  const match = INSTANT.exec(text)
  if (match === null) return NaN
  const [, year, month, day, hour, minute, second = '0', fraction = '0', offset = 'Z'] = match
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return NaN
  const wall = Date.UTC(
    Number(year),
    Number(month) - 1,
    Number(day),
    Number(hour),
    Number(minute),
    Number(second),
  )
  const read = new Date(wall)
  // The year too: `Date.UTC` takes the years 0 to 99 for 1900 to 1999.
  const isDay =
    read.getUTCFullYear() === Number(year) &&
    read.getUTCMonth() === Number(month) - 1 &&
    read.getUTCDate() === Number(day)
  return isDay ? wall + Math.round(Number(fraction) * 1000) - offsetMs(offset) : NaN
}
