import { randomBytes } from 'node:crypto'
import type { Role } from '@swardwright/journal'
import type { PassRow, PassStore } from '../storage/people.ts'
import { tokenHash } from './tokens.ts'

const DAY_S = 24 * 60 * 60

/** How long passes last, seconds. A phone in a pocket stays in over a winter; 400 days is the longest that browsers keep a cookie. */
export const PASS_LASTS_S: Readonly<Record<PassRow['kind'], number>> = {
  session: 30 * DAY_S,
  device: 400 * DAY_S,
  invite: 7 * DAY_S,
  // Printed on the board of a clubhouse, where nobody looks at dates: it ends when somebody ends it.
  page: 10 * 365 * DAY_S,
}

/** A new pass: its secret, shown only now, and what is kept. */
export type NewPass = { readonly secret: string; readonly row: Omit<PassRow, 'endedAt'> }

/** What a pass is for. */
export type PassFor = {
  readonly kind: PassRow['kind']
  readonly role: Role
  readonly name: string
  readonly account: string | null
  /** The one course that it opens; null for all. */
  readonly course: string | null
}

/** A new id of an account or a pass. */
export const newAccessId = (): string => randomBytes(8).toString('hex')

/** Makes a pass and keeps its hash. */
export const createPass = async (passes: PassStore, wanted: PassFor, nowMs: number): Promise<NewPass> => {
  const secret = randomBytes(32).toString('base64url')
  const row = {
    ...wanted,
    id: newAccessId(),
    hash: tokenHash(secret),
    createdAt: new Date(nowMs).toISOString(),
    expiresAt: new Date(nowMs + PASS_LASTS_S[wanted.kind] * 1000).toISOString(),
  }
  await passes.add(row)
  return { secret, row }
}

/** Whether a pass is still good at that moment. */
export const isGood = (pass: PassRow, nowMs: number): boolean =>
  pass.endedAt === null && Date.parse(pass.expiresAt) > nowMs

/** The pass with that secret, if it is good and of one of these kinds. */
export const findPass = async (
  passes: PassStore,
  secret: string,
  { kinds, nowMs }: { readonly kinds: readonly PassRow['kind'][]; readonly nowMs: number },
): Promise<PassRow | null> => {
  const row = await passes.findByHash(tokenHash(secret))
  return row !== null && kinds.includes(row.kind) && isGood(row, nowMs) ? row : null
}
