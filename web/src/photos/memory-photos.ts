import {
  SHELF_BYTES,
  newWaiting,
  shelvedToDrop,
  type PhotoBytes,
  type PhotoSize,
  type PhotoStore,
  type Shelved,
  type WaitingPhoto,
} from './photo-store.ts'

/** Keeps photos only while the page is open: for a browser that refuses its database, which the page then says, and for tests. */
export const memoryPhotos = (most: Readonly<Record<PhotoSize, number>> = SHELF_BYTES): PhotoStore => {
  const queue = new Map<string, WaitingPhoto>()
  const shelf = new Map<string, { readonly shelved: Shelved; readonly bytes: PhotoBytes }>()
  const nameOf = (course: string, sha256: string): string => `${course} ${sha256}`
  const put = (shelved: Shelved, bytes: PhotoBytes): void => {
    shelf.set(`${nameOf(shelved.course, shelved.sha256)} ${shelved.size}`, { shelved, bytes })
  }
  const trim = (bounds: Readonly<Record<PhotoSize, number>>): void => {
    const all = [...shelf.values()].map(({ shelved }) => shelved)
    for (const one of shelvedToDrop(all, ({ course, sha256 }) => queue.has(nameOf(course, sha256)), bounds))
      shelf.delete(`${nameOf(one.course, one.sha256)} ${one.size}`)
  }
  return {
    add: async ({ course, body, file, thumb, atMs }, nowMs) => {
      const { sha256 } = body
      put({ course, sha256, size: 'file', bytes: file.length, usedMs: nowMs }, file)
      put({ course, sha256, size: 'thumb', bytes: thumb.length, usedMs: nowMs }, thumb)
      queue.set(
        nameOf(course, sha256),
        newWaiting({ course, sha256, bytes: file.length }, { body, atMs }, nowMs),
      )
    },
    courses: async () => [...new Set([...queue.values()].map(({ course }) => course))],
    waiting: async (course) => [...queue.values()].filter((one) => one.course === course),
    settle: async (course, sha256, change) => {
      const name = nameOf(course, sha256)
      const waits = queue.get(name)
      if (waits === undefined) return
      if (change === null) queue.delete(name)
      else queue.set(name, { ...waits, ...change })
    },
    sendAgain: async (course, nowMs) => {
      for (const { shelved } of shelf.values()) {
        const { sha256, bytes, size } = shelved
        if (shelved.course !== course || size !== 'file' || queue.has(nameOf(course, sha256))) continue
        queue.set(nameOf(course, sha256), newWaiting({ course, sha256, bytes }, null, nowMs))
      }
    },
    read: async (course, sha256, size, nowMs) => {
      const found = shelf.get(`${nameOf(course, sha256)} ${size}`)
      if (found === undefined) return null
      put({ ...found.shelved, usedMs: nowMs }, found.bytes)
      return found.bytes
    },
    keep: async ({ course, sha256, size }, bytes, nowMs) => {
      put({ course, sha256, size, bytes: bytes.length, usedMs: nowMs }, bytes)
      trim(most)
    },
    makeRoom: async () => trim({ file: 0, thumb: 0 }),
  }
}
