import type { Entry, Refusal, StoredEntry } from '@swardwright/journal'
import type { EntryStore } from '../entry-store.ts'
import { memoryStore } from '../memory-store.ts'
import type { CallServer } from '../server.ts'
import type { SyncHolder } from '../sync.ts'

/** A note of the course of the tests; its number makes its id and its second. */
export const noteOf = (n: number, words = 'wet hollow'): Entry => ({
  id: `0198e2f4-6a00-7cc3-98c4-${String(n).padStart(12, '0')}`,
  course: 'ossenby',
  device: 'device a',
  author: 'Course manager',
  at: `2026-08-10T06:00:${String(n % 60).padStart(2, '0')}.000Z`,
  recordedAt: '2026-08-10T06:00:00.000Z',
  kind: 'noteWritten',
  version: 1,
  body: { words },
})

const PAGE = 100

/** A server by the rules J25 to J28: it keeps what it is sent once, refuses what it is told to, can be away, and can be put back from a backup. */
export const standInServer = (
  options: { readonly refuse?: readonly string[]; readonly page?: number } = {},
) => {
  let kept: readonly StoredEntry[] = []
  let taken = 0
  let away = false
  const pushes: (readonly Entry[])[] = []
  const take = (sent: Entry): Refusal | null => {
    if (options.refuse?.includes(sent.id) === true) return { id: sent.id, why: 'not-allowed' }
    if (!kept.some((one) => one.id === sent.id)) {
      taken += 1
      const receivedAt = new Date(Date.UTC(2026, 7, 20) + taken).toISOString()
      kept = [...kept, { ...sent, seq: kept.length + 1, receivedAt }]
    }
    return null
  }
  /** A cursor carries the id of the entry that it stands behind, and when that was taken in. */
  const cursorAt = (count: number): string =>
    count === 0 ? '0' : `${count} ${kept[count - 1]?.id} ${kept[count - 1]?.receivedAt}`
  const countOf = (cursor: string): number => Number(cursor.split(' ')[0])
  const holds = (cursor: string): boolean => cursorAt(countOf(cursor)) === cursor
  const push = (entries: readonly Entry[]) => {
    const refused = entries.flatMap((one) => take(one) ?? [])
    const gone = new Set(refused.map((one) => one.id))
    return {
      accepted: entries.map(({ id }) => id).filter((id) => !gone.has(id)),
      refused,
      cursor: cursorAt(kept.length),
    }
  }
  const answer = (name: string, args: { body?: unknown; query?: unknown }): unknown => {
    if (name === 'pushEntries') {
      const { entries } = args.body as { entries: readonly Entry[] }
      pushes.push(entries)
      return push(entries)
    }
    const { after, seen } = args.query as { after: string; seen: string }
    const reset = !holds(after) || !holds(seen)
    const from = reset ? 0 : countOf(after)
    const to = Math.min(kept.length, from + (options.page ?? PAGE))
    return { entries: kept.slice(from, to), cursor: cursorAt(to), more: to < kept.length, reset }
  }
  const call = ((name: string, args: { body?: unknown; query?: unknown }) =>
    Promise.resolve(
      away ? { ok: false, why: 'away' } : { ok: true, value: answer(name, args) },
    )) as CallServer
  return {
    call,
    kept: () => kept.map((one) => one.id),
    goAway: (gone: boolean) => {
      away = gone
    },
    putBack: (count: number) => {
      kept = kept.slice(0, count)
    },
    /** Delivers a push of before once more, as a line that was slow does. */
    deliverAgain: (nth: number) => {
      const old = pushes[nth % Math.max(1, pushes.length)]
      if (old !== undefined) push(old)
    },
  }
}

/** A device with its store, as the app holds it. */
export const standInDevice = async (
  call: CallServer,
  entries: readonly Entry[],
  as: { readonly author?: string; readonly mayHandOn?: boolean } = {},
) => {
  const store: EntryStore = memoryStore()
  for (const one of entries) await store.add(one)
  const known = new Map(entries.map((one) => [one.id, one]))
  let unsent = entries.map((one) => one.id)
  let cursor: string | null = null
  let seen: string | null = null
  const refused: Refusal[] = []
  const ahead: number[] = []
  const holder: SyncHolder = {
    course: 'ossenby',
    store,
    call,
    device: 'device a',
    clockAhead: (aheadMs) => {
      ahead.push(aheadMs)
    },
    unsent: () => unsent.flatMap((id) => known.get(id) ?? []),
    cursor: () => cursor,
    arrived: (fresh, next) => {
      cursor = next
      for (const one of fresh) known.set(one.id, one)
    },
    left: (sent, fresh) => {
      unsent = unsent.filter((id) => !sent.includes(id) && !fresh.some((one) => one.id === id))
      refused.push(...fresh)
    },
    queuedAgain: async () => {
      unsent = [...(await store.load('ossenby', new Set())).unsent]
    },
    seen: () => seen,
    saw: (told) => {
      seen = told
    },
    nowMs: () => Date.UTC(2026, 7, 10, 6),
    author: () => as.author ?? null,
    mayHandOn: () => as.mayHandOn ?? false,
  }
  const record = async (one: Entry): Promise<void> => {
    await store.add(one)
    known.set(one.id, one)
    unsent.push(one.id)
  }
  /** Starts the page anew: what is known is what the store has. */
  const restart = async (): Promise<void> => {
    const kept = await store.load('ossenby', new Set())
    known.clear()
    for (const one of kept.entries) known.set(one.id, one)
    unsent = [...kept.unsent]
    cursor = kept.cursor
    seen = kept.seen
  }
  return { holder, store, record, restart, known: () => [...known.keys()].sort(), refused, ahead }
}
