import * as v from 'valibot'
import { sameJson, type Entry } from '@swardwright/journal'
import { inTransaction, type Database } from './database.ts'
import { entryOfJson } from './entryOfJson.ts'
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
  skew_ms: v.nullable(v.number()),
  json: v.string(),
})

const keptFrom = (row: unknown): KeptEntry => {
  const { seq, received_at: receivedAt, sender, skew_ms: skewMs, json } = v.parse(entryRow, row)
  return { seq, receivedAt, sender, skewMs, entry: entryOfJson(seq, json) }
}

const statementsOf = (database: Database) => ({
  courses: database.prepare('SELECT id, name FROM course ORDER BY name, id'),
  course: database.prepare('SELECT id, name FROM course WHERE id = ?'),
  addCourse: database.prepare(
    "INSERT INTO course (id, name, named_at_ms, named_by) VALUES (?, ?, 0, '') ON CONFLICT DO NOTHING",
  ),
  rename: database.prepare(
    'UPDATE course SET name = ?, named_at_ms = ?, named_by = ? WHERE id = ? AND (named_at_ms, named_by) < (?, ?)',
  ),
  end: database.prepare('SELECT seq, id, received_at FROM entry WHERE course = ? ORDER BY seq DESC LIMIT 1'),
  byId: database.prepare(
    'SELECT seq, received_at, sender, skew_ms, json FROM entry WHERE course = ? AND id = ?',
  ),
  insert: database.prepare(
    'INSERT INTO entry (course, seq, id, received_at, sender, skew_ms, json) VALUES (?, ?, ?, ?, ?, ?, ?)',
  ),
  page: database.prepare(
    'SELECT seq, received_at, sender, skew_ms, json FROM entry WHERE course = ? AND seq > ? ORDER BY seq LIMIT ?',
  ),
})

type Statements = ReturnType<typeof statementsOf>

const endOf = (statements: Statements, course: string) => {
  const row = statements.end.get(course)
  return row === undefined ? null : v.parse(endRow, row)
}

const findOne = (statements: Statements, course: string, id: string): KeptEntry | null => {
  const row = statements.byId.get(course, id)
  return row === undefined ? null : keptFrom(row)
}

const outcomeOfKnown = (known: KeptEntry, entry: Entry): Outcome =>
  sameJson(known.entry, entry) ? 'known' : 'differs'

/** Keeps entries one after the other; runs inside a transaction, so the numbers have no gaps. */
const keepAll = (
  statements: Statements,
  course: string,
  entries: readonly ArrivingEntry[],
): readonly Outcome[] => {
  let seq = endOf(statements, course)?.seq ?? 0
  return entries.map(({ entry, receivedAt, sender, skewMs }) => {
    const known = findOne(statements, course, entry.id)
    if (known !== null) return outcomeOfKnown(known, entry)
    seq += 1
    statements.insert.run(course, seq, entry.id, receivedAt, sender, skewMs, JSON.stringify(entry))
    return 'stored'
  })
}

/** Journals in an SQLite database that has its tables. */
export const sqliteJournal = (database: Database): JournalStore => {
  const statements = statementsOf(database)
  return {
    courses: async () => statements.courses.all().map((row) => v.parse(courseRow, row)),
    addCourse: async ({ id, name }) => {
      statements.addCourse.run(id, name)
    },
    append: async (course, entries, naming) =>
      inTransaction(database, () => {
        if (statements.course.get(course) === undefined) throw new Error(`there is no course ${course}`)
        if (naming !== null) {
          const { name, atMs, entry } = naming
          statements.rename.run(name, atMs, entry, course, atMs, entry)
        }
        return { outcomes: keepAll(statements, course, entries), end: endOf(statements, course) }
      }),
    page: async (course, afterSeq, limit) => statements.page.all(course, afterSeq, limit).map(keptFrom),
    find: async (course, ids) =>
      ids.flatMap((id) => findOne(statements, course, id) ?? []).sort((a, b) => a.seq - b.seq),
    end: async (course) => endOf(statements, course),
  }
}
