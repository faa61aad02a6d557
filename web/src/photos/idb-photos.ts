import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import {
  newWaiting,
  SHELF_BYTES,
  USED_GRAIN_MS,
  shelvedToDrop,
  type NewPhoto,
  type PhotoBytes,
  type PhotoSize,
  type PhotoStore,
  type Shelved,
  type WaitingPhoto,
} from './photo-store.ts'

interface Shape extends DBSchema {
  queue: { key: [course: string, sha256: string]; value: WaitingPhoto; indexes: { course: string } }
  shelf: { key: [course: string, sha256: string, size: PhotoSize]; value: Shelved }
  /** Apart from the shelf, so that weighing it reads no photo. Plain buffers: some browsers lose blobs kept in a database. */
  bytes: { key: [course: string, sha256: string, size: PhotoSize]; value: ArrayBuffer }
}

type Database = IDBPDatabase<Shape>

const ALL = ['queue', 'shelf', 'bytes'] as const
const STRICT = { durability: 'strict' } as const

const open = (name: string): Promise<Database> =>
  openDB<Shape>(name, 1, {
    upgrade(db) {
      db.createObjectStore('queue', { keyPath: ['course', 'sha256'] }).createIndex('course', 'course')
      db.createObjectStore('shelf', { keyPath: ['course', 'sha256', 'size'] })
      db.createObjectStore('bytes')
    },
  })

const bufferOf = (bytes: PhotoBytes): ArrayBuffer => bytes.slice().buffer

const add = async (db: Database, photo: NewPhoto, nowMs: number): Promise<void> => {
  const { course, body, file, thumb, atMs } = photo
  const { sha256 } = body
  const tx = db.transaction(ALL, 'readwrite', STRICT)
  const put = (size: PhotoSize, bytes: PhotoBytes) => [
    tx.objectStore('bytes').put(bufferOf(bytes), [course, sha256, size]),
    tx.objectStore('shelf').put({ course, sha256, size, bytes: bytes.length, usedMs: nowMs }),
  ]
  const waits = newWaiting({ course, sha256, bytes: file.length }, { body, atMs }, nowMs)
  await Promise.all([
    ...put('file', file),
    ...put('thumb', thumb),
    tx.objectStore('queue').put(waits),
    tx.done,
  ])
}

const settle = async (
  db: Database,
  key: [string, string],
  change: Parameters<PhotoStore['settle']>[2],
): Promise<void> => {
  const tx = db.transaction('queue', 'readwrite', STRICT)
  const waits = await tx.store.get(key)
  if (waits !== undefined)
    await (change === null ? tx.store.delete(key) : tx.store.put({ ...waits, ...change }))
  await tx.done
}

const sendAgain = async (db: Database, course: string, nowMs: number): Promise<void> => {
  const tx = db.transaction(['queue', 'shelf'], 'readwrite', STRICT)
  const queue = tx.objectStore('queue')
  const shelf = await tx.objectStore('shelf').getAll()
  for (const { sha256, bytes } of shelf.filter((one) => one.course === course && one.size === 'file'))
    if ((await queue.getKey([course, sha256])) === undefined)
      await queue.put(newWaiting({ course, sha256, bytes }, null, nowMs))
  await tx.done
}

const read = async (
  db: Database,
  key: [string, string, PhotoSize],
  nowMs: number,
): Promise<PhotoBytes | null> => {
  const [bytes, shelved] = await Promise.all([db.get('bytes', key), db.get('shelf', key)])
  if (shelved !== undefined && nowMs - shelved.usedMs > USED_GRAIN_MS)
    await db.put('shelf', { ...shelved, usedMs: nowMs })
  return bytes === undefined ? null : new Uint8Array(bytes)
}

/** Drops what passes the bounds. A photo that waits is held. */
const trim = async (db: Database, most: Readonly<Record<PhotoSize, number>>): Promise<void> => {
  const tx = db.transaction(ALL, 'readwrite')
  const queued = new Set((await tx.objectStore('queue').getAllKeys()).map((key) => key.join(' ')))
  const shelf = await tx.objectStore('shelf').getAll()
  const dropped = shelvedToDrop(shelf, ({ course, sha256 }) => queued.has(`${course} ${sha256}`), most)
  await Promise.all([
    ...dropped.flatMap(({ course, sha256, size }) => [
      tx.objectStore('bytes').delete([course, sha256, size]),
      tx.objectStore('shelf').delete([course, sha256, size]),
    ]),
    tx.done,
  ])
}

/**
 * Keeps photos in a database of the browser, apart from the journal's: neither waits for the other, and a photo too many never stops an
 * entry. Rejects where the browser has none.
 */
export const idbPhotos = async (name = 'swardwright-photos'): Promise<PhotoStore> => {
  const db = await open(name)
  return {
    add: (photo, nowMs) => add(db, photo, nowMs),
    courses: async () => [...new Set((await db.getAllKeys('queue')).map(([course]) => course))],
    waiting: async (course) =>
      (await db.getAllFromIndex('queue', 'course', course)).toSorted((a, b) => a.keptMs - b.keptMs),
    settle: (course, sha256, change) => settle(db, [course, sha256], change),
    sendAgain: (course, nowMs) => sendAgain(db, course, nowMs),
    read: (course, sha256, size, nowMs) => read(db, [course, sha256, size], nowMs),
    keep: async ({ course, sha256, size }, bytes, nowMs) => {
      const tx = db.transaction(['shelf', 'bytes'], 'readwrite')
      await Promise.all([
        tx.objectStore('bytes').put(bufferOf(bytes), [course, sha256, size]),
        tx.objectStore('shelf').put({ course, sha256, size, bytes: bytes.length, usedMs: nowMs }),
        tx.done,
      ])
      await trim(db, SHELF_BYTES)
    },
    makeRoom: () => trim(db, { file: 0, thumb: 0 }),
  }
}
