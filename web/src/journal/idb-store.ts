import type { Entry, Refusal } from '@swardwright/journal'
import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { EntryStore, KeptJournal, SyncStep } from './entry-store.ts'

type Queued = { readonly id: string; readonly course: string; readonly order?: number }

type Refused = { readonly id: string; readonly course: string; readonly refusal: Refusal }

interface Shape extends DBSchema {
  entries: { key: string; value: Entry; indexes: { course: string } }
  outbox: { key: number; value: Queued; indexes: { course: string; id: string } }
  refused: { key: string; value: Refused; indexes: { course: string } }
  facts: { key: string; value: string }
}

type Database = IDBPDatabase<Shape>

const ALL = ['entries', 'outbox', 'refused', 'facts'] as const

const open = (name: string): Promise<Database> =>
  openDB<Shape>(name, 1, {
    upgrade(db) {
      db.createObjectStore('entries', { keyPath: 'id' }).createIndex('course', 'course')
      const outbox = db.createObjectStore('outbox', { keyPath: 'order', autoIncrement: true })
      outbox.createIndex('course', 'course')
      outbox.createIndex('id', 'id')
      db.createObjectStore('refused', { keyPath: 'id' }).createIndex('course', 'course')
      db.createObjectStore('facts')
    },
  })

const load = async (db: Database, course: string): Promise<KeptJournal> => {
  const tx = db.transaction(ALL)
  const [entries, queued, refused, cursor] = await Promise.all([
    tx.objectStore('entries').index('course').getAll(course),
    tx.objectStore('outbox').index('course').getAll(course),
    tx.objectStore('refused').index('course').getAll(course),
    tx.objectStore('facts').get(`cursor ${course}`),
  ])
  return {
    entries,
    unsent: queued.map((one) => one.id),
    refused: refused.map((one) => one.refusal),
    cursor: cursor ?? null,
  }
}

const apply = async (db: Database, course: string, step: SyncStep): Promise<void> => {
  const tx = db.transaction(ALL, 'readwrite', { durability: 'strict' })
  const outbox = tx.objectStore('outbox')
  const leave = async (id: string) => {
    const key = await outbox.index('id').getKey(id)
    if (key !== undefined) await outbox.delete(key)
  }
  if (step.sendAllAgain === true) {
    const ids = await tx.objectStore('entries').index('course').getAllKeys(course)
    await outbox.clear()
    await Promise.all(ids.map((id) => outbox.add({ id, course })))
  }
  await Promise.all([
    ...(step.pulled ?? []).map((entry) => tx.objectStore('entries').put(entry)),
    ...(step.sent ?? []).map(leave),
    ...(step.refused ?? []).flatMap((refusal) => [
      leave(refusal.id),
      tx.objectStore('refused').put({ id: refusal.id, course, refusal }),
    ]),
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

/** Keeps entries in the browser's own database. Rejects where the browser has none. */
export const idbStore = async (name = 'swardwright'): Promise<EntryStore> => {
  const db = await open(name)
  return {
    load: (course) => load(db, course),
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
      await db.put('facts', course, 'course')
    },
  }
}
