import { oneAtATime } from '../journal/repeat.ts'
import type { PhotoStore, WaitingPhoto } from './photo-store.ts'
import { sendPhoto, type PutPart } from './send-photo.ts'

const FIRST_WAIT_MS = 5_000
const LONGEST_WAIT_MS = 10 * 60_000

/** After so many tries with another hash at the server’s end somebody is told. */
const DIFFERS_MOST = 3

/** How long to wait after so many tries that came to nothing: each time three times as long. */
export const waitMs = (tries: number): number => Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 3 ** (tries - 1))

/** What the queue works on. */
export type QueueHolder = {
  readonly course: string
  readonly store: PhotoStore
  /** Sends parts of one photo. */
  putFor(sha256: string): PutPart
  nowMs(): number
  /** Calls back after some milliseconds. */
  later(afterMs: number, task: () => void): void
  /** Whether this page deals with the server. */
  isMine(): boolean
  /** Another photo has left the queue, or was refused. */
  changed(): Promise<void>
}

/** Sends the photos that wait. */
export type PhotoQueue = {
  /** Sends what is due. `lineIsBack`: what failed before is due at once. */
  readonly run: (lineIsBack?: boolean) => Promise<void>
}

/** When a photo that failed is due again. */
type Failed = { readonly tries: number; readonly dueMs: number; readonly differs: number }

const REFUSED_DIFFERS = 'What arrives at the server is not what was sent. Take the photo again.'

/**
 * The queue of one course. Photos go one after the other, the least tried first. When one fails it waits, longer each time, and so do the
 * others: it is nearly always the line. How often one was tried is forgotten with the page, so that a page opened anew tries at once.
 */
export const photoQueue = (holder: QueueHolder): PhotoQueue => {
  const failed = new Map<string, Failed>()
  let wakesMs = Number.POSITIVE_INFINITY

  const wakeAt = (dueMs: number): void => {
    if (dueMs >= wakesMs) return
    wakesMs = dueMs
    holder.later(dueMs - holder.nowMs(), () => {
      wakesMs = Number.POSITIVE_INFINITY
      void run()
    })
  }

  const fail = (sha256: string, differs: number): void => {
    const tries = (failed.get(sha256)?.tries ?? 0) + 1
    failed.set(sha256, { tries, dueMs: holder.nowMs() + waitMs(tries), differs })
  }

  const settle = async (sha256: string, refused: string | null): Promise<void> => {
    failed.delete(sha256)
    await holder.store.settle(holder.course, sha256, refused === null ? null : { refused })
    await holder.changed()
  }

  /** True when the next photo may be tried. */
  const sendOne = async ({ sha256, bytes }: WaitingPhoto): Promise<boolean> => {
    const sent = await sendPhoto(bytes, holder.putFor(sha256))
    const differs = failed.get(sha256)?.differs ?? 0
    if (sent.end === 'sent') await settle(sha256, null)
    else if (sent.end === 'refused') await settle(sha256, sent.words)
    else if (sent.end === 'differs' && differs + 1 >= DIFFERS_MOST) await settle(sha256, REFUSED_DIFFERS)
    else fail(sha256, sent.end === 'differs' ? differs + 1 : differs)
    return sent.end !== 'away'
  }

  const due = async (): Promise<readonly WaitingPhoto[]> => {
    const waiting = await holder.store.waiting(holder.course)
    return waiting
      .filter(({ refused, untold, wanted }) => refused === null && untold === null && wanted)
      .toSorted((a, b) => (failed.get(a.sha256)?.tries ?? 0) - (failed.get(b.sha256)?.tries ?? 0))
  }

  const round = async (): Promise<void> => {
    for (;;) {
      if (!holder.isMine()) return
      const waiting = await due()
      const next = waiting.find(({ sha256 }) => (failed.get(sha256)?.dueMs ?? 0) <= holder.nowMs())
      if (next !== undefined && (await sendOne(next))) continue
      const dues = waiting.flatMap(({ sha256 }) => failed.get(sha256)?.dueMs ?? [])
      if (dues.length > 0) wakeAt(Math.max(holder.nowMs(), Math.min(...dues)))
      return
    }
  }
  const runOnce = oneAtATime(round)
  const run = (lineIsBack = false): Promise<void> => {
    if (lineIsBack) for (const [sha256, one] of failed) failed.set(sha256, { ...one, dueMs: 0 })
    return runOnce()
  }
  return { run }
}
