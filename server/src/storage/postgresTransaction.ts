import type pg from 'pg'

/**
 * Runs work as one transaction: all of it is kept, or nothing. Its first statement takes the lock of that name, so that those who want
 * the same lock go one after the other. For a journal this is what makes reading by cursor safe: without it, number 8 could be seen before
 * number 7 is there, and the reader would never come back for 7.
 */
export const inPostgres = async <T>(
  pool: pg.Pool,
  lock: string,
  work: (client: pg.PoolClient) => Promise<T>,
): Promise<T> => {
  const client = await pool.connect()
  let broken: Error | undefined
  try {
    await client.query('BEGIN')
    await client.query('SELECT pg_advisory_xact_lock(hashtextextended($1, 0))', [`swardwright ${lock}`])
    const result = await work(client)
    await client.query('COMMIT')
    return result
  } catch (error) {
    try {
      await client.query('ROLLBACK')
    } catch (second) {
      // The connection itself is gone, and the transaction with it: the first error says more, and the client is not used again.
      broken = second instanceof Error ? second : new Error('the connection broke')
    }
    throw error
  } finally {
    client.release(broken)
  }
}
