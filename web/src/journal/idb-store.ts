import type { Entry, Refusal, Snapshot } from '@swardwright/journal'
import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import {
  countByCourse,
  isSentAgain,
  type EntryStore,
  type KeptJournal,
  type SyncStep,
} from './entry-store.ts'

type Queued = { readonly id: string; readonly course: string; readonly order?: number }

type Refused = { readonly id: string; readonly course: string; readonly refusal: Refusal }

interface Shape extends DBSchema {
  entries: { key: string; value: Entry; indexes: { course: string } }
  outbox: { key: number; value: Queued; indexes: { course: string; id: string } }
  refused: { key: string; value: Refused; indexes: { course: string } }
  facts: { key: string; value: string }
  /** From version 2 on. */
  snapshots: { key: string; value: Snapshot }
}

type Database = IDBPDatabase<Shape>

const ALL = ['entries', 'outbox', 'refused', 'facts'] as const

const open = (name: string): Promise<Database> =>
  openDB<Shape>(name, 2, {
    upgrade(db, from) {
      db.createObjectStore('snapshots')
      if (from >= 1) return
      db.createObjectStore('entries', { keyPath: 'id' }).createIndex('course', 'course')
      const outbox = db.createObjectStore('outbox', { keyPath: 'order', autoIncrement: true })
      outbox.createIndex('course', 'course')
      outbox.createIndex('id', 'id')
      db.createObjectStore('refused', { keyPath: 'id' }).createIndex('course', 'course')
      db.createObjectStore('facts')
    },
  })

/** Entries that no snapshot stands for: with most of a season in one, only keys are walked and a few entries read. */
const entriesWithout = async (
  db: Database,
  course: string,
  without: ReadonlySet<string>,
): Promise<readonly Entry[]> => {
  const entries = db.transaction('entries').store
  if (without.size === 0) return entries.index('course').getAll(course)
  const ids = await entries.index('course').getAllKeys(course)
  const found = await Promise.all(ids.filter((id) => !without.has(id)).map((id) => db.get('entries', id)))
  return found.filter((entry) => entry !== undefined)
}

const load = async (db: Database, course: string, without: ReadonlySet<string>): Promise<KeptJournal> => {
  const [entries, queued, refused, cursor, seen] = await Promise.all([
    entriesWithout(db, course, without),
    db.getAllFromIndex('outbox', 'course', course),
    db.getAllFromIndex('refused', 'course', course),
    db.get('facts', `cursor ${course}`),
    db.get('facts', `seen ${course}`),
  ])
  return {
    entries,
    unsent: queued.map((one) => one.id),
    refused: refused.map((one) => one.refusal),
    cursor: cursor ?? null,
    seen: seen ?? null,
  }
}

const apply = async (db: Database, course: string, step: SyncStep): Promise<void> => {
  const tx = db.transaction(ALL, 'readwrite', { durability: 'strict' })
  const outbox = tx.objectStore('outbox')
  const leave = async (id: string) => {
    const key = await outbox.index('id').getKey(id)
    if (key !== undefined) await outbox.delete(key)
  }
  const { sendAgain } = step
  if (sendAgain !== undefined) {
    const kept = await tx.objectStore('entries').index('course').getAll(course)
    const queued = await outbox.index('course').getAllKeys(course)
    await Promise.all(queued.map((key) => outbox.delete(key)))
    const again = kept.filter((entry) => isSentAgain(entry, sendAgain))
    await Promise.all(again.map(({ id }) => outbox.add({ id, course })))
  }
  await Promise.all([
    ...(step.pulled ?? []).map((entry) => tx.objectStore('entries').put(entry)),
    ...(step.sent ?? []).map(leave),
    ...(step.refused ?? []).flatMap((refusal) => [
      leave(refusal.id),
      tx.objectStore('refused').put({ id: refusal.id, course, refusal }),
    ]),
    ...(step.seen === undefined ? [] : [tx.objectStore('facts').put(step.seen, `seen ${course}`)]),
    ...(step.cursor === undefined ? [] : [tx.objectStore('facts').put(step.cursor, `cursor ${course}`)]),
    tx.done,
  ])
}

const device = async (db: Database, make: () => string): Promise<string> => {
  const tx = db.transaction('facts', 'readwrite', { durability: 'strict' })
  const kept = await tx.store.get('device')
  const name = kept ?? make()
  if (kept === undefined) await tx.store.put(name, 'device')
  await tx.done
  return name
}

/** The courses of the entries: one step of the index for each, however many entries it has. */
const coursesIn = async (db: Database): Promise<readonly string[]> => {
  const found: string[] = []
  const index = db.transaction('entries').store.index('course')
  let cursor = await index.openKeyCursor(null, 'nextunique')
  while (cursor !== null) {
    found.push(cursor.key)
    cursor = await cursor.continue()
  }
  return found
}

/** Keeps entries in the browser's own database. Rejects where the browser has none. */
export const idbStore = async (name = 'swardwright'): Promise<EntryStore> => {
  const db = await open(name)
  return {
    load: (course, without) => load(db, course, without),
    snapshot: async (course) => (await db.get('snapshots', course)) ?? null,
    keepSnapshot: async (course, snapshot) => {
      await db.put('snapshots', snapshot, course)
    },
    add: async (entry) => {
      const tx = db.transaction(['entries', 'outbox'], 'readwrite', { durability: 'strict' })
      await Promise.all([
        tx.objectStore('entries').put(entry),
        tx.objectStore('outbox').add({ id: entry.id, course: entry.course }),
        tx.done,
      ])
    },
    apply: (course, step) => apply(db, course, step),
    device: (make) => device(db, make),
    course: async () => (await db.get('facts', 'course')) ?? null,
    openCourse: async (course) => {
      if (course === null) await db.delete('facts', 'course')
      else await db.put('facts', course, 'course')
    },
    courses: () => coursesIn(db),
    waiting: async () => countByCourse(await db.getAll('outbox')),
  }
}
