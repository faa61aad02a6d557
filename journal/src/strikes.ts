import { compareRead, type ReadEntry } from './readEntry.ts'

/** A strike that stands. */
export type Strike = {
  /** Id of the `struck` entry. */
  readonly by: string
  readonly reason: string
}

type StruckEntry = Extract<Extract<ReadEntry, { type: 'known' }>['known'], { kind: 'struck' }>
type ReadStrike = { readonly read: ReadEntry; readonly strike: StruckEntry }

const strikeOf = (read: ReadEntry): ReadStrike | null =>
  read.type === 'known' && read.known.kind === 'struck' ? { read, strike: read.known } : null

/** Whether an entry is a strike, so that what it strikes may have to be folded anew. */
export const isStrike = (read: ReadEntry): boolean => read.type === 'known' && read.known.kind === 'struck'

/**
 * Which entries do not count, by id. The latest strike is judged first: a strike that is itself struck by a later one does not stand,
 * and what it struck counts again. A strike strikes another strike only when it comes after it, so two never undo each other.
 * When several strike one entry, the latest gives the reason.
 */
export const strikesOf = (entries: readonly ReadEntry[]): ReadonlyMap<string, Strike> => {
  const strikes = entries.filter(isStrike).flatMap((read) => strikeOf(read) ?? [])
  const strikeById = new Map(strikes.map((found) => [found.strike.id, found]))
  const struck = new Map<string, Strike>()
  for (const { read, strike } of strikes.toSorted((a, b) => compareRead(b.read, a.read))) {
    const { entry, reason } = strike.body
    const target = strikeById.get(entry)
    const comesTooEarly = target !== undefined && compareRead(target.read, read) >= 0
    if (struck.has(strike.id) || comesTooEarly || struck.has(entry)) continue
    struck.set(entry, { by: strike.id, reason })
  }
  return struck
}
