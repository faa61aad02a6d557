import { sha256OfBytes } from '@swardwright/engine'
import type { PhotoBytes } from './photo-store.ts'
import { shrink, type Shrunk } from './shrink.ts'

/** A photo that was made ready and is only in the memory of the page so far. */
export type ReadyPhoto = Shrunk & { readonly sha256: string }

/** SHA-256 of a file. Plain http has no crypto.subtle, whatever the types say: there our own does it, in under a second. */
const hashOf = async (bytes: PhotoBytes): Promise<string> => {
  if (!('subtle' in crypto)) return sha256OfBytes(bytes)
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** Makes a picture ready to be kept; null where the browser can’t read it. */
export const makeReady = async (picked: Blob): Promise<ReadyPhoto | null> => {
  const shrunk = await shrink(picked).catch(() => null)
  return shrunk === null ? null : { ...shrunk, sha256: await hashOf(shrunk.file) }
}
