import * as v from 'valibot'
import { inTransaction, type Database } from './database.ts'

/**
 * Steps that bring a database from version n - 1 to n, kept in `user_version`. A step that was released is never changed.
 * 1: courses, entries numbered per course, access tokens.
 * 2: weather of the courses.
 * 3: how far the clock of the sender was off, accounts, and what lets browsers in.
 * 4: the one course that a pass opens.
 */
const STEPS: readonly string[] = [
  `CREATE TABLE course (
     id TEXT PRIMARY KEY,
     name TEXT NOT NULL,
     named_at_ms INTEGER NOT NULL,
     named_by TEXT NOT NULL
   ) STRICT;
   CREATE TABLE entry (
     course TEXT NOT NULL REFERENCES course (id),
     seq INTEGER NOT NULL,
     id TEXT NOT NULL,
     received_at TEXT NOT NULL,
     sender TEXT NOT NULL,
     json TEXT NOT NULL,
     UNIQUE (course, seq),
     UNIQUE (course, id)
   ) STRICT;
   CREATE TABLE token (
     id TEXT PRIMARY KEY,
     hash TEXT NOT NULL UNIQUE,
     role TEXT NOT NULL,
     name TEXT NOT NULL,
     created_at TEXT NOT NULL,
     revoked_at TEXT
   ) STRICT;`,
  `CREATE TABLE weather (
     course TEXT NOT NULL REFERENCES course (id),
     name TEXT NOT NULL,
     text TEXT NOT NULL,
     PRIMARY KEY (course, name)
   ) STRICT;`,
  `ALTER TABLE entry ADD COLUMN skew_ms INTEGER;
   CREATE TABLE account (
     id TEXT PRIMARY KEY,
     name TEXT NOT NULL,
     name_key TEXT NOT NULL,
     role TEXT NOT NULL,
     secret TEXT NOT NULL,
     created_at TEXT NOT NULL,
     ended_at TEXT,
     first INTEGER UNIQUE
   ) STRICT;
   CREATE UNIQUE INDEX account_name ON account (name_key) WHERE ended_at IS NULL;
   CREATE TABLE pass (
     id TEXT PRIMARY KEY,
     hash TEXT NOT NULL UNIQUE,
     kind TEXT NOT NULL,
     role TEXT NOT NULL,
     name TEXT NOT NULL,
     account TEXT REFERENCES account (id),
     created_at TEXT NOT NULL,
     expires_at TEXT NOT NULL,
     ended_at TEXT
   ) STRICT;`,
  'ALTER TABLE pass ADD COLUMN course TEXT REFERENCES course (id)',
]

const versionRow = v.object({ user_version: v.number() })

/** How the file is written: a log ahead of the data, forced to the disk at each commit, so that an answer means kept. */
const PRAGMAS = `
  PRAGMA journal_mode = WAL;
  PRAGMA synchronous = FULL;
  PRAGMA foreign_keys = ON;
  PRAGMA busy_timeout = 5000;`

/** Sets the database up, or brings it to the version of today. Throws when a newer Swardwright has written it. */
export const prepareTables = (database: Database): void => {
  database.exec(PRAGMAS)
  inTransaction(database, () => {
    const { user_version: version } = v.parse(versionRow, database.prepare('PRAGMA user_version').get())
    if (version > STEPS.length)
      throw new Error(
        `the database has version ${version} and this Swardwright reads up to ${STEPS.length}; use the newer one`,
      )
    for (const step of STEPS.slice(version)) database.exec(step)
    database.exec(`PRAGMA user_version = ${STEPS.length}`)
  })
}
