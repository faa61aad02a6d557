import { compareEntries } from './entry.ts'
import type { ReadEntry } from './readEntry.ts'

/** A strike that stands. */
export type Strike = {
  /** Id of the `struck` entry. */
  readonly by: string
  readonly reason: string
}

type StruckEntry = Extract<Extract<ReadEntry, { type: 'known' }>['known'], { kind: 'struck' }>

const struckOf = (read: ReadEntry): StruckEntry | null =>
  read.type === 'known' && read.known.kind === 'struck' ? read.known : null

/** Whether an entry is a strike, so that what it strikes may have to be folded anew. */
export const isStrike = (read: ReadEntry): boolean => struckOf(read) !== null

/**
 * Which entries do not count, by id. The latest strike is judged first: a strike that is itself struck by a later one does not stand,
 * and what it struck counts again. A strike strikes another strike only when it comes after it, so two never undo each other.
 * When several strike one entry, the latest gives the reason.
 */
export const strikesOf = (entries: readonly ReadEntry[]): ReadonlyMap<string, Strike> => {
  const strikes = entries.map(struckOf).filter((strike) => strike !== null)
  const strikeById = new Map(strikes.map((strike) => [strike.id, strike]))
  const struck = new Map<string, Strike>()
  for (const strike of strikes.toSorted((a, b) => compareEntries(b, a))) {
    if (struck.has(strike.id)) continue
    const target = strikeById.get(strike.body.entry)
    if (target !== undefined && compareEntries(target, strike) >= 0) continue
    if (!struck.has(strike.body.entry))
      struck.set(strike.body.entry, { by: strike.id, reason: strike.body.reason })
  }
  return struck
}
