import { isBuiltin } from 'node:module'

/** What a bound parameter may be. */
export type Bindable = string | number | null

/** The part of the `node:sqlite` interface that is used here. */
export type Database = {
  exec(sql: string): void
  prepare(sql: string): {
    run(...values: readonly Bindable[]): { readonly changes: number | bigint }
    get(...values: readonly Bindable[]): unknown
    all(...values: readonly Bindable[]): readonly unknown[]
  }
  close(): void
}

type SqliteModule = { readonly DatabaseSync: new (path: string) => Database }

/**
 * Opens a database file. Node brings SQLite from 22.13 on; Node 20 takes the same interface from a package.
 * The name is no literal, since the types of Node 20 do not know it.
 */
export const openDatabase = async (path: string): Promise<Database> => {
  const name: string = isBuiltin('node:sqlite') ? 'node:sqlite' : '@photostructure/sqlite'
  const { DatabaseSync } = (await import(name)) as SqliteModule
  return new DatabaseSync(path)
}

/** Runs work as one transaction that has the write lock from the start: all of it is kept, or nothing. */
export const inTransaction = <T>(database: Database, work: () => T): T => {
  database.exec('BEGIN IMMEDIATE')
  try {
    const result = work()
    database.exec('COMMIT')
    return result
  } catch (error) {
    try {
      database.exec('ROLLBACK')
    } catch {
      // After some errors, a full disk among them, SQLite has undone everything itself: what went wrong first is what to tell.
      throw error
    }
    throw error
  }
}
