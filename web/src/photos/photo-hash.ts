import { sha256OfBytes } from '@swardwright/engine'
import type { PhotoBytes } from './photo-store.ts'

/** SHA-256 of a file as 64 hexadecimal digits. Plain http has no crypto.subtle, whatever the types say: there our own does it, in a tenth of a second. */
export const photoHash = async (bytes: PhotoBytes): Promise<string> => {
  if (!('subtle' in crypto)) return sha256OfBytes(bytes)
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
