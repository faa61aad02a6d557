import { needsSetUp, type Access } from './access.ts'
import { isGood } from './passes.ts'
import type { Storage } from '../storage/storage.ts'

/** Whether an access that was let in before still is. */
export type StillIn = (access: Access) => boolean

/**
 * Who is still let in at a moment, for what stays open longer than one request. One look at the stores answers for everybody.
 * Somebody at the machine itself is in until there is an account.
 */
export const stillIn = async (
  storage: Pick<Storage, 'tokens' | 'passes' | 'accounts'>,
  nowMs: number,
): Promise<StillIn> => {
  const goodTokens = new Set(
    (await storage.tokens.list()).filter((row) => row.revokedAt === null).map((row) => `token:${row.id}`),
  )
  const goodPasses = new Set(
    (await storage.passes.list()).filter((row) => isGood(row, nowMs)).map((row) => row.id),
  )
  const machineIsIn = await needsSetUp(storage)
  return ({ by, sender, pass }) => {
    if (by === 'machine') return machineIsIn
    if (by === 'token') return goodTokens.has(sender)
    return pass !== null && goodPasses.has(pass)
  }
}
