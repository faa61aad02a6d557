import { instantOf, isoWithOffset } from '@swardwright/engine'
import { BadInput } from './command.ts'

const LOCAL = /^(\d{4}-\d\d-\d\d)T([01]\d|2[0-3]):([0-5]\d)$/u
const WITH_OFFSET = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?(\.\d+)?(Z|[+-]\d\d:\d\d)$/u

/** A moment given as an option: with its offset as it is, without one on the course's clock. */
export const instantIn = (name: string, text: string, timeZone: string): string => {
  if (WITH_OFFSET.test(text)) return text
  const [, date, hour, minute] = LOCAL.exec(text) ?? []
  if (date === undefined || Number.isNaN(Date.parse(date)))
    throw new BadInput(
      `--${name} is '${text}'; it must be a time such as 2026-08-10T10:30 or 2026-08-10T10:30:00+01:00`,
    )
  return isoWithOffset(instantOf(date, Number(hour) * 60 + Number(minute), timeZone), timeZone)
}
