import type { Cursor, Entry, Role } from '@swardwright/journal'
import type { BlobStore } from './blobs.ts'
import type { AccountStore, PassStore } from './people.ts'

/** A course that is kept here. */
export type CourseRow = { readonly id: string; readonly name: string }

/** An entry that was judged and is about to be kept. */
export type ArrivingEntry = {
  readonly entry: Entry
  /** When the server took it in, ISO 8601. */
  readonly receivedAt: string
  /** Which access sent it: `local`, `server`, or `token:ID`, `account:ID`, `device:ID`. */
  readonly sender: string
  /** How far the device's clock was ahead of the server's when it was sent, ms; null when the device did not say. */
  readonly skewMs: number | null
}

/** An entry as it is kept. */
export type KeptEntry = ArrivingEntry & { readonly seq: number }

/** What became of an entry: stored now; there already; or its id stands for another entry. */
export type Outcome = 'stored' | 'known' | 'differs'

/** A name that entries give a course, with the moment it was given: the latest by (moment, entry id) stands. */
export type CourseNaming = { readonly name: string; readonly atMs: number; readonly entry: string }

/** What an append did: one outcome for each entry given, in that order, and the end of the journal after it. */
export type Appended = { readonly outcomes: readonly Outcome[]; readonly end: Cursor | null }

/**
 * Where journals are kept. All of it is per course, so courses can be spread over stores.
 * Every adapter passes the suite in `acceptance.ts`.
 */
export type JournalStore = {
  /** All courses, by name. */
  readonly courses: () => Promise<readonly CourseRow[]>
  /** Makes a course with an empty journal. Making one that is there leaves it as it is. */
  readonly addCourse: (row: CourseRow) => Promise<void>
  /**
   * Keeps entries at the end of the journal of a course, all or none, numbered without gaps. Resolves once they are durable.
   * Throws when the course is not there.
   */
  readonly append: (
    course: string,
    entries: readonly ArrivingEntry[],
    naming: CourseNaming | null,
  ) => Promise<Appended>
  /** At most `limit` entries with a number above `afterSeq`, in order. */
  readonly page: (course: string, afterSeq: number, limit: number) => Promise<readonly KeptEntry[]>
  /** The entries with these ids, of those that are there. */
  readonly find: (course: string, ids: readonly string[]) => Promise<readonly KeptEntry[]>
  /** The last entry of a journal; null when it is empty or not there. */
  readonly end: (course: string) => Promise<Cursor | null>
}

/** An access token as it is kept: never the token itself. */
export type TokenRow = {
  readonly id: string
  /** SHA-256 of the token, hex. */
  readonly hash: string
  readonly role: Role
  readonly name: string
  readonly createdAt: string
  readonly revokedAt: string | null
}

/** Where access tokens are kept. */
export type TokenStore = {
  readonly add: (row: Omit<TokenRow, 'revokedAt'>) => Promise<void>
  /** All tokens, oldest first, revoked ones too. */
  readonly list: () => Promise<readonly TokenRow[]>
  /** The token with that hash that is not revoked. */
  readonly findByHash: (hash: string) => Promise<TokenRow | null>
  /** Ends a token; false when there is none of that id, or it has ended already. */
  readonly revoke: (id: string, revokedAt: string) => Promise<boolean>
}

/**
 * Where the weather of courses is kept: what a service answered, the club's choice, its record. Texts by name, since only their owner reads them.
 * Unlike the journal all of it can be asked for anew.
 */
export type WeatherStore = {
  /** The text of that name; null when there is none. */
  readonly read: (course: string, name: string) => Promise<string | null>
  /** Puts a text in place of the one before. Throws when the course is not there. */
  readonly write: (course: string, name: string, text: string) => Promise<void>
}

/** Everything the server keeps. */
export type Storage = {
  readonly journal: JournalStore
  readonly tokens: TokenStore
  readonly accounts: AccountStore
  readonly passes: PassStore
  readonly blobs: BlobStore
  readonly weather: WeatherStore
  readonly close: () => Promise<void>
}
