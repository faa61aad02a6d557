import pg from 'pg'
import { postgresBlobs } from './postgresBlobs.ts'
import { postgresJournal } from './postgresJournal.ts'
import { preparePostgres } from './postgresTables.ts'
import type { Sql } from './sql.ts'
import { sqlAccounts, sqlPasses } from './sqlPeople.ts'
import { sqlTokens } from './sqlTokens.ts'
import { sqlWeather } from './sqlWeather.ts'
import type { Storage } from './storage.ts'

/** Open connections of one process, at most. */
const CONNECTIONS = 8

/** `?` is written `$1`, `$2` here; none of our texts has a question mark elsewhere. */
const numbered = (text: string): string => {
  let number = 0
  return text.replaceAll('?', () => `$${(number += 1)}`)
}

const sqlOfPool = (pool: pg.Pool): Sql => ({
  rows: async (text, ...values) => (await pool.query(numbered(text), [...values])).rows,
  run: async (text, ...values) => (await pool.query(numbered(text), [...values])).rowCount ?? 0,
})

/**
 * Storage in a PostgreSQL database, for a group of clubs: any number of server processes may work on one. Throws when it can't be reached
 * or was written by a newer version. `lost` is told when an idle connection breaks; the next question opens another.
 */
export const postgresStorage = async (url: string, lost: (message: string) => void): Promise<Storage> => {
  const pool = new pg.Pool({
    connectionString: url,
    max: CONNECTIONS,
    application_name: 'swardwright',
    // An answer means kept: whatever the server's own setting, a commit waits for the disk. The pool waits for the promise.
    onConnect: (client) => client.query('SET synchronous_commit TO on'),
  })
  pool.on('error', (error) => lost(error.message))
  try {
    await preparePostgres(pool)
  } catch (error) {
    await pool.end()
    throw error
  }
  const sql = sqlOfPool(pool)
  return {
    journal: postgresJournal(pool),
    tokens: sqlTokens(sql),
    accounts: sqlAccounts(sql),
    passes: sqlPasses(sql),
    weather: sqlWeather(sql),
    blobs: postgresBlobs(pool),
    close: () => pool.end(),
  }
}
