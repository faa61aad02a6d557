import { createHash } from 'node:crypto'
import { mkdir, open, rename, rm, stat, type FileHandle } from 'node:fs/promises'
import { join } from 'node:path'
import { newPart, type BlobStore } from './blobs.ts'

const sizeOf = async (path: string): Promise<number | null> => {
  try {
    return (await stat(path)).size
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null
    throw error
  }
}

const withFile = async <T>(
  path: string,
  flags: string,
  work: (file: FileHandle) => Promise<T>,
): Promise<T> => {
  const file = await open(path, flags)
  try {
    return await work(file)
  } finally {
    await file.close()
  }
}

const hashOf = (path: string): Promise<string> =>
  withFile(path, 'r', async (file) => {
    const hash = createHash('sha256')
    for await (const piece of file.createReadStream({ autoClose: false })) hash.update(piece)
    return hash.digest('hex')
  })

/** Forces a folder's list of names to the disk, so that a renamed file is found after a power cut. Windows can't, and needs it less. */
const syncFolder = async (folder: string): Promise<void> => {
  if (process.platform !== 'win32') await withFile(folder, 'r', (handle) => handle.sync())
}

const bytesOf = (path: string, from: number, to: number): Promise<Uint8Array> =>
  withFile(path, 'r', async (file) => {
    const { size } = await file.stat()
    const bytes = new Uint8Array(Math.max(0, Math.min(to, size) - from))
    await file.read(bytes, 0, bytes.length, from)
    return bytes
  })

/**
 * Files in a folder: one folder a course, one file a photo, and `.part` behind its name while it comes in. Ids of courses hold no slash
 * and are no path; one that begins with a dot is written with an underscore before it.
 */
export const folderBlobs = (root: string): BlobStore => {
  const folderOf = (course: string): string => join(root, `_${course}`)
  const wholeOf = (course: string, sha256: string): string => join(folderOf(course), sha256)
  const partOf = (course: string, sha256: string): string => `${wholeOf(course, sha256)}.part`
  // One piece at a time for each file: two that come at once see each other's length.
  const queues = new Map<string, Promise<unknown>>()
  const inTurn = <T>(path: string, work: () => Promise<T>): Promise<T> => {
    const next = (queues.get(path) ?? Promise.resolve()).then(work, work)
    queues.set(path, next)
    const forget = (): void => {
      if (queues.get(path) === next) queues.delete(path)
    }
    next.then(forget, forget)
    return next
  }
  const state: BlobStore['state'] = async (course, sha256) => {
    const whole = await sizeOf(wholeOf(course, sha256))
    if (whole !== null) return { received: whole, whole: true }
    return { received: (await sizeOf(partOf(course, sha256))) ?? 0, whole: false }
  }
  return {
    state,
    append: (course, sha256, offset, piece) =>
      inTurn(partOf(course, sha256), async () => {
        const part = newPart(await state(course, sha256), offset, piece)
        if (part === null || part.length === 0) return part !== null
        await mkdir(folderOf(course), { recursive: true })
        await withFile(partOf(course, sha256), 'a', (file) => file.appendFile(part))
        return true
      }),
    finish: (course, sha256) =>
      inTurn(partOf(course, sha256), async () => {
        const part = partOf(course, sha256)
        if ((await state(course, sha256)).whole) return true
        if ((await sizeOf(part)) === null) return false
        if ((await hashOf(part)) !== sha256) {
          await rm(part, { force: true })
          return false
        }
        await withFile(part, 'r+', (file) => file.sync())
        await rename(part, wholeOf(course, sha256))
        await syncFolder(folderOf(course))
        return true
      }),
    read: async (course, sha256, from, to) => {
      const path = wholeOf(course, sha256)
      return (await sizeOf(path)) === null ? null : bytesOf(path, from, to)
    },
  }
}
