import * as v from 'valibot'
import { ROLES } from '@swardwright/journal'
import type { Sql } from './sql.ts'
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

/** Access tokens in a database that has its tables. */
export const sqlTokens = (sql: Sql): TokenStore => ({
  add: async ({ id, hash, role, name, createdAt }) => {
    await sql.run(
      'INSERT INTO token (id, hash, role, name, created_at) VALUES (?, ?, ?, ?, ?)',
      id,
      hash,
      role,
      name,
      createdAt,
    )
  },
  list: async () =>
    (await sql.rows('SELECT * FROM token ORDER BY created_at, rowid')).map((row) => v.parse(tokenRow, row)),
  findByHash: async (hash) => {
    const [row] = await sql.rows('SELECT * FROM token WHERE hash = ? AND revoked_at IS NULL', hash)
    return row === undefined ? null : v.parse(tokenRow, row)
  },
  revoke: async (id, revokedAt) =>
    (await sql.run('UPDATE token SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL', revokedAt, id)) ===
    1,
})
