import * as v from 'valibot'
import { atMsOf, type Entry } from './entry.ts'
import { issueFacts } from './issueFacts.ts'
import { KINDS, type KnownEntry } from './kinds.ts'
import type { Kind, KindTable, RawBody } from './kind.ts'
import { quickCheckOf, type QuickCheck } from './quickCheck.ts'

/** What every entry that was read has: the entry itself, never changed, and its moment in epoch milliseconds, worked out once. */
type Read = { readonly entry: Entry; readonly atMs: number }

/** An entry as this version of the app reads it. */
export type ReadEntry =
  | (Read & { readonly type: 'known'; readonly known: KnownEntry })
  /** A kind of a newer app. Kept, handed on, and read once the app is newer. */
  | (Read & { readonly type: 'unknownKind' })
  /** A newer version of a kind. Kept likewise. */
  | (Read & { readonly type: 'newerVersion' })
  /** The body is not as its kind says: never taken by a server, so only from a damaged store. Kept and reported. */
  | (Read & { readonly type: 'badBody'; readonly field: string; readonly expected: string })

/** The order of the fold for entries that were read; the same as `compareEntries`. */
export const compareRead = (a: ReadEntry, b: ReadEntry): number =>
  a.atMs - b.atMs || (a.entry.id < b.entry.id ? -1 : a.entry.id > b.entry.id ? 1 : 0)

const lifted = (kind: Kind, entry: Entry): RawBody =>
  kind.lifts.slice(entry.version - 1).reduce<RawBody>((body, lift) => lift(body), entry.body)

type Reader = { readonly kind: Kind; readonly isSurelyGood: QuickCheck }

/** The kinds of a table with their quick checks, worked out once for each table. */
const readersByTable = new WeakMap<KindTable, ReadonlyMap<string, Reader>>()

const readersOf = (kinds: KindTable): ReadonlyMap<string, Reader> => {
  const known = readersByTable.get(kinds)
  if (known !== undefined) return known
  const readers = new Map(
    Object.entries(kinds).map(([name, kind]) => [name, { kind, isSurelyGood: quickCheckOf(kind.body) }]),
  )
  readersByTable.set(kinds, readers)
  return readers
}

/** Lifts the body of an entry to the version of today and checks it. */
export const readEntry = (entry: Entry, kinds: KindTable = KINDS): ReadEntry => {
  const atMs = atMsOf(entry)
  const reader = readersOf(kinds).get(entry.kind)
  if (reader === undefined) return { entry, atMs, type: 'unknownKind' }
  const { kind, isSurelyGood } = reader
  if (entry.version > kind.version) return { entry, atMs, type: 'newerVersion' }
  // Both casts: the table ties the name of a kind to the schema that has just accepted the body.
  if (entry.version === kind.version && isSurelyGood(entry.body))
    return { entry, atMs, type: 'known', known: entry as KnownEntry }
  const parsed = v.safeParse(kind.body, lifted(kind, entry), { abortEarly: true })
  if (!parsed.success) return { entry, atMs, type: 'badBody', ...issueFacts(parsed.issues[0], 'body') }
  const known = { ...entry, version: kind.version, body: parsed.output } as KnownEntry
  return { entry, atMs, type: 'known', known }
}
