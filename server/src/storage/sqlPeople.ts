import * as v from 'valibot'
import { ROLES } from '@swardwright/journal'
import {
  PASS_KINDS,
  nameKey,
  type AccountRow,
  type AccountStore,
  type PassRow,
  type PassStore,
} from './people.ts'
import type { Sql } from './sql.ts'

const accountRow = v.pipe(
  v.object({
    id: v.string(),
    name: v.string(),
    role: v.picklist(ROLES),
    secret: v.string(),
    created_at: v.string(),
    ended_at: v.nullable(v.string()),
  }),
  v.transform(({ created_at: createdAt, ended_at: endedAt, ...row }): AccountRow => ({
    ...row,
    createdAt,
    endedAt,
  })),
)

const passRow = v.pipe(
  v.object({
    id: v.string(),
    hash: v.string(),
    kind: v.picklist(PASS_KINDS),
    role: v.picklist(ROLES),
    name: v.string(),
    account: v.nullable(v.string()),
    course: v.nullable(v.string()),
    created_at: v.string(),
    expires_at: v.string(),
    ended_at: v.nullable(v.string()),
  }),
  v.transform(({ created_at: createdAt, expires_at: expiresAt, ended_at: endedAt, ...row }): PassRow => ({
    ...row,
    createdAt,
    expiresAt,
    endedAt,
  })),
)

/** Accounts in a database that has its tables. The unique index on the names of living accounts decides between two at once. */
export const sqlAccounts = (sql: Sql): AccountStore => ({
  add: async ({ id, name, role, secret, createdAt }, { onlyFirst }) =>
    (await sql.run(
      `INSERT INTO account (id, name, name_key, role, secret, created_at, first)
       SELECT ?, ?, ?, ?, ?, ?, CAST(? AS INTEGER)
       WHERE CAST(? AS INTEGER) IS NULL OR NOT EXISTS (SELECT 1 FROM account WHERE ended_at IS NULL)
       ON CONFLICT DO NOTHING`,
      id,
      name,
      nameKey(name),
      role,
      secret,
      createdAt,
      onlyFirst ? 1 : null,
      onlyFirst ? 1 : null,
    )) === 1,
  list: async () =>
    (await sql.rows('SELECT * FROM account ORDER BY created_at, rowid')).map((row) =>
      v.parse(accountRow, row),
    ),
  setSecret: async (id, secret) => {
    await sql.run('UPDATE account SET secret = ? WHERE id = ?', secret, id)
  },
  end: async (id, endedAt) =>
    (await sql.run(
      'UPDATE account SET ended_at = ?, first = NULL WHERE id = ? AND ended_at IS NULL',
      endedAt,
      id,
    )) === 1,
})

/** Sessions, devices and join links in a database that has its tables. */
export const sqlPasses = (sql: Sql): PassStore => ({
  add: async ({ id, hash, kind, role, name, account, course, createdAt, expiresAt }) => {
    await sql.run(
      'INSERT INTO pass (id, hash, kind, role, name, account, course, created_at, expires_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)',
      id,
      hash,
      kind,
      role,
      name,
      account,
      course,
      createdAt,
      expiresAt,
    )
  },
  list: async () =>
    (await sql.rows('SELECT * FROM pass ORDER BY created_at, rowid')).map((row) => v.parse(passRow, row)),
  findByHash: async (hash) => {
    const [row] = await sql.rows('SELECT * FROM pass WHERE hash = ? AND ended_at IS NULL', hash)
    return row === undefined ? null : v.parse(passRow, row)
  },
  end: async (id, endedAt) =>
    (await sql.run('UPDATE pass SET ended_at = ? WHERE id = ? AND ended_at IS NULL', endedAt, id)) === 1,
  endOfAccount: async (account, endedAt) => {
    await sql.run('UPDATE pass SET ended_at = ? WHERE account = ? AND ended_at IS NULL', endedAt, account)
  },
})
