import { PassThrough } from 'node:stream'
import { cursorText } from '@swardwright/journal'
import type { Access } from './access/access.ts'
import type { StillIn } from './access/stillIn.ts'
import type { JournalStore } from './storage/storage.ts'

/** Milliseconds between signs of life on a silent stream, so that proxies and phones keep it open. */
const HEARTBEAT_MS = 25_000

/** Milliseconds between looks at the journals that somebody listens to, and at who is still let in: other processes may write to both. */
export const LOOK_MS = 1000

/** A reader that lets this much pile up is gone; it comes back and pulls. */
const BACKLOG_MAX_BYTES = 64 * 1024

/** Open streams, by course. Lives as long as the server. */
export type LiveHub = {
  /** A new stream of server-sent events for one course. It ends once its access has. */
  readonly open: (course: string, access: Access) => PassThrough
  /** Tells one stream where the journal ends. */
  readonly send: (stream: PassThrough, cursor: string) => void
  /** Tells all streams of a course where its journal ends, each at most once. */
  readonly tell: (course: string, cursor: string) => void
  /** Ends all streams. */
  readonly close: () => void
}

type Listener = { readonly course: string; readonly access: Access; told: string | null }

/** What a hub looks at. */
export type Looked = {
  readonly journal: Pick<JournalStore, 'end'>
  /** Who is still let in now. */
  readonly stillIn: () => Promise<StillIn>
}

/** Makes a hub without streams. What other processes write is found by looking at the end of each journal that has a listener. */
export const liveHub = ({ journal, stillIn }: Looked, failed: (error: unknown) => void): LiveHub => {
  const streams = new Map<PassThrough, Listener>()
  const write = (stream: PassThrough, text: string): void => {
    if (stream.writableLength > BACKLOG_MAX_BYTES) stream.destroy()
    else stream.write(text)
  }
  const send = (stream: PassThrough, cursor: string): void => {
    const listener = streams.get(stream)
    if (listener === undefined || listener.told === cursor) return
    listener.told = cursor
    write(stream, `event: entries\ndata: ${JSON.stringify({ cursor })}\n\n`)
  }
  const tell = (course: string, cursor: string): void => {
    for (const [stream, listener] of streams) if (listener.course === course) send(stream, cursor)
  }
  const look = async (): Promise<void> => {
    if (streams.size === 0) return
    const isIn = await stillIn()
    for (const [stream, { access }] of streams)
      if (!isIn(access)) {
        streams.delete(stream)
        stream.end()
      }
    for (const course of new Set([...streams.values()].map((listener) => listener.course)))
      tell(course, cursorText(await journal.end(course)))
  }
  let isLooking = false
  const looking = setInterval(() => {
    if (isLooking) return
    isLooking = true
    look()
      .catch(failed)
      .finally(() => {
        isLooking = false
      })
  }, LOOK_MS)
  looking.unref()
  const heartbeat = setInterval(() => {
    for (const stream of streams.keys()) write(stream, ': here\n\n')
  }, HEARTBEAT_MS)
  heartbeat.unref()
  return {
    open: (course, access) => {
      const stream = new PassThrough()
      streams.set(stream, { course, access, told: null })
      stream.once('close', () => streams.delete(stream))
      return stream
    },
    send,
    tell,
    close: () => {
      clearInterval(looking)
      clearInterval(heartbeat)
      for (const stream of streams.keys()) stream.end()
    },
  }
}
