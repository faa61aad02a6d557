import * as v from 'valibot'
import { counted } from './measured.ts'
import { momentSchema } from './moment.ts'
import { entryId } from './uuid.ts'

/** Longest JSON text of one entry, in UTF-16 code units: a course of 36 greens with fine outlines is about 300,000. */
export const ENTRY_MAX_LENGTH = 1_000_000

/** The server's id of a course. */
export const courseId = v.pipe(
  v.string(),
  v.regex(/^[\p{L}\p{N}._-]{1,64}$/u, 'an id of letters, digits, dot, dash or underscore'),
)

const momentOf = (description: string) => v.pipe(momentSchema, v.description(description))

const label = (description: string) =>
  v.pipe(v.string(), v.minLength(1), v.maxLength(120), v.description(description))

/** The envelope of every entry; the body is judged apart, by kind. */
export const entrySchema = v.object({
  id: v.pipe(entryId, v.description('UUID of version 7, made on the device; names the entry for good')),
  course: v.pipe(courseId, v.description('The course it belongs to')),
  device: label('The device it was made on: a random name that the device keeps'),
  author: label('Who made it'),
  at: momentOf('When it happened, ISO 8601 with offset'),
  recordedAt: momentOf('When it was written down, by the clock of the device, ISO 8601 with offset'),
  kind: v.pipe(
    v.string(),
    v.regex(/^[a-z][A-Za-z0-9]{0,39}$/u, 'a kind such as noteWritten'),
    v.description('What sort of thing happened'),
  ),
  version: counted('Version of the body of this kind', 1, 1000),
  body: v.pipe(v.record(v.string(), v.unknown()), v.description('The facts, as the kind says')),
})

/** One thing that somebody recorded. Never changed and never erased. */
export type Entry = Readonly<v.InferOutput<typeof entrySchema>>

/** An entry as the server hands it on: with its place in the course's journal and the moment it came in. */
export const storedEntrySchema = v.object({
  ...entrySchema.entries,
  seq: v.pipe(v.number(), v.integer(), v.minValue(1), v.description('Place in the journal of the course')),
  receivedAt: momentOf('When the server took it in, by its own clock'),
  skewMs: v.optional(
    v.pipe(
      v.number(),
      v.integer(),
      v.description('How far the clock of the device was ahead of the server’s when it was sent, ms'),
    ),
  ),
})

/** An entry with its place in the course's journal. */
export type StoredEntry = Readonly<v.InferOutput<typeof storedEntrySchema>>

const digits = (text: string, from: number, to: number): number => {
  let value = 0
  for (let index = from; index < to; index += 1) value = value * 10 + text.charCodeAt(index) - 48
  return value
}

/**
 * The moment of a text as our own apps write it, `2026-08-10T06:00:00.000Z`, and of any other that `Date.parse` reads. The first form is
 * read by hand, three times as quick: days since 1970 by H. Hinnant, `chrono`-Compatible Low-Level Date Algorithms, `days_from_civil`.
 */
const momentMs = (text: string): number => {
  if (text.length !== 24 || text.charCodeAt(23) !== 90) return Date.parse(text)
  const month = digits(text, 5, 7)
  const year = digits(text, 0, 4) - (month <= 2 ? 1 : 0)
  const era = Math.floor(year / 400)
  const ofEra = year - era * 400
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + digits(text, 8, 10) - 1
  const days =
    era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468
  const minutes = (days * 24 + digits(text, 11, 13)) * 60 + digits(text, 14, 16)
  return (minutes * 60 + digits(text, 17, 19)) * 1000 + digits(text, 20, 23)
}

/** When an entry happened, epoch milliseconds. */
export const atMsOf = (entry: Pick<Entry, 'at'>): number => momentMs(entry.at)

/** The order of the fold: by the moment it happened, then by id. The same on every device. */
export const compareEntries = (a: Pick<Entry, 'at' | 'id'>, b: Pick<Entry, 'at' | 'id'>): number =>
  atMsOf(a) - atMsOf(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)

/** A moment as entries write it. */
export const momentFromMs = (ms: number): string => new Date(ms).toISOString()

/**
 * The moment of a device's next entry: its clock, or one millisecond after its last entry where the clock stands still or went back.
 * Two entries of one device are so always folded in the order in which they were made.
 */
export const nextMomentMs = (lastMs: number | null, nowMs: number): number =>
  lastMs === null ? nowMs : Math.max(nowMs, lastMs + 1)
