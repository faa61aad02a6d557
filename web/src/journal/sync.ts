import { ENTRIES_MAX, momentFromMs, type Entry, type Refusal, type StoredEntry } from '@swardwright/journal'
import type { EntryStore } from './entry-store.ts'
import type { CallServer } from './server.ts'

/** JSON characters in one push, at most: far under what a server takes, and enough for a course with its outlines. */
const PUSH_LENGTH = 2_000_000

/** How the last exchange with the server ended. `refused`: the server is there but will not deal with this device. */
export type LinkState = 'away' | 'level' | 'refused'

/** What the exchange works on. The holder keeps it; `sync` reads it fresh each time, since entries are added meanwhile. */
export type SyncHolder = {
  readonly course: string
  readonly store: EntryStore
  readonly call: CallServer
  /** The name of this device, under which it made its entries. */
  readonly device: string
  /** Entries that the server lacks, in order. */
  unsent(): readonly Entry[]
  cursor(): string | null
  /** The furthest cursor that the server has told. */
  seen(): string | null
  /** The server told this cursor; the store has kept it. */
  saw(cursor: string): void
  /** Called after the store has kept them. */
  arrived(entries: readonly Entry[], cursor: string): void
  left(sent: readonly string[], refused: readonly Refusal[]): void
  /** Entries are queued again; resolves once `unsent` has them. */
  queuedAgain(): Promise<void>
  /** The server found the clock of this device so far ahead of its own, ms; behind is less than nothing. */
  clockAhead(aheadMs: number): void
  /** The clock of this device, epoch milliseconds. */
  nowMs(): number
  /** The name under which alone this device may write; null where it may write under any. */
  author(): string | null
  /** True where this device may hand on what others wrote, should the server have lost it. */
  mayHandOn(): boolean
}

const envelope = ({ seq: _seq, receivedAt: _receivedAt, skewMs: _skewMs, ...entry }: StoredEntry): Entry =>
  entry

/** As many of the first entries as one push holds, at least one. */
export const firstBatch = (entries: readonly Entry[]): readonly Entry[] => {
  let length = 0
  const end = entries.findIndex((entry, index) => {
    length += JSON.stringify(entry).length
    return index > 0 && (length > PUSH_LENGTH || index >= ENTRIES_MAX)
  })
  return end === -1 ? entries : entries.slice(0, end)
}

/** Sends what is unsent, in parts that a server takes. */
export const push = async (
  holder: Pick<
    SyncHolder,
    'course' | 'store' | 'call' | 'device' | 'unsent' | 'saw' | 'left' | 'nowMs' | 'author' | 'mayHandOn'
  >,
): Promise<LinkState> => {
  const { course, store, call } = holder
  const isOthers = (entry: Entry): boolean => holder.author() !== null && entry.author !== holder.author()
  for (;;) {
    const waiting = holder.unsent()
    const [first] = waiting
    if (first === undefined) return 'level'
    const handedOn = isOthers(first)
    const batch = firstBatch(waiting.filter((entry) => isOthers(entry) === handedOn))
    const answer = await call('pushEntries', {
      params: { course },
      body: {
        entries: [...batch],
        sentAt: momentFromMs(holder.nowMs()),
        ...(handedOn && holder.mayHandOn() ? { handedOn } : {}),
      },
    })
    if (!answer.ok) return answer.why
    const { accepted, refused, cursor } = answer.value
    if (accepted.length + refused.length === 0) return 'refused'
    await store.apply(course, { sent: accepted, refused, seen: cursor })
    holder.left(accepted, refused)
    holder.saw(cursor)
  }
}

const pull = async (holder: SyncHolder): Promise<LinkState> => {
  const { course, store, call } = holder
  for (;;) {
    const answer = await call('pullEntries', {
      params: { course },
      query: { after: holder.cursor() ?? '0', seen: holder.seen() ?? '0' },
    })
    if (!answer.ok) return answer.why
    const { cursor, more, reset } = answer.value
    if (reset) {
      const author = holder.author()
      const sendAgain =
        author === null || holder.mayHandOn() ? ({ of: 'all' } as const) : ({ of: 'author', author } as const)
      await store.apply(course, { sendAgain, seen: cursor })
      holder.saw(cursor)
      await holder.queuedAgain()
    }
    const skewed = answer.value.entries.findLast((entry) => entry.device === holder.device)
    if (skewed?.skewMs !== undefined) holder.clockAhead(skewed.skewMs)
    const pulled = answer.value.entries.map(envelope)
    // Read to the end: all that any answer told of is read back, or was found lost above.
    const seen = more ? {} : { seen: cursor }
    await store.apply(course, { pulled, cursor, ...seen })
    holder.arrived(pulled, cursor)
    if (more) continue
    holder.saw(cursor)
    return 'level'
  }
}

/**
 * One exchange: send what is unsent, then read what is new; after a reset, send again. Where something that was confirmed has not been read
 * back yet, it is read back first: the answer to another push would hide that a server put back from a backup has lost it.
 */
export const exchange = async (holder: SyncHolder): Promise<LinkState> => {
  if (holder.seen() !== holder.cursor()) {
    const readBack = await pull(holder)
    if (readBack !== 'level') return readBack
  }
  const pushed = await push(holder)
  if (pushed !== 'level') return pushed
  const pulled = await pull(holder)
  return pulled === 'level' && holder.unsent().length > 0 ? push(holder) : pulled
}
