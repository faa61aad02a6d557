import { createHash } from 'node:crypto'
import type { BlobStore } from './blobs.ts'

type Held = { bytes: Buffer; whole: boolean }

/** Files in memory. */
export const memoryBlobs = (): BlobStore => {
  const files = new Map<string, Held>()
  const keyOf = (course: string, sha256: string): string => `${course}/${sha256}`
  return {
    state: async (course, sha256) => {
      const held = files.get(keyOf(course, sha256))
      return { received: held?.bytes.length ?? 0, whole: held?.whole ?? false }
    },
    append: async (course, sha256, offset, piece) => {
      const held = files.get(keyOf(course, sha256)) ?? { bytes: Buffer.alloc(0), whole: false }
      if (held.whole || held.bytes.length !== offset) return false
      files.set(keyOf(course, sha256), { bytes: Buffer.concat([held.bytes, piece]), whole: false })
      return true
    },
    finish: async (course, sha256) => {
      const held = files.get(keyOf(course, sha256))
      if (held === undefined) return false
      held.whole = createHash('sha256').update(held.bytes).digest('hex') === sha256
      if (!held.whole) files.delete(keyOf(course, sha256))
      return held.whole
    },
    read: async (course, sha256, from, to) => {
      const held = files.get(keyOf(course, sha256))
      return held?.whole === true ? new Uint8Array(held.bytes.subarray(from, to)) : null
    },
  }
}
