import type { LogEvent } from '../buildServer.ts'
import { sqliteStorage } from './sqlite.ts'
import type { Storage } from './storage.ts'

/** Where to keep things. */
export type StorageChoice = {
  readonly dataDir: string
  /** Address of a PostgreSQL database; null for a file in the data folder. */
  readonly database: string | null
  readonly log: (event: LogEvent) => void
}

/** Opens the storage that was chosen. The PostgreSQL driver is loaded only where it is wanted. Throws when it can't be used. */
export const openStorage = async ({ dataDir, database, log }: StorageChoice): Promise<Storage> => {
  if (database === null) return sqliteStorage(dataDir)
  const { postgresStorage } = await import('./postgres.ts')
  return postgresStorage(database, (message) =>
    log({ level: 'warn', message: `a connection to the database broke: ${message}` }),
  )
}
