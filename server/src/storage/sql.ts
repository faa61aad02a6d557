import type { Bindable, Database } from './database.ts'

/** A database that is asked in SQL with `?` for each value, in the words that SQLite and PostgreSQL share. */
export type Sql = {
  readonly rows: (text: string, ...values: readonly Bindable[]) => Promise<readonly unknown[]>
  /** Runs a change; how many rows it touched. */
  readonly run: (text: string, ...values: readonly Bindable[]) => Promise<number>
}

/** An SQLite database asked so. Each text is prepared once. */
export const sqlOfSqlite = (database: Database): Sql => {
  const prepared = new Map<string, ReturnType<Database['prepare']>>()
  const statement = (text: string) => {
    const known = prepared.get(text) ?? database.prepare(text)
    prepared.set(text, known)
    return known
  }
  return {
    rows: async (text, ...values) => statement(text).all(...values),
    run: async (text, ...values) => Number(statement(text).run(...values).changes),
  }
}
