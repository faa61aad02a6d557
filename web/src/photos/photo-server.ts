import { requestFor } from '@swardwright/journal'
import type { PhotoBytes } from './photo-store.ts'
import type { Part, PutAnswer } from './send-photo.ts'

/** A part on the poorest of lines takes this long; what came of it until then is kept by the server. */
const PART_TIME_MS = 90_000

const REFUSED: Readonly<Record<number, string>> = {
  403: 'Whoever uses this device may not send photos. Ask the manager.',
  404: 'The server does not know this course.',
  413: 'It is larger than the server takes.',
}

const numberIn = (value: unknown, name: string): number | null => {
  const found: unknown = typeof value === 'object' && value !== null ? Reflect.get(value, name) : null
  return typeof found === 'number' ? found : null
}

const answerOf = async (response: Response): Promise<PutAnswer> => {
  const { status } = response
  // 401: a log-in has ended; the exchange of entries says so, and what waits goes after the next one.
  if (status >= 500 || [401, 408, 429].includes(status)) return { got: 'away' }
  if (status === 422) return { got: 'differs' }
  const body: unknown = await response.json().catch(() => null)
  if (status === 409) {
    const error: unknown = typeof body === 'object' && body !== null ? Reflect.get(body, 'error') : null
    return { got: 'elsewhere', received: numberIn(error, 'received') ?? 0 }
  }
  if (!response.ok)
    return { got: 'refused', words: REFUSED[status] ?? `The server would not take it (${status}).` }
  const received = numberIn(body, 'received')
  // Something between here and the server has answered in its stead.
  return received === null ? { got: 'away' } : { got: 'part', received, whole: status === 200 }
}

/** Sends a part of a photo, or asks how much of it the server has. */
export const putPart = async (
  place: { readonly course: string; readonly sha256: string },
  file: PhotoBytes,
  part: Part | null,
): Promise<PutAnswer> => {
  const { method, url } = requestFor('putBlob', { params: place })
  const range = part === null ? '*' : `${part.from}-${part.to - 1}`
  try {
    const response = await fetch(url, {
      method,
      headers: { 'content-type': 'image/jpeg', 'content-range': `bytes ${range}/${file.length}` },
      body: part === null ? null : file.subarray(part.from, part.to),
      signal: AbortSignal.timeout(PART_TIME_MS),
    })
    return await answerOf(response)
  } catch {
    return { got: 'away' }
  }
}

/** What became of asking the server for a photo. `notYet`: the phone that took it has not sent it. */
export type Fetched =
  | { readonly got: 'photo'; readonly bytes: PhotoBytes }
  | { readonly got: 'notYet' }
  | { readonly got: 'away' }

/** Gets a photo from the server. */
export const fetchPhoto = async (course: string, sha256: string): Promise<Fetched> => {
  try {
    const response = await fetch(requestFor('getBlob', { params: { course, sha256 } }).url)
    if (response.status === 404) return { got: 'notYet' }
    if (!response.ok) return { got: 'away' }
    return { got: 'photo', bytes: new Uint8Array(await response.arrayBuffer()) }
  } catch {
    return { got: 'away' }
  }
}
