import { createHash } from 'node:crypto'
import { newPart, type BlobState, type BlobStore } from './blobs.ts'

type Held = { bytes: Buffer; whole: boolean }

/** Files in memory. */
export const memoryBlobs = (): BlobStore => {
  const files = new Map<string, Held>()
  const keyOf = (course: string, sha256: string): string => `${course}/${sha256}`
  const heldAt = (course: string, sha256: string): Held =>
    files.get(keyOf(course, sha256)) ?? { bytes: Buffer.alloc(0), whole: false }
  const stateOf = ({ bytes, whole }: Held): BlobState => ({ received: bytes.length, whole })
  return {
    state: async (course, sha256) => stateOf(heldAt(course, sha256)),
    append: async (course, sha256, offset, piece) => {
      const held = heldAt(course, sha256)
      const part = newPart(stateOf(held), offset, piece)
      if (part === null) return false
      files.set(keyOf(course, sha256), { ...held, bytes: Buffer.concat([held.bytes, part]) })
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
