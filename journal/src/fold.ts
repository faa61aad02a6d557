import { assert } from './assert.ts'
import type { Entry } from './entry.ts'
import { evolve, openDraft } from './evolve.ts'
import { NO_FACTS, type Facts } from './facts.ts'
import { KINDS } from './kinds.ts'
import { compareRead, readingBy, type ReadEntry } from './readEntry.ts'
import { isStrike, strikesOf, type ReadStrike, type Strike } from './strikes.ts'

/** A place in the order of the fold. */
export type Place = { readonly atMs: number; readonly id: string }

/** Entries that a snapshot stands for: they are counted in the facts, and not at hand. */
export type Before = {
  readonly ids: ReadonlySet<string>
  /** The last of them. */
  readonly end: Place
}

/** Everything that a device knows of one course: its entries, and what they say. Never changed; a fold returns a new one. */
export type JournalState = {
  /** Every entry at hand, struck and unknown ones too, in the order of the fold. */
  readonly entries: readonly ReadEntry[]
  /** What a snapshot stands for; null where every entry is at hand. */
  readonly before: Before | null
  /** Entries that do not count, by id, with the strike that says so. */
  readonly struck: ReadonlyMap<string, Strike>
  /** What the entries that count say. */
  readonly facts: Facts
}

/** A journal without entries. */
export const initialState: JournalState = { entries: [], before: null, struck: new Map(), facts: NO_FACTS }

/**
 * The ids of the entries of a state. The set moves on to the state that is folded next, so that one more entry does not cost a walk over
 * all; whoever folds an older state again pays for a new set.
 */
const idsByEntries = new WeakMap<readonly ReadEntry[], Set<string>>()

const takeIds = (entries: readonly ReadEntry[]): Set<string> => {
  const known = idsByEntries.get(entries)
  idsByEntries.delete(entries)
  return known ?? new Set(entries.map((read) => read.entry.id))
}

/** Two ordered lists as one. */
const merged = (a: readonly ReadEntry[], b: readonly ReadEntry[]): readonly ReadEntry[] => {
  if (a.length === 0) return b
  if (b.length === 0) return a
  const all: ReadEntry[] = []
  let next = 0
  for (const read of a) {
    for (let other = b[next]; other !== undefined && compareRead(other, read) < 0; other = b[next]) {
      all.push(other)
      next += 1
    }
    all.push(read)
  }
  for (const other of b.slice(next)) all.push(other)
  return all
}

/** What came in: entries in order and read, and the strikes among them. */
type Fresh = { readonly entries: readonly ReadEntry[]; readonly strikes: readonly ReadStrike[] }

/** Entries of `given` that are not among `ids`, each once; `ids` then has them. Of two with one id the first is taken. */
const unseen = (ids: Set<string>, { before, entries }: JournalState, given: readonly Entry[]): Fresh => {
  const read = readingBy(KINDS)
  const course = entries[0]?.entry.course ?? given[0]?.course
  const inOrder: ReadEntry[] = []
  // Those that come after a later one: few in most journals, so only these are sorted.
  const late: ReadEntry[] = []
  const strikes: ReadStrike[] = []
  let last: ReadEntry | undefined
  given.forEach((entry) => {
    if (before?.ids.has(entry.id) === true) return
    const count = ids.size
    ids.add(entry.id)
    if (ids.size === count) return
    assert(entry.course === course, 'a fold holds the entries of one course')
    const one = read(entry)
    if (isStrike(one)) strikes.push(one)
    if (last === undefined || compareRead(last, one) < 0) inOrder.push((last = one))
    else late.push(one)
  })
  return { entries: merged(inOrder, late.sort(compareRead)), strikes }
}

const factsAfter = (
  facts: Facts,
  entries: readonly ReadEntry[],
  struck: ReadonlyMap<string, Strike>,
): Facts => {
  const draft = openDraft(facts)
  entries.forEach((read) => {
    if (read.type === 'known' && !struck.has(read.entry.id)) evolve(draft, read.known)
  })
  return draft
}

/** The last place of a journal; null where there is none. */
export const endOf = ({ entries, before }: Pick<JournalState, 'entries' | 'before'>): Place | null => {
  const last = entries.at(-1)
  return last === undefined ? (before?.end ?? null) : { atMs: last.atMs, id: last.entry.id }
}

/** True when the new entries lie behind all others and strike nothing: then they are simply taken in on top. */
const isOnTop = (end: Place | null, { entries, strikes }: Fresh): boolean => {
  const [first] = entries
  if (first === undefined || strikes.length > 0) return false
  return end === null || end.atMs < first.atMs || (end.atMs === first.atMs && end.id < first.entry.id)
}

/**
 * The state after some more entries, as `fold`, also for a state that stands on a snapshot: null where that needs the entries which the
 * snapshot stands for (one came late, or was struck). The caller then folds all entries from the beginning.
 */
export const extend = (state: JournalState, entries: readonly Entry[]): JournalState | null => {
  const ids = takeIds(state.entries)
  const count = ids.size
  const fresh = unseen(ids, state, entries)
  const kept = (next: JournalState): JournalState => {
    idsByEntries.set(next.entries, ids)
    return next
  }
  if (ids.size === count) return kept(state)
  if (isOnTop(endOf(state), fresh))
    return kept({
      ...state,
      entries: [...state.entries, ...fresh.entries],
      facts: factsAfter(state.facts, fresh.entries, state.struck),
    })
  if (state.before !== null) return null
  const all = merged(state.entries, fresh.entries)
  const struck = strikesOf([...state.entries.filter(isStrike), ...fresh.strikes])
  return kept({ entries: all, before: null, struck, facts: factsAfter(NO_FACTS, all, struck) })
}

/**
 * The state after some more entries, in whatever order and however often they come: the same set of entries gives the same state
 * on every device (rules J4 to J8 of docs/journal.md). Entries that come late are folded in at their place.
 * Throws when an entry belongs to another course than the rest, or when the state stands on a snapshot that they reach behind (`extend`
 * answers that); both are bugs of the caller.
 */
export const fold = (state: JournalState, entries: readonly Entry[]): JournalState => {
  const next = extend(state, entries)
  assert(next !== null, 'a state on a snapshot is extended, not folded')
  return next
}
