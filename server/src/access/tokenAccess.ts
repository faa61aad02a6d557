import type { Role } from '@swardwright/journal'
import { auditIn } from '../audit.ts'
import type { Storage } from '../storage/storage.ts'
import { createToken } from './tokens.ts'

/** Where tokens and the journals that tell of them are kept. */
type Kept = Pick<Storage, 'tokens' | 'journal'>

/** Under which name the journal tells what was done at the terminal of the server. */
const AUTHOR = 'Terminal of the server'

/** Makes a token and writes it into every journal. The token is given out only after that, so none is good unseen. */
export const giveToken = async (
  storage: Kept,
  wanted: { readonly role: Role; readonly name: string; readonly nowMs: number },
): Promise<string> => {
  const { token, row } = await createToken(storage.tokens, wanted)
  const change = { change: 'tokenMade', access: row.id, name: row.name, role: row.role } as const
  await auditIn(storage, { author: AUTHOR, change, course: null, atMs: wanted.nowMs })
  return token
}

/** Ends a token and writes that into every journal. Resolves to false where no token of that id is still good. */
export const endToken = async (storage: Kept, id: string, nowMs: number): Promise<boolean> => {
  if (!(await storage.tokens.revoke(id, new Date(nowMs).toISOString()))) return false
  const row = (await storage.tokens.list()).find((one) => one.id === id)
  if (row === undefined) throw new Error(`token ${id} was revoked, but is not in the list`)
  const change = { change: 'accessEnded', access: id, name: row.name, role: row.role } as const
  await auditIn(storage, { author: AUTHOR, change, course: null, atMs: nowMs })
  return true
}
