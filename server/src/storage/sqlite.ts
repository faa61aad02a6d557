import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { openDatabase } from './database.ts'
import { sqliteJournal } from './sqliteJournal.ts'
import { sqliteTokens } from './sqliteTokens.ts'
import { sqliteWeather } from './sqliteWeather.ts'
import type { Storage } from './storage.ts'
import { prepareTables } from './tables.ts'

/** Name of the database file in the data folder. */
export const DATABASE_FILE = 'swardwright.sqlite'

/** Storage in one file of a folder, which is made where it is not there. Throws when the folder or the file can't be used. */
export const sqliteStorage = async (dataDir: string): Promise<Storage> => {
  await mkdir(dataDir, { recursive: true })
  const database = await openDatabase(join(dataDir, DATABASE_FILE))
  prepareTables(database)
  return {
    journal: sqliteJournal(database),
    tokens: sqliteTokens(database),
    weather: sqliteWeather(database),
    close: async () => database.close(),
  }
}
