import * as v from 'valibot'
import { ROLES } from '@swardwright/journal'
import type { Database } from './database.ts'
import type { TokenRow, TokenStore } from './storage.ts'

const tokenRow = v.pipe(
  v.object({
    id: v.string(),
    hash: v.string(),
    role: v.picklist(ROLES),
    name: v.string(),
    created_at: v.string(),
    revoked_at: v.nullable(v.string()),
  }),
  v.transform(({ created_at: createdAt, revoked_at: revokedAt, ...row }): TokenRow => ({
    ...row,
    createdAt,
    revokedAt,
  })),
)

/** Access tokens in an SQLite database that has its tables. */
export const sqliteTokens = (database: Database): TokenStore => {
  const add = database.prepare('INSERT INTO token (id, hash, role, name, created_at) VALUES (?, ?, ?, ?, ?)')
  const list = database.prepare('SELECT * FROM token ORDER BY created_at, rowid')
  const byHash = database.prepare('SELECT * FROM token WHERE hash = ? AND revoked_at IS NULL')
  const revoke = database.prepare('UPDATE token SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL')
  return {
    add: async ({ id, hash, role, name, createdAt }) => {
      add.run(id, hash, role, name, createdAt)
    },
    list: async () => list.all().map((row) => v.parse(tokenRow, row)),
    findByHash: async (hash) => {
      const row = byHash.get(hash)
      return row === undefined ? null : v.parse(tokenRow, row)
    },
    revoke: async (id, revokedAt) => Number(revoke.run(revokedAt, id).changes) === 1,
  }
}
