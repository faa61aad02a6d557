import { compareRead, type ReadEntry } from './readEntry.ts'

/** A strike that stands. */
export type Strike = {
  /** Id of the `struck` entry. */
  readonly by: string
  readonly reason: string
}

type KnownRead = Extract<ReadEntry, { type: 'known' }>

/** A strike as it was read. */
export type ReadStrike = KnownRead & { readonly known: Extract<KnownRead['known'], { kind: 'struck' }> }

/** Whether an entry is a strike, so that what it strikes may have to be folded anew. */
export const isStrike = (read: ReadEntry): read is ReadStrike =>
  read.type === 'known' && read.known.kind === 'struck'

/**
 * Which entries do not count, by id, as these strikes say. The latest strike is judged first: a strike that is itself struck by a later one
 * does not stand, and what it struck counts again. A strike strikes another strike only when it comes after it, so two never undo each other.
 * When several strike one entry, the latest gives the reason.
 */
export const strikesOf = (strikes: readonly ReadStrike[]): ReadonlyMap<string, Strike> => {
  const strikeById = new Map(strikes.map((strike) => [strike.entry.id, strike]))
  const struck = new Map<string, Strike>()
  for (const strike of strikes.toSorted((a, b) => compareRead(b, a))) {
    const { id } = strike.entry
    const { entry, reason } = strike.known.body
    const target = strikeById.get(entry)
    const comesTooEarly = target !== undefined && compareRead(target, strike) >= 0
    if (struck.has(id) || comesTooEarly || struck.has(entry)) continue
    struck.set(entry, { by: id, reason })
  }
  return struck
}
