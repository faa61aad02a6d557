import type { Entry } from '@swardwright/journal'
import type { EntryStore } from './entry-store.ts'
import type { CallServer } from './server.ts'
import { push, type LinkState } from './sync.ts'

/** Who sends, and from where. */
export type WaitingSender = {
  readonly store: EntryStore
  readonly call: CallServer
  readonly device: string
  readonly nowMs: () => number
  readonly author: () => string | null
  readonly mayHandOn: () => boolean
}

/**
 * Sends what waits of a course that is not open on this page, and reads nothing. Another page may have it open and send the same: the server
 * keeps it once (rule J25).
 */
export const sendWaiting = async (course: string, sender: WaitingSender): Promise<LinkState> => {
  const { store, call, device } = sender
  const kept = await store.load(course, new Set())
  const byId = new Map<string, Entry>(kept.entries.map((entry) => [entry.id, entry]))
  let waiting = kept.unsent
  return push({
    course,
    store,
    call,
    device,
    unsent: () => waiting.flatMap((id) => byId.get(id) ?? []),
    saw: () => undefined,
    left: (sent, refused) => {
      const gone = new Set([...sent, ...refused.map(({ id }) => id)])
      waiting = waiting.filter((id) => !gone.has(id))
    },
    nowMs: sender.nowMs,
    author: sender.author,
    mayHandOn: sender.mayHandOn,
  })
}
