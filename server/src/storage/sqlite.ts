import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { openDatabase } from './database.ts'
import { folderBlobs } from './folderBlobs.ts'
import { sqlOfSqlite } from './sql.ts'
import { sqlAccounts, sqlPasses } from './sqlPeople.ts'
import { sqlTokens } from './sqlTokens.ts'
import { sqlWeather } from './sqlWeather.ts'
import { sqliteJournal } from './sqliteJournal.ts'
import type { Storage } from './storage.ts'
import { prepareTables } from './tables.ts'

/** Name of the database file in the data folder. */
export const DATABASE_FILE = 'swardwright.sqlite'

/** Folder of the photos in the data folder. */
export const BLOB_FOLDER = 'photos'

/** Storage in one file of a folder, which is made where it is not there. Throws when the folder or the file can't be used. */
export const sqliteStorage = async (dataDir: string): Promise<Storage> => {
  await mkdir(dataDir, { recursive: true })
  const database = await openDatabase(join(dataDir, DATABASE_FILE))
  prepareTables(database)
  const sql = sqlOfSqlite(database)
  return {
    journal: sqliteJournal(database),
    tokens: sqlTokens(sql),
    accounts: sqlAccounts(sql),
    passes: sqlPasses(sql),
    weather: sqlWeather(sql),
    blobs: folderBlobs(join(dataDir, BLOB_FOLDER)),
    close: async () => database.close(),
  }
}
