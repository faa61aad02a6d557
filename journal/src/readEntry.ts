import * as v from 'valibot'
import type { Entry } from './entry.ts'
import { KINDS, findKind, type KnownEntry } from './kinds.ts'
import type { Kind, KindTable, RawBody } from './kind.ts'

/** An entry as this version of the app reads it. The entry itself is never changed. */
export type ReadEntry =
  | { readonly type: 'known'; readonly entry: Entry; readonly known: KnownEntry }
  /** A kind of a newer app. Kept, handed on, and read once the app is newer. */
  | { readonly type: 'unknownKind'; readonly entry: Entry }
  /** A newer version of a kind. Kept likewise. */
  | { readonly type: 'newerVersion'; readonly entry: Entry }
  /** The body is not as its kind says: never taken by a server, so only from a damaged store. Kept and reported. */
  | { readonly type: 'badBody'; readonly entry: Entry; readonly field: string; readonly expected: string }

const lifted = (kind: Kind, entry: Entry): RawBody =>
  kind.lifts.slice(entry.version - 1).reduce<RawBody>((body, lift) => lift(body), entry.body)

/** Lifts the body of an entry to the version of today and checks it. */
export const readEntry = (entry: Entry, kinds: KindTable = KINDS): ReadEntry => {
  const kind = findKind(kinds, entry.kind)
  if (kind === undefined) return { type: 'unknownKind', entry }
  if (entry.version > kind.version) return { type: 'newerVersion', entry }
  const parsed = v.safeParse(kind.body, lifted(kind, entry), { abortEarly: true })
  if (parsed.success)
    return {
      type: 'known',
      entry,
      // The table ties the name of a kind to the schema that has just accepted the body.
      known: { ...entry, version: kind.version, body: parsed.output } as KnownEntry,
    }
  const issue = parsed.issues[0]
  return {
    type: 'badBody',
    entry,
    field: v.getDotPath(issue) ?? 'body',
    expected: issue.expected ?? issue.message,
  }
}
