import { instantOf } from '@swardwright/engine'

/** One line of a paper sheet as it is typed in. */
export type PaperLine = {
  readonly green: string
  /** Clock on that day, 'HH:MM'; empty where the green was not finished. */
  readonly time: string
  readonly note: string
}

/** What a line of paper becomes: when the green was finished, and what was noted. */
export type PaperEntry = {
  readonly green: string
  readonly finishedMs: number | null
  readonly note: { readonly words: string; readonly atMs: number } | null
}

/** The day of a sheet, the course’s clock, and now. */
export type SheetDay = { readonly date: string; readonly timeZone: string; readonly nowMs: number }

const CLOCK = /^([01]?\d|2[0-3]):([0-5]\d)$/u

/** Minutes of the day that a clock says; null for what is no clock. */
const minutesOf = (time: string): number | null => {
  const read = CLOCK.exec(time.trim())
  return read === null ? null : Number(read[1]) * 60 + Number(read[2])
}

/** The moment that a time on the sheet of a day means, epoch milliseconds; null for what is no clock. */
export const momentOf = (time: string, { date, timeZone }: SheetDay): number | null => {
  const minute = minutesOf(time)
  return minute === null ? null : instantOf(date, minute, timeZone)
}

/** What a sheet of one day becomes. A note without a time counts as of the end of the day, or of now where that is earlier. Lines with neither are left out. */
export const paperEntries = (lines: readonly PaperLine[], known: SheetDay): readonly PaperEntry[] =>
  lines.flatMap(({ green, time, note }) => {
    const finishedMs = momentOf(time, known)
    const words = note.trim()
    if (finishedMs === null && words === '') return []
    const endMs = Math.min(known.nowMs, instantOf(known.date, 1439, known.timeZone))
    return [{ green, finishedMs, note: words === '' ? null : { words, atMs: finishedMs ?? endMs } }]
  })

/** What is wrong with a time of a sheet; null when it is right or empty. */
export const timeFault = (time: string, known: SheetDay): 'noClock' | 'afterNow' | null => {
  if (time.trim() === '') return null
  const atMs = momentOf(time, known)
  if (atMs === null) return 'noClock'
  return atMs > known.nowMs ? 'afterNow' : null
}
