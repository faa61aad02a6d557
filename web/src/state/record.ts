import {
  KINDS,
  extend,
  fold,
  initialState,
  momentFromMs,
  nextMomentMs,
  uuidV7,
  UUID_RANDOM_BYTES,
  type BodyOf,
  type CourseChange,
  type Entry,
  type KindName,
} from '@swardwright/journal'
import type { EntryStore } from '../journal/entry-store.ts'
import { author } from './author.ts'
import { courseId, journal, unsent } from './journal.ts'

/** Where entries go once they are made. */
export type Desk = {
  readonly store: EntryStore
  readonly device: string
  /** Called with each entry once it is kept. */
  readonly kept: (entry: Entry) => void
  /** Resolves once a press has been answered with a picture: only then do the pages work out what an entry changes. At once when left out. */
  readonly answered?: () => Promise<void>
}

let desk: Desk | null = null
let lastMs: number | null = null

/** Says where entries go. `latestMs` is the moment of this device’s latest entry. */
export const openDesk = (opened: Desk, latestMs: number | null): void => {
  desk = opened
  lastMs = latestMs
}

/** An id that needs nothing but the browser’s source of chance, which plain http has too. */
export const freshId = (nowMs: number): string =>
  uuidV7({ nowMs, random: crypto.getRandomValues(new Uint8Array(UUID_RANDOM_BYTES)) })

/** Takes entries, which the store has already, into what the pages show. What reaches behind a snapshot is shown once all is read. */
export const takeIn = (entries: readonly Entry[]): void => {
  const next = extend(journal.value, entries)
  if (next !== null) journal.value = next
  else void readAll()
}

/** Reads every entry of this device, so that none is behind a snapshot any more. */
export const readAll = async (): Promise<void> => {
  const course = courseId.value
  if (desk === null || course === null || journal.value.before === null) return
  const { entries } = await desk.store.load(course, new Set())
  const meanwhile = journal.value.entries.map(({ entry }) => entry)
  journal.value = fold(fold(initialState, entries), meanwhile)
}

/**
 * Records that something happened, now or at `atMs`. Resolves once it would survive the device being switched off; the pages then show it.
 */
export const record = async <K extends KindName>(
  kind: K,
  body: BodyOf<K>,
  atMs?: number,
): Promise<string> => {
  const course = courseId.value
  if (desk === null || course === null) throw new Error('nothing is open to record in')
  lastMs = nextMomentMs(lastMs, Date.now())
  const moment = momentFromMs(lastMs)
  const entry: Entry = {
    id: freshId(lastMs),
    course,
    device: desk.device,
    author: author.value,
    at: atMs === undefined ? moment : momentFromMs(atMs),
    recordedAt: moment,
    kind,
    version: KINDS[kind].version,
    body: body,
  }
  await desk.store.add(entry)
  // Told at once, so that no page says that all is sent while the picture is waited for.
  unsent.value = [...unsent.value, entry.id]
  await desk.answered?.()
  takeIn([entry])
  desk.kept(entry)
  return entry.id
}

/** Records changes of the course. */
export const changeCourse = (...changes: CourseChange[]): Promise<string> =>
  record('courseChanged', { changes })
