import * as v from 'valibot'
import { atMsOf, type Entry } from './entry.ts'
import { issueFacts } from './issueFacts.ts'
import { KINDS, findKind, type KnownEntry } from './kinds.ts'
import type { Kind, KindTable, RawBody } from './kind.ts'

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

/** Lifts the body of an entry to the version of today and checks it. */
export const readEntry = (entry: Entry, kinds: KindTable = KINDS): ReadEntry => {
  const read: Read = { entry, atMs: atMsOf(entry) }
  const kind = findKind(kinds, entry.kind)
  if (kind === undefined) return { ...read, type: 'unknownKind' }
  if (entry.version > kind.version) return { ...read, type: 'newerVersion' }
  const parsed = v.safeParse(kind.body, lifted(kind, entry), { abortEarly: true })
  if (!parsed.success) return { ...read, type: 'badBody', ...issueFacts(parsed.issues[0], 'body') }
  // The table ties the name of a kind to the schema that has just accepted the body.
  const known = { ...entry, version: kind.version, body: parsed.output } as KnownEntry
  return { ...read, type: 'known', known }
}
