import { PassThrough } from 'node:stream'

/** Milliseconds between signs of life on a silent stream, so that proxies and phones keep it open. */
const HEARTBEAT_MS = 25_000

/** A reader that lets this much pile up is gone; it comes back and pulls. */
const BACKLOG_MAX_BYTES = 64 * 1024

/** Open streams, by course. Lives as long as the server. */
export type LiveHub = {
  /** A new stream of server-sent events for one course. */
  readonly open: (course: string) => PassThrough
  /** Sends an event to one stream. */
  readonly send: (stream: PassThrough, event: string, data: unknown) => void
  /** Sends an event to all streams of a course. */
  readonly tell: (course: string, event: string, data: unknown) => void
  /** Ends all streams. */
  readonly close: () => void
}

/** Makes a hub without streams. */
export const liveHub = (): LiveHub => {
  const streams = new Map<PassThrough, string>()
  const write = (stream: PassThrough, text: string): void => {
    if (stream.writableLength > BACKLOG_MAX_BYTES) stream.destroy()
    else stream.write(text)
  }
  const send = (stream: PassThrough, event: string, data: unknown): void =>
    write(stream, `event: ${event}\ndata: ${JSON.stringify(data)}\n\n`)
  const heartbeat = setInterval(() => {
    for (const stream of streams.keys()) write(stream, ': here\n\n')
  }, HEARTBEAT_MS)
  heartbeat.unref()
  return {
    open: (course) => {
      const stream = new PassThrough()
      streams.set(stream, course)
      stream.once('close', () => streams.delete(stream))
      return stream
    },
    send,
    tell: (course, event, data) => {
      for (const [stream, of] of streams) if (of === course) send(stream, event, data)
    },
    close: () => {
      clearInterval(heartbeat)
      for (const stream of streams.keys()) stream.end()
    },
  }
}
