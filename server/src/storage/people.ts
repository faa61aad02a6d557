import type { Role } from '@swardwright/journal'

/** Somebody who logs in with a name and a password. */
export type AccountRow = {
  readonly id: string
  readonly name: string
  readonly role: Role
  /** The password as `hashPassword` keeps it. */
  readonly secret: string
  readonly createdAt: string
  readonly endedAt: string | null
}

/** Where accounts are kept. */
export type AccountStore = {
  /**
   * Keeps an account; false when a living one has that name (`nameKey`), or, with `onlyFirst`, when there is any: of two who set
   * the server up at once, one is told no.
   */
  readonly add: (
    row: Omit<AccountRow, 'endedAt'>,
    options: { readonly onlyFirst: boolean },
  ) => Promise<boolean>
  /** All accounts, oldest first, ended ones too. */
  readonly list: () => Promise<readonly AccountRow[]>
  readonly setSecret: (id: string, secret: string) => Promise<void>
  /** Ends an account; false when there is none of that id, or it has ended already. Its name is free again. */
  readonly end: (id: string, endedAt: string) => Promise<boolean>
}

/**
 * `session`: somebody who logged in. `device`: a device that joined by a link. `invite`: a link that nobody has used yet. `page`: the address
 * of a members' page, which lets nobody in.
 */
export const PASS_KINDS = ['session', 'device', 'invite', 'page'] as const

/** What lets a browser in, as it is kept: never the secret itself. */
export type PassRow = {
  readonly id: string
  /** SHA-256 of the secret, hex. */
  readonly hash: string
  readonly kind: (typeof PASS_KINDS)[number]
  readonly role: Role
  readonly name: string
  /** The account of a session; null for devices and links. */
  readonly account: string | null
  /** The one course that it opens; null for all. */
  readonly course: string | null
  readonly createdAt: string
  readonly expiresAt: string
  readonly endedAt: string | null
}

/** Where passes are kept. */
export type PassStore = {
  readonly add: (row: Omit<PassRow, 'endedAt'>) => Promise<void>
  /** All passes, oldest first, ended ones too. */
  readonly list: () => Promise<readonly PassRow[]>
  /** The pass with that hash that has not ended; whether it has expired is for the caller's clock. */
  readonly findByHash: (hash: string) => Promise<PassRow | null>
  /** Ends a pass; false when there is none of that id, or it has ended already. Of two at once, one is told true. */
  readonly end: (id: string, endedAt: string) => Promise<boolean>
  /** Ends all sessions of an account. */
  readonly endOfAccount: (account: string, endedAt: string) => Promise<void>
}

/** What makes two names one: case, and how letters with marks are put together, do not count. */
export const nameKey = (name: string): string => name.normalize('NFKC').trim().toLowerCase()
