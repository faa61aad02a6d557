import { fail, ok, type Result } from '@swardwright/engine'
import { BLOB_MAX_BYTES } from '@swardwright/journal'
import type { ApiError } from '../errors.ts'
import type { BlobStore } from '../storage/blobs.ts'
import { courseOf, type Context } from './context.ts'
import type { Handler } from './registrar.ts'

/** What is kept at once while a photo comes in: a line that breaks costs no more than this. */
const PIECE_BYTES = 256 * 1024

type Place = { readonly course: string; readonly sha256: string }

/** Where a body belongs: its first byte and the length of the whole file; `null` from asks only how much is here. */
type Part = { readonly from: number | null; readonly total: number | null }

const partOf = (header: string | undefined): Result<Part, ApiError> => {
  if (header === undefined) return ok({ from: 0, total: null })
  const [, fromText, toText, totalText] =
    /^bytes (?:(\d{1,12})-(\d{1,12})|\*)\/(\d{1,12})$/u.exec(header) ?? []
  const [from, to, total] = [fromText, toText, totalText].map((text) =>
    text === undefined ? null : Number(text),
  )
  const isRange = total != null && (from == null || to == null || (from <= to && to < total))
  return isRange
    ? ok({ from: from ?? null, total })
    : fail({
        type: 'badRequest',
        where: 'header',
        field: 'Content-Range',
        expected: 'bytes FROM-TO/TOTAL with FROM at most TO and TO below TOTAL, or bytes */TOTAL',
      })
}

/** Whether a body came to its proper end. */
type Taken = { readonly isBroken: boolean }

/** The next of what comes in; `broken` when the line breaks. What came before is then kept, and the sender asks how far it got. */
const nextOf = async (
  body: AsyncIterator<Uint8Array, unknown>,
): Promise<IteratorResult<Uint8Array, unknown> | 'broken'> => {
  try {
    return await body.next()
  } catch {
    return 'broken'
  }
}

/** Keeps a body piece by piece as it comes, of which what is here already costs nothing. */
const takeIn = async (
  blobs: BlobStore,
  { course, sha256 }: Place,
  { from, body }: { readonly from: number; readonly body: AsyncIterable<Uint8Array> },
): Promise<Result<Taken, ApiError>> => {
  let reached = from
  let waiting: Uint8Array[] = []
  let waitingBytes = 0
  const keep = async (): Promise<boolean> => {
    const piece = Buffer.concat(waiting)
    waiting = []
    waitingBytes = 0
    const isKept = piece.length === 0 || (await blobs.append(course, sha256, reached, piece))
    reached += piece.length
    return isKept
  }
  // Where it was dropped meanwhile, since somebody else had sent bytes of another file under this name.
  const elsewhere = async () =>
    fail({ type: 'wrongOffset' as const, received: (await blobs.state(course, sha256)).received })
  const pieces = body[Symbol.asyncIterator]()
  let next = await nextOf(pieces)
  while (next !== 'broken' && next.done !== true) {
    waiting.push(next.value)
    waitingBytes += next.value.length
    if (reached + waitingBytes > BLOB_MAX_BYTES) return fail({ type: 'tooLarge', maxBytes: BLOB_MAX_BYTES })
    if (waitingBytes >= PIECE_BYTES && !(await keep())) return elsewhere()
    next = await nextOf(pieces)
  }
  return (await keep()) ? ok({ isBroken: next === 'broken' }) : elsewhere()
}

/** Takes in a photo, whole or in pieces. */
export const putBlob =
  (context: Context): Handler<'putBlob'> =>
  async ({ params, http }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const { blobs } = context.storage
    const part = partOf(http.header('content-range'))
    if (!part.ok) return part
    const { from, total } = part.value
    if ((total ?? 0) > BLOB_MAX_BYTES) return fail({ type: 'tooLarge', maxBytes: BLOB_MAX_BYTES })
    const before = await blobs.state(params.course, params.sha256)
    const told = (received: number, whole: boolean) => {
      if (received > 0) http.set('Range', `bytes=0-${received - 1}`)
      http.status(whole ? 200 : 202)
      return ok({ received, whole })
    }
    if (before.whole) return told(before.received, true)
    const finish = async (reached: number) =>
      (await blobs.finish(params.course, params.sha256))
        ? told(reached, true)
        : fail({ type: 'hashDiffers' as const, sha256: params.sha256 })
    // All bytes may be here and the file not whole yet: the server went down between its last piece and its end.
    if (from === null)
      return before.received > 0 && before.received >= (total ?? 0)
        ? finish(before.received)
        : told(before.received, false)
    if (from > before.received) return fail({ type: 'wrongOffset', received: before.received })
    const taken = await takeIn(blobs, params, { from, body: http.body })
    if (!taken.ok) return taken
    const { received, whole } = await blobs.state(params.course, params.sha256)
    if (whole) return told(received, true)
    return taken.value.isBroken || received < (total ?? 0) ? told(received, false) : finish(received)
  }

/** Whether a `Range` header asks for one part. Another unit must be, and several parts may be, answered with the whole (RFC 9110, 14.2). */
const asksForPart = (header: string | undefined): header is string =>
  header !== undefined && header.startsWith('bytes=') && !header.includes(',')

/** `bytes=FROM-TO`, `bytes=FROM-` or `bytes=-LAST` of a file of that length; null where it asks for nothing that is there. */
const rangeOf = (header: string, length: number): { readonly from: number; readonly to: number } | null => {
  const match = /^bytes=(\d{0,12})-(\d{0,12})$/u.exec(header)
  if (match === null || (match[1] === '' && match[2] === '')) return null
  const from = match[1] === '' ? Math.max(0, length - Number(match[2])) : Number(match[1])
  const to = match[1] === '' || match[2] === '' ? length : Math.min(length, Number(match[2]) + 1)
  return from < to ? { from, to } : null
}

/** The media type that the first bytes say (JPEG, PNG, WebP); anything else is only bytes, so that no page is ever made of it. */
const mediaType = (start: Uint8Array): string => {
  const text = Buffer.from(start).toString('latin1')
  if (text.startsWith('\u00ff\u00d8\u00ff')) return 'image/jpeg'
  if (text.startsWith('\u0089PNG')) return 'image/png'
  return text.startsWith('RIFF') && text.slice(8, 12) === 'WEBP' ? 'image/webp' : 'application/octet-stream'
}

/** Gives a photo, or a part of it. It never changes under its name, so browsers keep it. */
export const getBlob =
  (context: Context): Handler<'getBlob'> =>
  async ({ params, http }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const { blobs } = context.storage
    const { received: length, whole } = await blobs.state(params.course, params.sha256)
    if (!whole) return fail({ type: 'blobUnknown', sha256: params.sha256 })
    const header = http.header('range')
    const isPart = asksForPart(header)
    const range = isPart ? rangeOf(header, length) : { from: 0, to: length }
    if (range === null) return fail({ type: 'rangeUnknown', length })
    const { from, to } = range
    const bytes = await blobs.read(params.course, params.sha256, from, to)
    const start = await blobs.read(params.course, params.sha256, 0, 12)
    if (bytes === null || start === null) return fail({ type: 'blobUnknown', sha256: params.sha256 })
    if (isPart) http.status(206)
    if (isPart) http.set('Content-Range', `bytes ${from}-${to - 1}/${length}`)
    http.set('Accept-Ranges', 'bytes')
    http.set('Content-Type', mediaType(start))
    http.set('Cache-Control', 'private, max-age=31536000, immutable')
    return ok(bytes)
  }
