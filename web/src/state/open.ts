import { atMsOf, type Entry } from '@swardwright/journal'
import type { EntryStore } from '../journal/entry-store.ts'
import { idbStore } from '../journal/idb-store.ts'
import { memoryStore } from '../journal/memory-store.ts'
import { oneAtATime } from '../journal/repeat.ts'
import { callServer } from '../journal/server.ts'
import { exchange, type SyncHolder } from '../journal/sync.ts'
import { courseId, journal, keepsEntries, link, opening, refused, unsent } from './journal.ts'
import { listenLive } from './live.ts'
import { freshId, openDesk, takeIn } from './record.ts'

const RETRY_MS = 10_000

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
    opening.value = 'unreachable'
    return null
  }
  const first = answer.value[0]
  if (first === undefined) opening.value = 'noCourse'
  return first?.id ?? null
}

const entriesNow = (): ReadonlyMap<string, Entry> =>
  new Map(journal.value.entries.map(({ entry }) => [entry.id, entry]))

const holderOf = (course: string, store: EntryStore, cursorAtStart: string | null): SyncHolder => {
  let cursor = cursorAtStart
  return {
    course,
    store,
    call: callServer,
    unsent: () => {
      const byId = entriesNow()
      return unsent.value.flatMap((id) => byId.get(id) ?? [])
    },
    cursor: () => cursor,
    arrived: (entries, next) => {
      cursor = next
      takeIn(entries)
    },
    left: (sent, fresh) => {
      const gone = new Set([...sent, ...fresh.map((refusal) => refusal.id)])
      unsent.value = unsent.value.filter((id) => !gone.has(id))
      refused.value = [...refused.value, ...fresh]
    },
    queuedAgain: () => {
      unsent.value = [...entriesNow().keys()]
    },
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

const openCourse = async (store: EntryStore, course: string): Promise<void> => {
  const kept = await store.load(course)
  const device = await store.device(() => `device ${freshId(Date.now()).slice(-8)}`)
  courseId.value = course
  takeIn(kept.entries)
  unsent.value = kept.unsent
  refused.value = kept.refused
  if (journal.value.facts.course !== null) opening.value = 'open'
  const holder = holderOf(course, store, kept.cursor)
  const sync = oneAtATime(async () => {
    link.value = await exchange(holder)
    opening.value =
      journal.value.facts.course !== null ? 'open' : link.value === 'level' ? 'noCourse' : 'unreachable'
  })
  const mine = kept.entries.filter((entry) => entry.device === device).map(atMsOf)
  const tell = tellOthers()
  const keptEntry = (entry: Entry): void => {
    tell(entry)
    void sync()
  }
  openDesk({ store, device, kept: keptEntry }, mine.length === 0 ? null : Math.max(...mine))
  await store.openCourse(course)
  await sync()
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
