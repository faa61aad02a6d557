import { assert } from './assert.ts'
import type { Entry } from './entry.ts'
import { evolve, openDraft } from './evolve.ts'
import { NO_FACTS, type Facts } from './facts.ts'
import { compareRead, readEntry, type ReadEntry } from './readEntry.ts'
import { isStrike, strikesOf, type Strike } from './strikes.ts'

/** Everything that a device knows of one course: its entries, and what they say. Never changed; a fold returns a new one. */
export type JournalState = {
  /** Every entry, struck and unknown ones too, in the order of the fold. */
  readonly entries: readonly ReadEntry[]
  /** Entries that do not count, by id, with the strike that says so. */
  readonly struck: ReadonlyMap<string, Strike>
  /** What the entries that count say. */
  readonly facts: Facts
}

/** A journal without entries. */
export const initialState: JournalState = { entries: [], struck: new Map(), facts: NO_FACTS }

/** Entries of `fresh` that the journal does not have, each once, in order and read. Of two with one id the first is taken. */
const unseen = (known: readonly ReadEntry[], fresh: readonly Entry[]): readonly ReadEntry[] => {
  const seen = new Set(known.map((read) => read.entry.id))
  const taken: Entry[] = []
  for (const entry of fresh) {
    if (seen.has(entry.id)) continue
    seen.add(entry.id)
    taken.push(entry)
  }
  return taken.map((entry) => readEntry(entry)).sort(compareRead)
}

/** Two ordered lists as one. */
const merged = (a: readonly ReadEntry[], b: readonly ReadEntry[]): readonly ReadEntry[] => {
  const all: ReadEntry[] = []
  let next = 0
  for (const read of a) {
    for (let other = b[next]; other !== undefined && compareRead(other, read) < 0; other = b[next]) {
      all.push(other)
      next += 1
    }
    all.push(read)
  }
  return [...all, ...b.slice(next)]
}

const factsAfter = (
  facts: Facts,
  entries: readonly ReadEntry[],
  struck: ReadonlyMap<string, Strike>,
): Facts => {
  const draft = openDraft(facts)
  for (const read of entries)
    if (read.type === 'known' && !struck.has(read.entry.id)) evolve(draft, read.known)
  return draft
}

/** True when the new entries lie behind all others and strike nothing: then they are simply taken in on top. */
const isOnTop = (known: readonly ReadEntry[], fresh: readonly ReadEntry[]): boolean => {
  const last = known.at(-1)
  const first = fresh[0]
  return first !== undefined && (last === undefined || compareRead(last, first) < 0) && !fresh.some(isStrike)
}

/**
 * The state after some more entries, in whatever order and however often they come: the same set of entries gives the same state
 * on every device (rules J4 to J8 of docs/journal.md). Entries that come late are folded in at their place.
 * Throws when an entry belongs to another course than the rest, which is a bug of the caller.
 */
export const fold = (state: JournalState, entries: readonly Entry[]): JournalState => {
  const fresh = unseen(state.entries, entries)
  const first = state.entries[0] ?? fresh[0]
  if (fresh.length === 0 || first === undefined) return state
  assert(
    fresh.every((read) => read.entry.course === first.entry.course),
    'a fold holds the entries of one course',
  )
  if (isOnTop(state.entries, fresh))
    return {
      entries: [...state.entries, ...fresh],
      struck: state.struck,
      facts: factsAfter(state.facts, fresh, state.struck),
    }
  const all = merged(state.entries, fresh)
  const struck = strikesOf(all)
  return { entries: all, struck, facts: factsAfter(NO_FACTS, all, struck) }
}
