import * as v from 'valibot'
import type { Database } from './database.ts'
import type { WeatherStore } from './storage.ts'

const textRow = v.object({ text: v.string() })

/** Weather in an SQLite database that has its tables. */
export const sqliteWeather = (database: Database): WeatherStore => {
  const read = database.prepare('SELECT text FROM weather WHERE course = ? AND name = ?')
  const write = database.prepare(
    'INSERT INTO weather (course, name, text) VALUES (?, ?, ?) ON CONFLICT (course, name) DO UPDATE SET text = excluded.text',
  )
  return {
    read: async (course, name) => {
      const row = read.get(course, name)
      return row === undefined ? null : v.parse(textRow, row).text
    },
    write: async (course, name, text) => {
      write.run(course, name, text)
    },
  }
}
