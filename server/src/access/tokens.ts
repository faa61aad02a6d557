import { createHash, randomBytes } from 'node:crypto'
import type { Role } from '@swardwright/journal'
import type { TokenRow, TokenStore } from '../storage/storage.ts'

/** A new access token: shown once, kept only as its hash. */
export type NewToken = { readonly token: string; readonly row: Omit<TokenRow, 'revokedAt'> }

/**
 * What is kept of a token. A plain SHA-256 is enough here, since a token is 256 bits of chance and not a word that somebody chose.
 * Tokens are compared by looking their hash up, so the time it takes says nothing about them.
 */
export const tokenHash = (token: string): string => createHash('sha256').update(token).digest('hex')

/** Makes a token and keeps its hash. */
export const createToken = async (
  tokens: TokenStore,
  { role, name, nowMs }: { readonly role: Role; readonly name: string; readonly nowMs: number },
): Promise<NewToken> => {
  const token = `swt_${randomBytes(32).toString('base64url')}`
  const row = {
    id: randomBytes(4).toString('hex'),
    hash: tokenHash(token),
    role,
    name,
    createdAt: new Date(nowMs).toISOString(),
  }
  await tokens.add(row)
  return { token, row }
}
