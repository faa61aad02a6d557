import { createHash } from 'node:crypto'
import type pg from 'pg'
import * as v from 'valibot'
import { newPart, type BlobState, type BlobStore } from './blobs.ts'
import { inPostgres } from './postgresTransaction.ts'

type Asked = Pick<pg.Pool, 'query'>

const lengthRow = v.object({ length: v.number() })
const sumRow = v.object({ received: v.number() })
const pieceRow = v.object({ start: v.number(), bytes: v.instance(Buffer) })

const stateOf = async (asked: Asked, course: string, sha256: string): Promise<BlobState> => {
  const whole = await asked.query('SELECT length FROM photo WHERE course = $1 AND sha256 = $2', [
    course,
    sha256,
  ])
  if (whole.rows.length > 0) return { received: v.parse(lengthRow, whole.rows[0]).length, whole: true }
  const { rows } = await asked.query(
    'SELECT coalesce(sum(length(bytes)), 0)::integer AS received FROM photo_piece WHERE course = $1 AND sha256 = $2',
    [course, sha256],
  )
  return { received: v.parse(sumRow, rows[0]).received, whole: false }
}

const piecesOf = async (asked: Asked, course: string, sha256: string, to: number) => {
  const { rows } = await asked.query(
    'SELECT start, bytes FROM photo_piece WHERE course = $1 AND sha256 = $2 AND start < $3 ORDER BY start',
    [course, sha256, to],
  )
  return rows.map((row) => v.parse(pieceRow, row))
}

/** Photos in a PostgreSQL database, so that every process has them all. They are kept in the pieces in which they came. */
export const postgresBlobs = (pool: pg.Pool): BlobStore => ({
  state: (course, sha256) => stateOf(pool, course, sha256),
  append: (course, sha256, offset, piece) =>
    inPostgres(pool, `photo ${course} ${sha256}`, async (client) => {
      const state = await stateOf(client, course, sha256)
      const part = newPart(state, offset, piece)
      if (part !== null && part.length > 0)
        await client.query('INSERT INTO photo_piece (course, sha256, start, bytes) VALUES ($1, $2, $3, $4)', [
          course,
          sha256,
          state.received,
          Buffer.from(part),
        ])
      return part !== null
    }),
  finish: (course, sha256) =>
    inPostgres(pool, `photo ${course} ${sha256}`, async (client) => {
      const { received, whole } = await stateOf(client, course, sha256)
      if (whole) return true
      const hash = createHash('sha256')
      for (const { bytes } of await piecesOf(client, course, sha256, received)) hash.update(bytes)
      if (received > 0 && hash.digest('hex') === sha256) {
        await client.query('INSERT INTO photo (course, sha256, length) VALUES ($1, $2, $3)', [
          course,
          sha256,
          received,
        ])
        return true
      }
      await client.query('DELETE FROM photo_piece WHERE course = $1 AND sha256 = $2', [course, sha256])
      return false
    }),
  read: async (course, sha256, from, to) => {
    if (!(await stateOf(pool, course, sha256)).whole) return null
    const pieces = await piecesOf(pool, course, sha256, to)
    const parts = pieces.map(({ start, bytes }) => bytes.subarray(Math.max(0, from - start), to - start))
    return new Uint8Array(Buffer.concat(parts))
  },
})
