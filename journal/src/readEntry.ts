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

const lifted = ({ lifts }: Kind, { version, body }: Entry): RawBody =>
  version > lifts.length ? body : lifts.slice(version - 1).reduce<RawBody>((older, lift) => lift(older), body)

type Reader = { readonly kind: Kind; readonly isSurelyGood: QuickCheck }

const readWith = (reader: Reader | undefined, entry: Entry): ReadEntry => {
  const atMs = atMsOf(entry)
  if (reader === undefined) return { entry, atMs, type: 'unknownKind' }
  const { kind, isSurelyGood } = reader
  const { version } = kind
  if (entry.version > version) return { entry, atMs, type: 'newerVersion' }
  const body = lifted(kind, entry)
  // The casts: the table ties the name of a kind to the schema that has just accepted the body.
  if (isSurelyGood(body)) {
    const known = (entry.version === version ? entry : { ...entry, version, body }) as KnownEntry
    return { entry, atMs, type: 'known', known }
  }
  const parsed = v.safeParse(kind.body, body, { abortEarly: true })
  if (!parsed.success) return { entry, atMs, type: 'badBody', ...issueFacts(parsed.issues[0], 'body') }
  const known = { ...entry, version, body: parsed.output } as KnownEntry
  return { entry, atMs, type: 'known', known }
}

/** `readEntry` by one table of kinds. */
type ReadFunction = (entry: Entry) => ReadEntry

/** How each table of kinds is read, worked out once. */
const readingByTable = new WeakMap<KindTable, ReadFunction>()

/** How entries are read by a table of kinds: for many entries, quicker than asking `readEntry` each time. */
export const readingBy = (kinds: KindTable): ReadFunction => {
  const known = readingByTable.get(kinds)
  if (known !== undefined) return known
  const readers = new Map(
    Object.entries(kinds).map(([name, kind]) => [name, { kind, isSurelyGood: quickCheckOf(kind.body) }]),
  )
  const reading: ReadFunction = (entry) => readWith(readers.get(entry.kind), entry)
  readingByTable.set(kinds, reading)
  return reading
}

/** Lifts the body of an entry to the version of today and checks it. */
export const readEntry = (entry: Entry, kinds: KindTable = KINDS): ReadEntry => readingBy(kinds)(entry)
