import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { idOf, noteEntry } from '../testing/entries.ts'
import { describeStorage } from './acceptance.ts'
import { openDatabase } from './database.ts'
import { DATABASE_FILE, sqliteStorage } from './sqlite.ts'
import { sqliteJournal } from './sqliteJournal.ts'
import { isStoreFull } from './storeFull.ts'
import { prepareTables } from './tables.ts'

let root: string
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'swardwright-sqlite-'))
})
afterAll(async () => {
  await rm(root, { recursive: true, force: true })
})
const newFolder = () => mkdtemp(join(root, 'data-'))

describeStorage('storage in SQLite', async () => sqliteStorage(await newFolder()))

describe('an SQLite file', () => {
  it('keeps everything over a restart', async () => {
    const folder = join(await newFolder(), 'made', 'on', 'the', 'way')
    const before = await sqliteStorage(folder)
    await before.journal.addCourse({ id: 'links', name: 'Links' })
    const receivedAt = '2026-08-10T06:00:00.000Z'
    await before.journal.append(
      'links',
      [{ entry: noteEntry(1), receivedAt, sender: 'local', skewMs: null }],
      null,
    )
    await before.close()
    const after = await sqliteStorage(folder)
    expect(await after.journal.courses()).toEqual([{ id: 'links', name: 'Links' }])
    expect(await after.journal.end('links')).toEqual({
      seq: 1,
      id: idOf(1),
      receivedMs: Date.parse(receivedAt),
    })
    await after.close()
  })

  it('[J24] is forced to the disk at each commit, through a log ahead of the data', async () => {
    const database = await openDatabase(join(await newFolder(), DATABASE_FILE))
    prepareTables(database)
    expect(database.prepare('PRAGMA journal_mode').get()).toEqual({ journal_mode: 'wal' })
    // SQLite's documentation of this pragma: 2 is FULL.
    expect(database.prepare('PRAGMA synchronous').get()).toEqual({ synchronous: 2 })
    database.close()
  })

  it('without room keeps nothing of what came, says why, and takes it once there is room', async () => {
    const database = await openDatabase(join(await newFolder(), DATABASE_FILE))
    prepareTables(database)
    const journal = sqliteJournal(database)
    await journal.addCourse({ id: 'links', name: 'Links' })
    const receivedAt = '2026-08-10T06:00:00.000Z'
    const push = () =>
      journal.append(
        'links',
        [1, 2].map((number) => ({
          entry: noteEntry(number, 'x'.repeat(3000)),
          receivedAt,
          sender: 'local',
          skewMs: null,
        })),
        null,
      )
    // SQLite's documentation of this pragma: beyond so many pages a write fails with SQLITE_FULL. It can't go below what is there.
    database.exec('PRAGMA max_page_count = 1')
    const error: unknown = await push().catch((thrown: unknown) => thrown)
    expect(error instanceof Error && isStoreFull(error)).toBe(true)
    expect(await journal.end('links')).toBeNull()
    database.exec('PRAGMA max_page_count = 100000')
    expect((await push()).outcomes).toEqual(['stored', 'stored'])
    database.close()
  })

  it('of a newer version is refused with a clear word', async () => {
    const folder = await newFolder()
    await (await sqliteStorage(folder)).close()
    const database = await openDatabase(join(folder, DATABASE_FILE))
    database.exec('PRAGMA user_version = 99')
    database.close()
    await expect(sqliteStorage(folder)).rejects.toThrow('version 99')
  })

  it('that is none is refused and left as it is', async () => {
    const folder = await newFolder()
    await writeFile(join(folder, DATABASE_FILE), 'a shopping list, long enough to be no header of a database')
    await expect(sqliteStorage(folder)).rejects.toThrow('not a database')
  })

  it('with a damaged entry stops and names the entry', async () => {
    const folder = await newFolder()
    const storage = await sqliteStorage(folder)
    await storage.journal.addCourse({ id: 'links', name: 'Links' })
    const receivedAt = '2026-08-10T06:00:00.000Z'
    await storage.journal.append(
      'links',
      [{ entry: noteEntry(1), receivedAt, sender: 'local', skewMs: null }],
      null,
    )
    const database = await openDatabase(join(folder, DATABASE_FILE))
    database.exec(`UPDATE entry SET json = '{"id":"?"}'`)
    database.close()
    await expect(storage.journal.page('links', 0, 10)).rejects.toThrow('entry 1 in the database is damaged')
    await storage.close()
  })
})
