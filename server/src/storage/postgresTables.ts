import type pg from 'pg'
import * as v from 'valibot'
import { inPostgres } from './postgresTransaction.ts'

/**
 * Steps that bring a database from version n - 1 to n. A step that was released is never changed. Texts are compared by their bytes
 * (`COLLATE "C"`), as the other stores do. `rowid` keeps the order of making, as in SQLite.
 * 1: courses, entries, access tokens, weather, accounts, passes, photos.
 * 2: the one course that a pass opens.
 */
const STEPS: readonly string[] = [
  `CREATE TABLE course (
     id TEXT COLLATE "C" PRIMARY KEY,
     name TEXT COLLATE "C" NOT NULL,
     named_at_ms BIGINT NOT NULL,
     named_by TEXT COLLATE "C" NOT NULL
   );
   CREATE TABLE entry (
     course TEXT COLLATE "C" NOT NULL REFERENCES course (id),
     seq INTEGER NOT NULL,
     id TEXT COLLATE "C" NOT NULL,
     received_at TEXT NOT NULL,
     sender TEXT NOT NULL,
     skew_ms BIGINT,
     json TEXT NOT NULL,
     PRIMARY KEY (course, seq),
     UNIQUE (course, id)
   );
   CREATE TABLE token (
     rowid BIGINT GENERATED ALWAYS AS IDENTITY,
     id TEXT PRIMARY KEY,
     hash TEXT NOT NULL UNIQUE,
     role TEXT NOT NULL,
     name TEXT NOT NULL,
     created_at TEXT NOT NULL,
     revoked_at TEXT
   );
   CREATE TABLE weather (
     course TEXT COLLATE "C" NOT NULL REFERENCES course (id),
     name TEXT NOT NULL,
     text TEXT NOT NULL,
     PRIMARY KEY (course, name)
   );
   CREATE TABLE account (
     rowid BIGINT GENERATED ALWAYS AS IDENTITY,
     id TEXT PRIMARY KEY,
     name TEXT NOT NULL,
     name_key TEXT NOT NULL,
     role TEXT NOT NULL,
     secret TEXT NOT NULL,
     created_at TEXT NOT NULL,
     ended_at TEXT,
     first INTEGER UNIQUE
   );
   CREATE UNIQUE INDEX account_name ON account (name_key) WHERE ended_at IS NULL;
   CREATE TABLE pass (
     rowid BIGINT GENERATED ALWAYS AS IDENTITY,
     id TEXT PRIMARY KEY,
     hash TEXT NOT NULL UNIQUE,
     kind TEXT NOT NULL,
     role TEXT NOT NULL,
     name TEXT NOT NULL,
     account TEXT REFERENCES account (id),
     created_at TEXT NOT NULL,
     expires_at TEXT NOT NULL,
     ended_at TEXT
   );
   CREATE TABLE photo (
     course TEXT COLLATE "C" NOT NULL,
     sha256 TEXT NOT NULL,
     length INTEGER NOT NULL,
     PRIMARY KEY (course, sha256)
   );
   CREATE TABLE photo_piece (
     course TEXT COLLATE "C" NOT NULL,
     sha256 TEXT NOT NULL,
     start INTEGER NOT NULL,
     bytes BYTEA NOT NULL,
     PRIMARY KEY (course, sha256, start)
   );`,
  'ALTER TABLE pass ADD COLUMN course TEXT COLLATE "C" REFERENCES course (id)',
]

const versionRow = v.object({ version: v.number() })

/** Sets the database up, or brings it to the version of today; of several processes that start at once, one does it. */
export const preparePostgres = (pool: pg.Pool): Promise<void> =>
  inPostgres(pool, 'tables', async (client) => {
    await client.query('CREATE TABLE IF NOT EXISTS swardwright (version INTEGER NOT NULL)')
    const { rows } = await client.query('SELECT version FROM swardwright')
    const version = rows.length === 0 ? 0 : v.parse(versionRow, rows[0]).version
    if (version > STEPS.length)
      throw new Error(
        `the database has version ${version} and this Swardwright reads up to ${STEPS.length}; use the newer one`,
      )
    for (const step of STEPS.slice(version)) await client.query(step)
    await client.query('DELETE FROM swardwright')
    await client.query('INSERT INTO swardwright (version) VALUES ($1)', [STEPS.length])
  })
