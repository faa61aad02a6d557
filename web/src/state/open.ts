import {
  SNAPSHOT_WORTH,
  initialState,
  latestByDevice,
  snapshotOf,
  stateOf,
  type Entry,
} from '@swardwright/journal'
import type { EntryStore, KeptJournal } from '../journal/entry-store.ts'
import { idbStore } from '../journal/idb-store.ts'
import { memoryStore } from '../journal/memory-store.ts'
import { oneAtATime } from '../journal/repeat.ts'
import { callServer } from '../journal/server.ts'
import { exchange, type SyncHolder } from '../journal/sync.ts'
import { askWho, who } from './access.ts'
import { author, authorIsTied } from './author.ts'
import { courseId, journal, keepsEntries, link, opening, refused, unsent } from './journal.ts'
import { listenLive } from './live.ts'
import { freshId, openDesk, readAll, takeIn } from './record.ts'
import { askToLast } from './storage.ts'

const RETRY_MS = 10_000

/** What is shown while this device has no course, by how the last exchange ended. */
const OPENING_WITHOUT_COURSE = { level: 'noCourse', away: 'unreachable', refused: 'closed' } as const

const openStore = async (): Promise<EntryStore> => {
  try {
    return await idbStore()
  } catch {
    // The page says so in words; the server still keeps what reaches it.
    keepsEntries.value = false
    return memoryStore()
  }
}

/** The course to open: what this device opened last, else the first that the server has. */
const chooseCourse = async (store: EntryStore): Promise<string | null> => {
  const last = await store.course()
  if (last !== null) return last
  const answer = await callServer('courses', {})
  if (!answer.ok) {
    await askWho()
    opening.value = answer.why === 'refused' ? 'closed' : 'unreachable'
    return null
  }
  const first = answer.value[0]
  if (first === undefined) opening.value = 'noCourse'
  return first?.id ?? null
}

const entriesNow = (): ReadonlyMap<string, Entry> =>
  new Map(journal.value.entries.map(({ entry }) => [entry.id, entry]))

const holderOf = (course: string, store: EntryStore, kept: KeptJournal): SyncHolder => {
  let { cursor, seen } = kept
  return {
    course,
    store,
    call: callServer,
    unsent: () => {
      const byId = entriesNow()
      return unsent.value.flatMap((id) => byId.get(id) ?? [])
    },
    cursor: () => cursor,
    seen: () => seen,
    saw: (told) => {
      seen = told
    },
    arrived: (entries, next) => {
      cursor = next
      takeIn(entries)
    },
    left: (sent, fresh) => {
      const gone = new Set([...sent, ...fresh.map((refusal) => refusal.id)])
      unsent.value = unsent.value.filter((id) => !gone.has(id))
      refused.value = [...refused.value, ...fresh]
    },
    queuedAgain: async () => {
      await readAll()
      unsent.value = (await store.load(course, new Set())).unsent
    },
    nowMs: Date.now,
    author: () => (authorIsTied.value ? author.value : null),
    mayHandOn: () => who.value?.role === 'manager' || who.value?.role === 'deputy',
  }
}

/** Tells the other pages of this browser what was recorded here, so that they show it without the server. */
const tellOthers = (): ((entry: Entry) => void) => {
  if (!('BroadcastChannel' in globalThis)) return () => undefined
  const channel = new BroadcastChannel('swardwright')
  channel.addEventListener('message', (event: MessageEvent<Entry>) => {
    if (event.data.course === courseId.value) takeIn([event.data])
  })
  // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a channel has no target; it never leaves this origin
  return (entry) => channel.postMessage(entry)
}

/** What this device has, from its snapshot where it has one that this version can use. */
const openKept = async (
  store: EntryStore,
  course: string,
): Promise<{ readonly kept: KeptJournal; readonly latestMs: Readonly<Record<string, number>> }> => {
  const snapshot = await store.snapshot(course)
  const begun = snapshot === null ? null : stateOf(snapshot)
  journal.value = begun ?? initialState
  const kept = await store.load(course, begun?.before?.ids ?? new Set())
  return { kept, latestMs: begun === null ? {} : (snapshot?.latestMs ?? {}) }
}

/**
 * Keeps a snapshot once enough has come on top of the last. Only when nothing waits to be sent and nothing was refused: those entries
 * have to be at hand.
 */
const keepSnapshot = async (
  store: EntryStore,
  course: string,
  latestMs: Readonly<Record<string, number>>,
): Promise<void> => {
  const isQuiet = unsent.value.length === 0 && refused.value.length === 0
  if (!isQuiet || journal.value.entries.length < SNAPSHOT_WORTH) return
  const snapshot = snapshotOf(journal.value, latestMs)
  if (snapshot !== null) await store.keepSnapshot(course, snapshot)
}

const openCourse = async (store: EntryStore, course: string): Promise<void> => {
  const { kept, latestMs } = await openKept(store, course)
  const device = await store.device(() => `device ${freshId(Date.now()).slice(-8)}`)
  courseId.value = course
  const tell = tellOthers()
  const holder = holderOf(course, store, kept)
  const sync = oneAtATime(async () => {
    // Asked in the background, so that a poor line never keeps the page from opening.
    if (who.value === null) await askWho()
    link.value = await exchange(holder)
    opening.value = journal.value.facts.course !== null ? 'open' : OPENING_WITHOUT_COURSE[link.value]
  })
  const keptEntry = (entry: Entry): void => {
    tell(entry)
    void askToLast()
    void sync()
  }
  openDesk({ store, device, kept: keptEntry }, null)
  takeIn(kept.entries)
  openDesk({ store, device, kept: keptEntry }, latestByDevice(journal.value, latestMs)[device] ?? null)
  unsent.value = kept.unsent
  refused.value = kept.refused
  if (journal.value.facts.course !== null) opening.value = 'open'
  await store.openCourse(course)
  await sync()
  await keepSnapshot(store, course, latestMs)
  listenLive(course, () => void sync())
  addEventListener('online', () => void sync())
  setInterval(() => {
    if (link.value !== 'level') void sync()
  }, RETRY_MS)
}

/** Opens the journal that this device or its server has; makes none up. */
export const openJournal = async (): Promise<void> => {
  const store = await openStore()
  const course = await chooseCourse(store)
  if (course !== null) await openCourse(store, course)
}

/** Makes an empty course on the server and opens it. Null when the server could not be reached. */
export const addCourse = async (name: string): Promise<string | null> => {
  const answer = await callServer('addCourse', { body: { name } })
  if (!answer.ok) return null
  await openCourse(await openStore(), answer.value.id)
  return answer.value.id
}
