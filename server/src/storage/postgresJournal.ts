import type pg from 'pg'
import * as v from 'valibot'
import { sameJson, type Entry } from '@swardwright/journal'
import { entryOfJson } from './entryOfJson.ts'
import { inPostgres } from './postgresTransaction.ts'
import type { ArrivingEntry, JournalStore, KeptEntry, Outcome } from './storage.ts'

const courseRow = v.object({ id: v.string(), name: v.string() })
const endRow = v.pipe(
  v.object({ seq: v.number(), id: v.string(), received_at: v.string() }),
  v.transform(({ seq, id, received_at: receivedAt }) => ({ seq, id, receivedMs: Date.parse(receivedAt) })),
)
const entryRow = v.object({
  seq: v.number(),
  received_at: v.string(),
  sender: v.string(),
  // The driver gives a BIGINT as text.
  skew_ms: v.nullable(v.pipe(v.string(), v.transform(Number))),
  json: v.string(),
})

const COLUMNS = 'seq, received_at, sender, skew_ms, json'

type Asked = Pick<pg.Pool, 'query'>

const keptFrom = (row: unknown): KeptEntry => {
  const { seq, received_at: receivedAt, sender, skew_ms: skewMs, json } = v.parse(entryRow, row)
  return { seq, receivedAt, sender, skewMs, entry: entryOfJson(seq, json) }
}

const endOf = async (asked: Asked, course: string) => {
  const { rows } = await asked.query(
    'SELECT seq, id, received_at FROM entry WHERE course = $1 ORDER BY seq DESC LIMIT 1',
    [course],
  )
  return rows.length === 0 ? null : v.parse(endRow, rows[0])
}

const found = async (asked: Asked, course: string, ids: readonly string[]): Promise<readonly KeptEntry[]> => {
  const { rows } = await asked.query(
    `SELECT ${COLUMNS} FROM entry WHERE course = $1 AND id = ANY ($2::text[]) ORDER BY seq`,
    [course, [...ids]],
  )
  return rows.map(keptFrom)
}

const insert = async (client: Asked, course: string, kept: readonly KeptEntry[]): Promise<void> => {
  await client.query(
    `INSERT INTO entry (course, seq, id, received_at, sender, skew_ms, json)
     SELECT $1, * FROM unnest($2::integer[], $3::text[], $4::text[], $5::text[], $6::bigint[], $7::text[])`,
    [
      course,
      kept.map((one) => one.seq),
      kept.map((one) => one.entry.id),
      kept.map((one) => one.receivedAt),
      kept.map((one) => one.sender),
      kept.map((one) => one.skewMs),
      kept.map((one) => JSON.stringify(one.entry)),
    ],
  )
}

/** Keeps what is new of a push, numbered on from the end. The lock of the course is held, so nobody numbers beside this. */
const keepAll = async (
  client: Asked,
  course: string,
  entries: readonly ArrivingEntry[],
): Promise<readonly Outcome[]> => {
  let seq = (await endOf(client, course))?.seq ?? 0
  const ids = entries.map(({ entry }) => entry.id)
  const known = new Map<string, Entry>(
    (await found(client, course, ids)).map(({ entry }) => [entry.id, entry]),
  )
  const fresh: KeptEntry[] = []
  const outcomes = entries.map((arriving): Outcome => {
    const { entry } = arriving
    const before = known.get(entry.id)
    if (before !== undefined) return sameJson(before, entry) ? 'known' : 'differs'
    known.set(entry.id, entry)
    fresh.push({ ...arriving, seq: (seq += 1) })
    return 'stored'
  })
  if (fresh.length > 0) await insert(client, course, fresh)
  return outcomes
}

/** Journals in a PostgreSQL database that has its tables. */
export const postgresJournal = (pool: pg.Pool): JournalStore => ({
  courses: async () =>
    (await pool.query('SELECT id, name FROM course ORDER BY name, id')).rows.map((row) =>
      v.parse(courseRow, row),
    ),
  addCourse: async ({ id, name }) => {
    await pool.query(
      "INSERT INTO course (id, name, named_at_ms, named_by) VALUES ($1, $2, 0, '') ON CONFLICT DO NOTHING",
      [id, name],
    )
  },
  append: (course, entries, naming) =>
    inPostgres(pool, `course ${course}`, async (client) => {
      const { rows } = await client.query('SELECT id, name FROM course WHERE id = $1', [course])
      if (rows.length === 0) throw new Error(`there is no course ${course}`)
      if (naming !== null)
        await client.query(
          `UPDATE course SET name = $1, named_at_ms = $2, named_by = $3
           WHERE id = $4 AND (named_at_ms, named_by) < ($2::bigint, $3::text COLLATE "C")`,
          [naming.name, naming.atMs, naming.entry, course],
        )
      return { outcomes: await keepAll(client, course, entries), end: await endOf(client, course) }
    }),
  page: async (course, afterSeq, limit) =>
    (
      await pool.query(`SELECT ${COLUMNS} FROM entry WHERE course = $1 AND seq > $2 ORDER BY seq LIMIT $3`, [
        course,
        afterSeq,
        limit,
      ])
    ).rows.map(keptFrom),
  find: (course, ids) => found(pool, course, ids),
  end: (course) => endOf(pool, course),
})
